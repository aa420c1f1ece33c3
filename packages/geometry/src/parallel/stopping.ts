import { GeometryError } from '../error.js';
import type { Budget, NestProblem } from '../types/problem.js';
import type { StopSignal } from './worker-port.js';

/** The two ways in which a caller may ask for a stop. */
export interface StopOptions {
  /** Heard at once. */
  readonly signal?: StopSignal;
  /** Asked now and then, from join 0 on. */
  readonly shouldStop?: () => boolean;
}

export function isStopAsked({ signal, shouldStop }: StopOptions): boolean {
  return signal?.aborted === true || shouldStop?.() === true;
}

/** Throws `bad-argument` for a search that would never end. */
export function refuseEndless({ joins }: Budget, { signal, shouldStop }: StopOptions): void {
  if (joins === undefined && signal === undefined && shouldStop === undefined) {
    throw new GeometryError('bad-argument', 'A search needs a number of joins, or a way to be stopped.');
  }
}

/**
 * The problem as streams see it: without the number of joins, so that a search that is stopped at a join and one that
 * is asked for that join can't differ.
 */
export function problemForStreams(problem: NestProblem): NestProblem {
  const { seed, streams } = problem.budget;
  return { ...problem, budget: { seed, streams } };
}
