import { GeometryError } from '../error.js';
import { startStreams } from '../parallel/run-here.js';
import type { NestAnswer, NestProblem } from '../types/problem.js';
import { streamFactory } from './stream.js';

/** How far a search has come. */
export interface NestProgress {
  readonly phase: 'first-layout' | 'improving' | 'done';
  /** Joins that are complete; -1 before the first layout is. */
  readonly joins: number;
  /** Of the best answer so far; before the first join, of the layout under way. */
  readonly placedCount: number;
  /** Copies that are asked for by number. */
  readonly demandedCount: number;
  /** Used-up area of the best answer so far, in mm². */
  readonly usedUpMm2: number;
}

/** A search that is driven from outside, a little at a time, so that it can be stopped at any moment. */
export interface NestRun {
  /** Does one small unit of work: looks for the place of one piece. */
  advance(): NestProgress;
  /** The best answer of the last complete join; undefined before join 0, the first layout. */
  best(): NestAnswer | undefined;
  readonly done: boolean;
}

/**
 * Starts a search in the caller's own thread, its streams by turns. Throws `unsupported` for a problem that asks for
 * what this engine can't do (see `refuseUnsupported`). The same problem and number of joins give the same answer, to
 * the byte, here and with any number of workers.
 */
export function startNest(problem: NestProblem): NestRun {
  return startStreams(problem, streamFactory());
}

/** What a driver of a search may be told. */
export interface RunOptions {
  /** Asked after every unit of work, from join 0 on: true ends the search. */
  readonly shouldStop?: () => boolean;
  readonly onProgress?: (progress: NestProgress) => void;
}

/**
 * Searches until the budget's joins are done or it is told to stop, and returns the best answer of the last
 * complete join. The first layout is always finished, so there is an answer. Without a budget of joins and
 * without `shouldStop` it would never end: that is refused with `bad-argument`.
 */
export function runNest(problem: NestProblem, options: RunOptions = {}): NestAnswer {
  refuseEndless(problem, options);
  const run = startNest(problem);
  while (!isOver(run, options)) {
    const progress = run.advance();
    options.onProgress?.(progress);
  }
  return run.best()!;
}

/** What the caller of a search beside other work may be told. */
export interface AsyncRunOptions extends RunOptions {
  /** Lets other work go on; the caller's own (a timer, a message), because core code has no clock. */
  readonly pause: () => Promise<void>;
  /** Units of work between two pauses; default 4. */
  readonly pauseEvery?: number;
}

const UNITS_BETWEEN_PAUSES = 4;

/** The same as `runNest`, and the same answer, but pauses now and then. */
export async function runNestAsync(problem: NestProblem, options: AsyncRunOptions): Promise<NestAnswer> {
  refuseEndless(problem, options);
  const run = startNest(problem);
  const every = options.pauseEvery ?? UNITS_BETWEEN_PAUSES;
  for (let unit = 1; !isOver(run, options); unit++) {
    const progress = run.advance();
    options.onProgress?.(progress);
    if (unit % every === 0) await options.pause();
  }
  return run.best()!;
}

function isOver(run: NestRun, { shouldStop }: RunOptions): boolean {
  return run.done || (run.best() !== undefined && shouldStop?.() === true);
}

function refuseEndless(problem: NestProblem, { shouldStop }: RunOptions): void {
  if (problem.budget.joins === undefined && shouldStop === undefined) {
    throw new GeometryError('bad-argument', 'A search needs a number of joins, or a way to be stopped.');
  }
}
