import type { NestAnswer, NestProblem } from './problem.js';

/**
 * One stream of a search. It works alone between two joins, and all that reaches it from outside is the best answer
 * of the last join: so the same problem, stream and joins give the same bytes, whoever runs it and wherever.
 */
export interface Stream {
  /**
   * Does ahead of time what every later join needs, all at once; may be left out. For a stream that would else wait
   * while another one makes the first layout.
   */
  prepare?(): void;
  /**
   * Starts the work up to join `join`. `best` is the best answer of join `join - 1`; undefined for join 0, which is
   * the first valid layout and is done by stream 0 alone.
   */
  begin(join: number, best: NestAnswer | undefined): void;
  /** Does one small unit of work (some milliseconds); true once the work up to the join is done. */
  advance(): boolean;
  /** What it found; asked for once `advance` has returned true. */
  outcome(): StreamOutcome;
  /** Between units: how far the present work has come. */
  progress(): StreamProgress;
}

/** Plain data, so that it can go from one thread to another. */
export interface StreamOutcome {
  readonly answer: NestAnswer;
  /** Compared entry by entry, lower is better; both have the same length. */
  readonly score: readonly number[];
}

export interface StreamProgress {
  readonly phase: 'first-layout' | 'improving';
  readonly placedCount: number;
}

/** Makes one stream of a search. */
export type StreamFactory = (problem: NestProblem, stream: number) => Stream;
