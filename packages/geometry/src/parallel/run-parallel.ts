import { GeometryError } from '../error.js';
import type { NestProgress } from '../nest/run.js';
import type { NestAnswer, NestProblem } from '../types/problem.js';
import { createJoins } from './joins.js';
import type { CompleteJoin, Joins } from './joins.js';
import { errorFromMessage, failedMessage, isFromWorker } from './messages.js';
import type { StartMessage, WorkMessage } from './messages.js';
import { isStopAsked, problemForStreams, refuseEndless } from './stopping.js';
import type { StopOptions } from './stopping.js';
import { trackProgress } from './track-progress.js';
import type { ProgressTracker } from './track-progress.js';
import type { WorkerHandle } from './worker-port.js';

export interface ParallelOptions extends StopOptions {
  /** How many workers the machine bears; no more than the problem has streams are made. The answer is the same. */
  readonly workers: number;
  readonly createWorker: () => WorkerHandle;
  readonly onProgress?: (progress: NestProgress) => void;
  /** Each better answer, as soon as its join is complete. */
  readonly onBest?: (best: NestAnswer) => void;
}

/**
 * Searches with several workers until the budget's joins are done or a stop is asked for, and returns the best answer
 * of the last complete join. Stream s lives in worker s modulo the number of workers. A stop does not wait for the
 * workers; only the first layout is always finished, so that there is an answer.
 *
 * Rejects with a GeometryError: `bad-argument` without an end (neither joins nor a way to stop) or workers; the error's
 * own code where the problem is at fault (`unsupported`); `worker-failed` for a worker that breaks, ends or can't be
 * loaded. Answers that were posted to `onBest` before stay good. Whatever the end, no worker is left behind.
 */
export function runNestParallel(problem: NestProblem, options: ParallelOptions): Promise<NestAnswer> {
  return new Promise((resolve, reject) => {
    refuseEndless(problem.budget, options);
    const joins = createJoins(problem.budget);
    const search = createSearch(problem, joins, options, { resolve, reject });
    search.attempt(() => start(search));
  });
}

interface Search {
  readonly problem: NestProblem;
  readonly joins: Joins;
  readonly options: ParallelOptions;
  readonly tracker: ProgressTracker;
  readonly workers: WorkerHandle[];
  readonly stopFlag: Int32Array | undefined;
  /** Whatever is thrown ends the search. */
  attempt(action: () => void): void;
  finish(): void;
}

interface Ends {
  readonly resolve: (answer: NestAnswer) => void;
  readonly reject: (error: Error) => void;
}

function createSearch(problem: NestProblem, joins: Joins, options: ParallelOptions, ends: Ends): Search {
  const workers: WorkerHandle[] = [];
  const stopFlag = createStopFlag();
  let isOver = false;
  const stop = (): void => {
    if (joins.best !== undefined) finish();
  };
  const end = (): void => {
    isOver = true;
    options.signal?.removeEventListener('abort', stop);
    if (stopFlag !== undefined) Atomics.store(stopFlag, 0, 1);
    for (const worker of workers) worker.terminate();
  };
  const finish = (): void => {
    if (isOver) return;
    end();
    ends.resolve(joins.best!);
  };
  options.signal?.addEventListener('abort', stop);
  return {
    problem,
    joins,
    options,
    tracker: trackProgress(problem),
    workers,
    stopFlag,
    attempt: (action) => {
      if (isOver) return;
      try {
        action();
      } catch (error) {
        if (isOver) return;
        end();
        ends.reject(error instanceof Error ? error : new Error(String(error)));
      }
    },
    finish,
  };
}

/** Undefined where memory can't be shared: in a browser, for a page that is not isolated from others. */
function createStopFlag(): Int32Array | undefined {
  return typeof SharedArrayBuffer === 'undefined' ? undefined : new Int32Array(new SharedArrayBuffer(4));
}

function start(search: Search): void {
  const { problem, options, workers, stopFlag } = search;
  const count = workerCount(problem, options.workers);
  for (let index = 0; index < count; index++) {
    const worker = options.createWorker();
    workers.push(worker);
    worker.onMessage((message) => search.attempt(() => hear(search, index, message)));
    worker.onFailure((reason) =>
      search.attempt(() => {
        const { message, stack } = failedMessage(reason);
        throw errorFromMessage({ kind: 'failed', message, ...(stack === undefined ? {} : { stack }) });
      }),
    );
    worker.post({
      kind: 'start',
      problem: problemForStreams(problem),
      streams: streamsOf(index, count, problem.budget.streams),
      ...(stopFlag === undefined ? {} : { stopFlag }),
    } satisfies StartMessage);
  }
  workers[0]!.post({ kind: 'work', join: 0 } satisfies WorkMessage);
}

function workerCount({ budget }: NestProblem, workers: number): number {
  if (!Number.isInteger(workers) || workers < 1) {
    throw new GeometryError('bad-argument', `A search in parallel needs 1 worker or more, not ${workers}.`);
  }
  return budget.joins === 0 ? 1 : Math.min(workers, budget.streams);
}

function streamsOf(worker: number, workers: number, streams: number): number[] {
  const own: number[] = [];
  for (let stream = worker; stream < streams; stream += workers) own.push(stream);
  return own;
}

function hear(search: Search, worker: number, message: unknown): void {
  const { joins, options, tracker, workers } = search;
  if (!isFromWorker(message)) throw strange('sent a message that can not be read');
  if (message.kind === 'failed') throw errorFromMessage(message);
  if (message.stream % workers.length !== worker || message.join !== joins.join) {
    throw strange(`spoke of stream ${message.stream} in join ${message.join}`);
  }
  const complete = message.kind === 'outcome' ? joins.take(message.stream, message.outcome) : undefined;
  const isEnding = joins.isDone || (joins.best !== undefined && isStopAsked(options));
  // The streams go on before anyone is told: no worker waits for the caller.
  if (complete !== undefined && !isEnding) sendOn(search, complete.best);
  if (complete !== undefined) tell(search, complete);
  if (complete !== undefined || message.kind === 'progress') {
    const underWay = message.kind === 'progress' ? message.progress.placedCount : 0;
    options.onProgress?.(tracker.progress({ underWay, isDone: joins.isDone }));
  }
  if (isEnding) search.finish();
}

function sendOn({ workers, joins }: Search, best: NestAnswer): void {
  for (const worker of workers) worker.post({ kind: 'work', join: joins.join, best } satisfies WorkMessage);
}

function tell({ tracker, options }: Search, { best, isBetter }: CompleteJoin): void {
  tracker.joined(best, isBetter);
  if (isBetter) options.onBest?.(best);
}

function strange(what: string): GeometryError {
  return new GeometryError('worker-failed', `A worker of the search ${what}.`);
}
