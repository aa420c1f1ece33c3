import { describe, expect, it } from 'vitest';
import { checkAnswer, isProven } from '../check/index.js';
import { createRandom } from '../number/random.js';
import type { NestAnswer, NestProblem } from '../types/problem.js';
import { fewerSheets } from './fewer-sheets.js';
import { createLayout } from './layout.js';
import { runNest } from './run.js';
import { placement, rectangle, testItem, testKind, testProblem, testSheet } from './test-problems.js';

/** Eight squares: four fit on each of the first two sheets, all of them on the third or the fourth. */
function squares(more: Partial<NestProblem> = {}): NestProblem {
  const ids = ['a', 'b', 'c', 'd'];
  return testProblem({
    items: [testItem('square', rectangle(0, 0, 48, 48), { sheets: ids })],
    setKinds: [testKind({ square: 8 })],
    sheets: [
      testSheet('a', rectangle(0, 0, 100, 100)),
      testSheet('b', rectangle(0, 0, 100, 100)),
      testSheet('c', rectangle(0, 0, 200, 100)),
      testSheet('d', rectangle(0, 0, 210, 100)),
    ],
    budget: { seed: 1, streams: 1, joins: 12 },
    ...more,
  });
}

function opened({ placements }: NestAnswer): string[] {
  return [...new Set(placements.map(({ sheet }) => sheet))].sort();
}

function answerOn(sheets: readonly string[]): NestAnswer {
  const placements = sheets.map((sheet, i) => placement('square', i + 1, 10, 10, { sheet }));
  return { placements, unplaced: [], lanes: [], roughCuts: [], joins: 0 };
}

describe('doing with fewer sheets', () => {
  it('when later sheets hold on one what the first ones hold on two, one is used', () => {
    expect(opened(runNest(squares({ budget: { seed: 1, streams: 1, joins: 0 } })))).toEqual(['a', 'b']);
    const answer = runNest(squares());
    expect(answer.placements).toHaveLength(8);
    expect(opened(answer)).toHaveLength(1);
    expect(isProven(checkAnswer(squares(), answer))).toBe(true);
  });

  it('when a piece is held to a sheet by hand, that sheet is kept', () => {
    const fixed = [{ ...placement('square', 1, 50, 50, { sheet: 'a' }), accepted: [] }];
    const answer = runNest(squares({ fixed }));
    expect(answer.placements).toHaveLength(8);
    expect(opened(answer)).toContain('a');
    expect(isProven(checkAnswer(squares({ fixed }), answer))).toBe(true);
  });

  it('when one sheet of a group could do, the largest is chosen first', () => {
    const way = fewerSheets(createLayout(squares()), answerOn(['a', 'b', 'b']), createRandom(1), 0)!;
    expect([...way.kept]).toEqual([3]);
    expect([...way.together]).toEqual([0, 1, 2, 3]);
  });

  it('when an item may lie on one sheet alone, that sheet is kept', () => {
    const problem = squares({
      items: [
        testItem('square', rectangle(0, 0, 48, 48), { sheets: ['a', 'b', 'c'] }),
        testItem('other', rectangle(0, 0, 48, 48), { sheets: ['a'] }),
      ],
      setKinds: [testKind({ square: 1, other: 1 })],
    });
    const [square, other] = [
      placement('square', 1, 10, 10, { sheet: 'b' }),
      placement('other', 1, 10, 10, { sheet: 'a' }),
    ];
    const answer = { ...answerOn([]), placements: [square, other] };
    const way = fewerSheets(createLayout(problem), answer, createRandom(1), 0)!;
    expect([...way.kept]).toEqual([0]);
  });

  it('when one sheet is all that is used, there is no fewer', () => {
    expect(fewerSheets(createLayout(squares()), answerOn(['a', 'a']), createRandom(1), 0)).toBeUndefined();
  });

  it('when pieces of two leathers use a sheet each, neither can be done without', () => {
    const problem = squares({
      items: [
        testItem('square', rectangle(0, 0, 48, 48), { sheets: ['a', 'c'] }),
        testItem('other', rectangle(0, 0, 48, 48), { sheets: ['b', 'd'] }),
      ],
      setKinds: [testKind({ square: 1, other: 1 })],
    });
    const { placements, ...rest } = answerOn(['a', 'b']);
    const answer = {
      ...rest,
      placements: placements.map((one, i) => ({ ...one, item: i === 0 ? 'square' : 'other' })),
    };
    expect(fewerSheets(createLayout(problem), answer, createRandom(1), 0)).toBeUndefined();
  });
});
