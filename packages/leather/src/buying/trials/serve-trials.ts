import type { OwnerPort } from '@hidebound/geometry/parallel';
import { runTrial } from './run-trial.js';
import type { TrialInput } from './run-trial.js';
import type { FromTrialWorker, ToTrialWorker } from './trial-messages.js';

/** Runs trials for an owner: the whole of what a worker's script does, in Node and in a browser. */
export function serveTrials(owner: OwnerPort): void {
  let inputs: readonly TrialInput[] = [];
  const tell = (message: FromTrialWorker): void => owner.post(message);
  owner.onMessage((message) => {
    const asked = message as ToTrialWorker;
    if (asked.kind === 'start') {
      inputs = asked.inputs;
      return;
    }
    try {
      tell({ kind: 'outcome', input: asked.input, outcome: runTrial(inputs[asked.input]!, asked.number) });
    } catch (error) {
      tell({ kind: 'failed', message: error instanceof Error ? error.message : String(error) });
    }
  });
}
