import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareEntries } from '../number/compare-entries.js';
import type { NestAnswer } from '../types/problem.js';
import type { StreamOutcome } from '../types/stream.js';
import { bestOfJoin, createJoins } from './joins.js';

/** An outcome that can be told by its name. */
function outcome(name: string, ...score: number[]): StreamOutcome {
  const answer: NestAnswer = {
    placements: [{ item: name, set: 1, copy: 1, sheet: 'sheet', x: 0, y: 0, rotationDeg: 0 }],
    lanes: [],
    roughCuts: [],
    unplaced: [],
    joins: -1,
  };
  return { answer, score };
}

const nameOf = (answer: NestAnswer | undefined): string | undefined => answer?.placements[0]!.item;

describe('the joins of a search', () => {
  it('when a search starts, only stream 0 is awaited, and nothing is best yet', () => {
    const joins = createJoins({ seed: 1, streams: 3, joins: 1 });
    expect([joins.join, joins.awaited, joins.best, joins.isDone]).toEqual([0, [0], undefined, false]);
  });

  it('when join 0 is complete, all streams are awaited, and each until it has come', () => {
    const joins = createJoins({ seed: 1, streams: 3, joins: 1 });
    expect(joins.take(0, outcome('first', 9))).toMatchObject({ join: 0, isBetter: true, best: { joins: 0 } });
    expect(joins.awaited).toEqual([0, 1, 2]);
    expect(joins.take(1, outcome('one', 5))).toBeUndefined();
    expect([joins.awaited, nameOf(joins.best)]).toEqual([[0, 2], 'first']);
    joins.take(2, outcome('two', 4));
    const complete = joins.take(0, outcome('zero', 6));
    expect([complete?.join, nameOf(complete?.best), complete?.best.joins]).toEqual([1, 'two', 1]);
    expect([joins.isDone, joins.join, joins.awaited]).toEqual([true, 1, []]);
  });

  it('when no stream is better, the best of before stands and carries the new number', () => {
    const joins = createJoins({ seed: 1, streams: 2 });
    joins.take(0, outcome('first', 1, 2));
    joins.take(0, outcome('a', 1, 2));
    const complete = joins.take(1, outcome('b', 1, 3));
    expect([nameOf(complete?.best), complete?.best.joins, complete?.isBetter]).toEqual(['first', 1, false]);
    expect([joins.best?.joins, joins.isDone, joins.join]).toEqual([1, false, 2]);
  });

  it('when outcomes come in any order, the joins have the same best', () => {
    const orders = fc.shuffledSubarray([0, 1, 2, 3], { minLength: 4 });
    const scores = fc.array(fc.tuple(fc.integer({ max: 3, min: 0 }), fc.integer({ max: 3, min: 0 })), {
      minLength: 4,
      maxLength: 4,
    });
    fc.assert(
      fc.property(orders, scores, (order, found) => {
        const run = (sequence: readonly number[]): string | undefined => {
          const joins = createJoins({ seed: 1, streams: 4, joins: 1 });
          joins.take(0, outcome('first', 2, 2));
          for (const stream of sequence) joins.take(stream, outcome(`${stream}`, ...found[stream]!));
          return nameOf(joins.best);
        };
        // Judge: the lowest score, and among equals the first, written with a plain sort.
        const all = [['first', 2, 2] as const, ...found.map(([a, b], s) => [`${s}`, a, b] as const)];
        const [lowest] = [...all].sort((p, q) => p[1] - q[1] || p[2] - q[2]);
        expect(run(order)).toBe(lowest![0]);
      }),
      { seed: 11, numRuns: 300 },
    );
  });

  it('when streams tie, the lower one counts', () => {
    const found = bestOfJoin(outcome('before', 3), [outcome('a', 2), outcome('b', 2)]);
    expect(nameOf(found.answer)).toBe('a');
  });

  it.each([
    ['a stream that has come already', 0, [1, 1]],
    ['a stream that is not there', 2, [1, 1]],
    ['a score of another length', 1, [1]],
    ['a score that is no number', 1, [1, NaN]],
  ] as const)('when %s brings something, it is refused', (_, stream, score) => {
    const joins = createJoins({ seed: 1, streams: 2 });
    joins.take(0, outcome('first', 1, 1));
    joins.take(0, outcome('a', 1, 1));
    expect(() => joins.take(stream, outcome('b', ...score))).toThrow(
      expect.objectContaining({ code: 'bad-argument' }),
    );
  });

  it.each([{ streams: 0 }, { streams: 1.5 }, { streams: 1, joins: -1 }, { streams: 1, joins: 0.5 }])(
    'when the budget is %o, it is refused',
    (budget) => {
      expect(() => createJoins({ seed: 1, ...budget })).toThrow(
        expect.objectContaining({ code: 'bad-argument' }),
      );
    },
  );

  it('when scores are compared, the first entries that differ decide, infinite ones too', () => {
    expect(compareEntries([0, 5, 1], [0, 4, 9])).toBe(1);
    expect(compareEntries([0, 4, 9], [0, 5, 1])).toBe(-1);
    expect(compareEntries([Infinity, 1], [Infinity, 1])).toBe(0);
    expect(compareEntries([Infinity, 0], [Infinity, 1])).toBe(-1);
  });
});
