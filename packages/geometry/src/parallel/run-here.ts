import type { NestProgress, NestRun } from '../nest/run.js';
import type { NestAnswer, NestProblem } from '../types/problem.js';
import type { Stream } from '../types/stream.js';
import { createJoins } from './joins.js';
import type { CompleteJoin, Joins } from './joins.js';
import { isStopAsked, problemForStreams, refuseEndless } from './stopping.js';
import type { StopOptions } from './stopping.js';
import { trackProgress } from './track-progress.js';
import type { StreamFactory } from '../types/stream.js';

/**
 * Starts the streams of a search in the caller's own thread: each `advance` does one unit of one stream, by turns. The
 * answer has the same bytes as with any number of workers.
 */
export function startStreams(
  problem: NestProblem,
  createStream: StreamFactory,
  options: { readonly onBest?: (best: NestAnswer) => void } = {},
): NestRun {
  const joins = createJoins(problem.budget);
  const tracker = trackProgress(problem);
  const streams = byTurns(problemForStreams(problem), createStream, joins);
  return {
    advance: (): NestProgress => {
      if (!joins.isDone) {
        const complete = streams.advance();
        if (complete !== undefined) {
          tracker.joined(complete.best, complete.isBetter);
          if (complete.isBetter) options.onBest?.(complete.best);
        }
      }
      return tracker.progress({ underWay: streams.underWay(), isDone: joins.isDone });
    },
    best: () => joins.best,
    get done() {
      return joins.isDone;
    },
  };
}

interface StreamsByTurns {
  /** One unit of the stream whose turn it is. */
  advance(): CompleteJoin | undefined;
  /** Pieces that lie in the first layout so far. */
  underWay(): number;
}

function byTurns(problem: NestProblem, createStream: StreamFactory, joins: Joins): StreamsByTurns {
  const made = new Map<number, Stream>();
  const begun = new Set<number>();
  let last = -1;
  const ready = (stream: number): Stream => {
    const one = made.get(stream) ?? createStream(problem, stream);
    made.set(stream, one);
    if (!begun.has(stream)) one.begin(joins.join, joins.best);
    begun.add(stream);
    return one;
  };
  return {
    advance: () => {
      const { awaited } = joins;
      const stream = awaited.find((next) => next > last) ?? awaited[0]!;
      last = stream;
      const one = ready(stream);
      if (!one.advance()) return undefined;
      const complete = joins.take(stream, one.outcome());
      if (complete !== undefined) begun.clear();
      return complete;
    },
    underWay: () => (joins.best === undefined ? (made.get(0)?.progress().placedCount ?? 0) : 0),
  };
}

export interface RunHereOptions extends StopOptions {
  readonly createStream: StreamFactory;
  /** Lets other work go on; the caller's own (a timer, a message), because core code has no clock. */
  readonly pause: () => Promise<void>;
  readonly onProgress?: (progress: NestProgress) => void;
  /** Each better answer, as soon as its join is complete. */
  readonly onBest?: (best: NestAnswer) => void;
}

/** Some tens of ms between two pauses. */
const UNITS_BETWEEN_PAUSES = 4;

/**
 * `runNestParallel` for places without workers: the same answer, from the caller's own thread. A stop is heard between
 * two units of work, from join 0 on.
 */
export async function runNestHere(problem: NestProblem, options: RunHereOptions): Promise<NestAnswer> {
  refuseEndless(problem.budget, options);
  const { createStream, pause, onProgress } = options;
  const run = startStreams(problem, createStream, options);
  for (let unit = 1; !run.done; unit++) {
    const progress = run.advance();
    onProgress?.(progress);
    if (run.best() !== undefined && isStopAsked(options)) break;
    if (unit % UNITS_BETWEEN_PAUSES === 0) await pause();
  }
  return run.best()!;
}
