import { GeometryError } from '../error.js';
import { compareEntries } from '../number/compare-entries.js';
import type { Budget, NestAnswer } from '../types/problem.js';
import type { StreamOutcome } from '../types/stream.js';

/** A join that all its streams have reached. */
export interface CompleteJoin {
  readonly join: number;
  /** The best of this join and of all before it; its `joins` is this join's number. */
  readonly best: NestAnswer;
  /** A stream brought it to this join; otherwise an earlier best stands. */
  readonly isBetter: boolean;
}

/**
 * The joins of one search: gathers what the streams found, and knows nothing of who runs them, where, or in which order
 * they come. Outcomes of one join may be taken in any order; the result is the same.
 */
export interface Joins {
  /** The join that the streams work towards; once the search is done, the last one. */
  readonly join: number;
  /** Streams whose outcome of this join is still to come, ascending. */
  readonly awaited: readonly number[];
  /** The best of the last complete join; undefined before join 0. */
  readonly best: NestAnswer | undefined;
  /** All joins of the budget are complete. */
  readonly isDone: boolean;
  /**
   * Takes what a stream found in the present join; returns the join once it is complete.
   * Throws `bad-argument` for a stream that is not awaited, and for scores that can't be compared.
   */
  take(stream: number, outcome: StreamOutcome): CompleteJoin | undefined;
}

/** Throws `bad-argument` where streams or joins are no whole numbers. */
export function createJoins(budget: Budget): Joins {
  refuseOddBudget(budget);
  const mostJoins = budget.joins ?? Infinity;
  let join = 0;
  let best: StreamOutcome | undefined;
  let isDone = false;
  let outcomes = new Map<number, StreamOutcome>();
  const awaited = (): number[] =>
    isDone ? [] : streamsOfJoin(join, budget.streams).filter((stream) => !outcomes.has(stream));
  return {
    get join() {
      return join;
    },
    get awaited() {
      return awaited();
    },
    get best() {
      return best?.answer;
    },
    get isDone() {
      return isDone;
    },
    take: (stream, outcome) => {
      if (!awaited().includes(stream)) {
        throw new GeometryError('bad-argument', `Nothing is awaited from stream ${stream} in join ${join}.`);
      }
      refuseOddScore(outcome.score, best?.score ?? outcomes.values().next().value?.score);
      outcomes.set(stream, outcome);
      if (awaited().length > 0) return undefined;
      const found = bestOfJoin(best, byStream(outcomes));
      const isBetter = found !== best;
      const complete = { join, best: { ...found.answer, joins: join }, isBetter };
      best = { answer: complete.best, score: found.score };
      outcomes = new Map();
      if (join >= mostJoins) isDone = true;
      else join++;
      return complete;
    },
  };
}

/** Who works towards a join: the first valid layout is done by stream 0 alone. */
export function streamsOfJoin(join: number, streams: number): number[] {
  return Array.from({ length: join === 0 ? 1 : streams }, (_, stream) => stream);
}

/** The best of a join: ties to the earlier best, then to the lower stream. */
export function bestOfJoin(
  before: StreamOutcome | undefined,
  outcomes: readonly StreamOutcome[],
): StreamOutcome {
  let best = before;
  for (const outcome of outcomes) {
    if (best === undefined || compareEntries(outcome.score, best.score) < 0) best = outcome;
  }
  if (best === undefined) throw new GeometryError('bad-argument', 'A join needs the outcome of a stream.');
  return best;
}

function byStream(outcomes: ReadonlyMap<number, StreamOutcome>): StreamOutcome[] {
  return [...outcomes].sort(([a], [b]) => a - b).map(([, outcome]) => outcome);
}

function refuseOddBudget({ streams, joins }: Budget): void {
  if (!Number.isInteger(streams) || streams < 1) {
    throw new GeometryError('bad-argument', `A search needs 1 stream or more, not ${streams}.`);
  }
  if (joins !== undefined && (!Number.isInteger(joins) || joins < 0)) {
    throw new GeometryError('bad-argument', `A search needs a whole number of joins, not ${joins}.`);
  }
}

function refuseOddScore(score: readonly number[], other: readonly number[] | undefined): void {
  if (score.some((entry) => Number.isNaN(entry)) || (other !== undefined && other.length !== score.length)) {
    throw new GeometryError('bad-argument', 'The scores of two outcomes of a search can not be compared.');
  }
}
