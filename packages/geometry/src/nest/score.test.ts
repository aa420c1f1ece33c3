import { describe, expect, it } from 'vitest';
import type { NestAnswer, Placement } from '../types/problem.js';
import { compareAnswers, scoreAnswer } from './score.js';
import { placement, rectangle, testItem, testKind, testProblem, testSheet } from './test-problems.js';

const problem = testProblem({
  items: [
    testItem('must', rectangle(0, 0, 10, 10), { priority: 2, sheets: ['sheet', 'other'] }),
    testItem('may', rectangle(0, 0, 10, 10), { sheets: ['sheet', 'other'] }),
  ],
  setKinds: [testKind({ must: 1, may: 1 }, { sets: 3 })],
  sheets: [testSheet('sheet', rectangle(0, 0, 100, 50)), testSheet('other', rectangle(0, 0, 100, 50))],
});

function answer(...placements: Placement[]): NestAnswer {
  return { placements, lanes: [], roughCuts: [], unplaced: [], joins: 0 };
}

describe('which answer is better', () => {
  const better = (a: NestAnswer, b: NestAnswer): void => {
    expect(compareAnswers(problem, a, b)).toBeLessThan(0);
    expect(compareAnswers(problem, b, a)).toBeGreaterThan(0);
  };

  it('when one misses a piece of higher priority, more of lower ones do not help', () => {
    const low = [1, 2, 3].map((set) => placement('may', 1, 20 * set, 0, { set }));
    better(answer(placement('must', 1, 0, 0)), answer(...low));
  });

  it('when as many pieces are laid, whole sets count', () => {
    const whole = answer(placement('must', 1, 0, 0), placement('may', 1, 80, 0));
    const torn = answer(placement('must', 1, 0, 0), placement('may', 1, 12, 0, { set: 2 }));
    better(whole, torn);
  });

  it('when pieces and sets are equal, fewer sheets are better, and earlier ones', () => {
    const one = answer(placement('must', 1, 0, 0), placement('may', 1, 80, 0));
    const two = answer(placement('must', 1, 0, 0), placement('may', 1, 0, 0, { sheet: 'other' }));
    better(one, two);
    const later = answer(
      placement('must', 1, 0, 0, { sheet: 'other' }),
      placement('may', 1, 80, 0, { sheet: 'other' }),
    );
    better(one, later);
  });

  it('when all that is equal, less used-up area is better', () => {
    better(
      answer(placement('must', 1, 0, 0), placement('may', 1, 0, 12)),
      answer(placement('must', 1, 0, 0), placement('may', 1, 12, 0)),
    );
  });

  it('when only the serialised placements differ, they decide', () => {
    better(
      answer(placement('must', 1, 0, 0), placement('may', 1, 0, 12)),
      answer(placement('must', 1, 0, 0), placement('may', 1, 0, 13)),
    );
  });

  it('when an answer is scored, areas are those of the sheet', () => {
    const score = scoreAnswer(problem, answer(placement('must', 1, 0, 0), placement('may', 1, 15, 0)));
    // Cut at 25 mm: 25 x 50 used up, 75 x 50 left.
    expect(score).toMatchObject({ usedUpMm2: 1250, largestLeftoverMm2: 3750, opened: [0], missed: [2, 2] });
  });
});
