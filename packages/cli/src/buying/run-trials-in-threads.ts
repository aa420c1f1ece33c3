import { createNodeWorker, workersOfMachine } from '@hidebound/geometry/node';
import { runTrials } from '@hidebound/leather';
import type { TrialRounds, TrialsOptions } from '@hidebound/leather';

export interface TrialThreadsOptions extends Omit<TrialsOptions, 'workers' | 'createWorker'> {
  /** Threads at most; absent: as many as the machine bears. */
  readonly threads?: number;
}

/** `runTrials` with threads of Node. */
export function runTrialsInThreads(options: TrialThreadsOptions): Promise<TrialRounds> {
  const { threads = workersOfMachine(), ...others } = options;
  const script = workerScript();
  return runTrials({ ...others, workers: threads, createWorker: () => createNodeWorker(script) });
}

/** Beside this file once compiled; where tests run this file as it is written, Node still needs the compiled one. */
function workerScript(): URL {
  const isSource = import.meta.url.endsWith('.ts');
  return new URL(isSource ? '../../dist/buying/trial-worker.js' : './trial-worker.js', import.meta.url);
}
