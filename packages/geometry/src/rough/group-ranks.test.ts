import { describe, expect, it } from 'vitest';
import { rectangle, testItem, testKind, testProblem, testSheet } from '../nest/test-problems.js';
import type { NestProblem } from '../types/problem.js';
import { groupRanks } from './group-ranks.js';

const SQUARE = rectangle(-20, -20, 20, 20);
const items = [
  testItem('small', rectangle(-5, -5, 5, 5), { group: 'waxed', roughMargin: 5 }),
  testItem('plain', SQUARE),
  testItem('large', SQUARE, { group: 'dyed', roughMargin: 10 }),
  testItem('small too', rectangle(-5, -5, 5, 5), { group: 'dyed', roughMargin: 10 }),
  testItem('bare', SQUARE, { group: 'dyed' }),
];
const problem: NestProblem = testProblem({
  items,
  setKinds: [testKind({ small: 2, plain: 9, large: 4, 'small too': 1, bare: 1 })],
  sheets: [testSheet('sheet', rectangle(0, 0, 1000, 600))],
});

describe('ranks of groups', () => {
  it('when groups are ranked, the largest that is cut in blocks comes first and the rest last', () => {
    expect(Object.fromEntries(groupRanks(problem))).toEqual({
      large: 0,
      'small too': 0,
      small: 1,
      plain: 2,
      bare: 2,
    });
  });
});
