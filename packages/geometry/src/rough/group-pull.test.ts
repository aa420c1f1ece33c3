import { describe, expect, it } from 'vitest';
import { placement, rectangle, testItem, testKind, testProblem, testSheet } from '../nest/test-problems.js';
import type { NestProblem, Placement } from '../types/problem.js';
import { groupRanks, guessRoughCutScore, scoreRoughCuts } from './group-pull.js';
import { roughCutsFor } from './rough-cuts.js';

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

describe('keeping groups together', () => {
  it('when groups are ranked, the largest that is cut in blocks comes first and the rest last', () => {
    expect(Object.fromEntries(groupRanks(problem))).toEqual({
      large: 0,
      'small too': 0,
      small: 1,
      plain: 2,
      bare: 2,
    });
  });

  it('when a group lies together, both the score and its quick guess are better than when it is strewn', () => {
    const at = (places: readonly (readonly [number, number])[]): Placement[] =>
      places.map(([x, y], i) => placement('large', i + 1, x, y));
    const together = at([
      [100, 100],
      [141, 100],
      [100, 141],
      [141, 141],
    ]);
    const strewn = at([
      [100, 100],
      [500, 100],
      [100, 400],
      [500, 400],
    ]);
    const scores = [together, strewn].map((placements) =>
      scoreRoughCuts(roughCutsFor(problem, placements).roughCuts),
    );
    const guesses = [together, strewn].map((placements) => guessRoughCutScore(problem, placements));
    for (const [good, bad] of [scores, guesses]) {
      expect(good!.blocks).toBe(1);
      expect(bad!.blocks).toBe(4);
      expect(good!.costMm2).toBeLessThan(bad!.costMm2);
      expect(good!.areaMm2).toBeLessThan(bad!.areaMm2);
    }
    // Rounded corners differ, no more.
    expect(guesses[0]!.areaMm2 / scores[0]!.areaMm2).toBeCloseTo(1, 1);
  });

  it('when nothing has a margin, there is nothing to score', () => {
    const placements = [placement('plain', 1, 100, 100)];
    expect(guessRoughCutScore(problem, placements)).toEqual({ blocks: 0, areaMm2: 0, costMm2: 0 });
  });
});
