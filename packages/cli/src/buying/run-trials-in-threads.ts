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
  const createWorker = () => createNodeWorker(WORKER_SCRIPT, IS_SOURCE ? { execArgv: [] } : {});
  return runTrials({ ...others, workers: threads, createWorker });
}

const IS_SOURCE = import.meta.url.endsWith('.ts');
/**
 * Beside this file once compiled; where tests run this file as it is written, Node still needs the compiled one, and must
 * not be told to take the packages as they are written.
 */
const WORKER_SCRIPT = new URL(
  IS_SOURCE ? '../../dist/buying/trial-worker.js' : './trial-worker.js',
  import.meta.url,
);
