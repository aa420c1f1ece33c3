import { runNestParallel } from '../parallel/run-parallel.js';
import type { ParallelOptions } from '../parallel/run-parallel.js';
import type { NestAnswer, NestProblem } from '../types/problem.js';
import { createNodeWorker, workersOfMachine } from './node-worker.js';

export interface ThreadsOptions extends Omit<ParallelOptions, 'workers' | 'createWorker'> {
  /** Threads at most; default: as many as the machine bears. The answer is the same with any number. */
  readonly threads?: number;
}

/** `runNestParallel` with threads of Node. */
export function runNestInThreads(problem: NestProblem, options: ThreadsOptions): Promise<NestAnswer> {
  const { threads = workersOfMachine(), ...others } = options;
  const script = workerScript();
  return runNestParallel(problem, {
    ...others,
    workers: threads,
    createWorker: () => createNodeWorker(script),
  });
}

/** Beside this file once compiled; where tests run this file as it is written, Node still needs the compiled one. */
function workerScript(): URL {
  const isSource = import.meta.url.endsWith('.ts');
  return new URL(isSource ? '../../dist/node/nest-worker.js' : './nest-worker.js', import.meta.url);
}
