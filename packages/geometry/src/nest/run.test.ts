import { beforeAll, describe, expect, it, vi } from 'vitest';
import { checkAnswer } from '../check/index.js';
import { sampleProblem } from '../sample/sample-problem.js';
import type { SampleProblemOptions } from '../sample/sample-problem.js';
import { subtractRegions } from '../shape/clipper.js';
import type { Budget, FixedPlacement, NestAnswer, NestProblem } from '../types/problem.js';
import type { Region } from '../types/shape.js';
import { runNest, runNestAsync, startNest } from './run.js';
import { placement, rectangle, testItem, testKind, testProblem, testSheet } from './test-problems.js';

// The machine's speed is no part of these tests.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

/** Every fourth problem has several hides, every fifth strokes, every third readings; every twelfth is improved. */
function randomOptions(seed: number): SampleProblemOptions {
  return {
    pieces: 8 + (seed % 7),
    hides: seed % 4 === 0 ? 3 : 1,
    share: 0.15 + 0.1 * (seed % 4),
    mode: seed % 6 === 5 ? 'sets' : 'placeAll',
    joins: seed % 12 === 1 ? 1 : 0,
    hide: {
      flaws: 4 + (seed % 12),
      lengthMm: 1400,
      halfWidthMm: 700,
      cut: (['side', 'hide', 'bend', 'shoulder', 'belly'] as const)[seed % 5]!,
      strokes: seed % 5 === 0 ? 4 : 0,
      ...(seed % 3 === 0 ? { readings: 5 } : {}),
      useFrom: seed % 7 === 0 ? { x: 0.6, y: 0.8 } : { x: -1, y: 0 },
    },
  };
}

describe('answers of the search', () => {
  it.each(Array.from({ length: 24 }, (_, i) => i + 1))(
    'when a random problem %i has all rules in play, its answer passes the exact check',
    (seed) => {
      const problem = sampleProblem(seed, randomOptions(seed));
      expect(checkAnswer(problem, runNest(problem))).toEqual([]);
    },
  );

  it('when gaps between groups are wide and shapes plain, the answer passes the exact check', () => {
    const plain = sampleProblem(77, { pieces: 20, rules: 'plain', share: 0.35 });
    const problem: NestProblem = {
      ...plain,
      items: plain.items.map((item, i) => ({ ...item, group: `group ${i % 2}` })),
      distances: { ...plain.distances, betweenGroups: 15 },
    };
    const answer = runNest(problem);
    expect(checkAnswer(problem, answer)).toEqual([]);
    expect(answer.unplaced).toEqual([]);
  });
});

describe('sameness', () => {
  // One whose layout gets better in its first joins, else all these would be the first layout.
  const problem = sampleProblem(11, {
    pieces: 7,
    joins: 2,
    share: 0.35,
    hide: { lengthMm: 800, halfWidthMm: 400, corners: 60, flaws: 4 },
  });
  const withBudget = (more: Partial<Budget>): NestProblem => ({
    ...problem,
    budget: { ...problem.budget, ...more },
  });
  const placements = (answer: string): string =>
    JSON.stringify((JSON.parse(answer) as NestAnswer).placements);
  let byJoins: readonly string[];

  beforeAll(() => {
    byJoins = [0, 1, 2].map((joins) => JSON.stringify(runNest(withBudget({ joins }))));
  });

  it('when the same problem runs twice, the answers are equal to the byte', () => {
    expect(JSON.stringify(runNest(withBudget({ joins: 1 })))).toBe(byJoins[1]);
  });

  it('when a search is stopped at any moment, it gives what as many joins give', () => {
    const run = startNest(problem);
    let units = 0;
    while (!run.done) {
      const { joins } = run.advance();
      if (++units % 7 !== 0) continue;
      const best = run.best();
      if (joins < 0) expect(best).toBeUndefined();
      else expect(JSON.stringify(best)).toBe(byJoins[joins]);
    }
    expect(JSON.stringify(run.best())).toBe(byJoins[2]);
    expect(new Set(byJoins.map(placements)).size).toBe(3);
  });

  it('when the seed differs, the improved answer differs', () => {
    const other = JSON.stringify(runNest(withBudget({ seed: 6, joins: 1 })));
    expect(placements(other)).not.toBe(placements(byJoins[1]!));
  });

  it('when it runs beside other work, the answer is the same', async () => {
    let pauses = 0;
    const pause = (): Promise<void> => {
      pauses++;
      return Promise.resolve();
    };
    const answer = await runNestAsync(withBudget({ joins: 1 }), { pause, pauseEvery: 3 });
    expect(JSON.stringify(answer)).toBe(byJoins[1]);
    expect(pauses).toBeGreaterThan(3);
  });
});

describe('driving a search', () => {
  it('when told to stop at once, it still gives the first layout', () => {
    const problem = sampleProblem(8, { pieces: 8 });
    const endless: NestProblem = { ...problem, budget: { seed: 1, streams: 1 } };
    const answer = runNest(endless, { shouldStop: () => true });
    expect(answer.joins).toBe(0);
    expect(answer.placements.length).toBeGreaterThan(0);
  });

  it('when nothing would ever end it, it is refused', () => {
    const problem = sampleProblem(8, { pieces: 8 });
    expect(() => runNest({ ...problem, budget: { seed: 1, streams: 1 } })).toThrow(
      expect.objectContaining({ code: 'bad-argument' }),
    );
  });

  it('when there is nothing to lay, it gives an empty answer', () => {
    expect(runNest(testProblem({}))).toMatchObject({ placements: [], unplaced: [] });
  });

  it('when joins go on, the used-up area never grows and pieces never get fewer', () => {
    const problem = sampleProblem(21, { pieces: 12, rules: 'plain', share: 0.5, joins: 3 });
    let last = { placedCount: 0, usedUpMm2: Infinity, joins: -1 };
    const run = startNest(problem);
    while (!run.done) {
      const now = run.advance();
      if (now.joins > last.joins && last.joins >= 0) {
        expect(now.placedCount).toBeGreaterThanOrEqual(last.placedCount);
        if (now.placedCount === last.placedCount) expect(now.usedUpMm2).toBeLessThanOrEqual(last.usedUpMm2);
      }
      last = now;
    }
    expect(last.joins).toBe(3);
  });
});

const UPRIGHT = { frame: 'sheet', arrowDeg: 0, targetsDeg: [0], toleranceDeg: 0, modulo: 360 } as const;

describe('fits that are known', () => {
  const square = rectangle(0, 0, 49, 49);

  it('when four squares fill a square but for the gap, all four are laid', () => {
    const problem = testProblem({
      items: [testItem('square', square)],
      setKinds: [testKind({ square: 4 })],
      distances: { gap: 2, edge: 0, void: 0 },
    });
    const answer = runNest(problem);
    expect(answer.placements).toHaveLength(4);
    expect(checkAnswer(problem, answer)).toEqual([]);
  });

  it('when squares fill a square to the last thousandth, all are laid', () => {
    const problem = testProblem({
      items: [testItem('square', rectangle(-12.5, -12.5, 12.5, 12.5))],
      setKinds: [testKind({ square: 16 })],
    });
    const answer = runNest(problem);
    expect(answer.placements).toHaveLength(16);
    expect(checkAnswer(problem, answer)).toEqual([]);
  });

  it('when the gap is a hundredth too wide for two side by side, what is not laid is told', () => {
    const problem = testProblem({
      items: [testItem('square', square, { angleRule: UPRIGHT })],
      setKinds: [testKind({ square: 4 })],
      distances: { gap: 2.01, edge: 0, void: 0 },
    });
    const answer = runNest(problem);
    expect(checkAnswer(problem, answer)).toEqual([]);
    expect(answer.placements.length + answer.unplaced.length).toBe(4);
    // Two can lie corner to corner; a third would need a side as long as two squares and the gap.
    expect(answer.placements.length).toBeLessThanOrEqual(2);
    expect(answer.unplaced.every(({ reason }) => reason === 'no-room')).toBe(true);
  });

  it('when a small piece fits only into the opening of a large one, it lies there', () => {
    const frame = {
      ...rectangle(0, 0, 100, 100),
      openings: [[...rectangle(30, 30, 70, 70).outer].reverse()],
    };
    const problem = testProblem({
      items: [testItem('frame', frame), testItem('patch', rectangle(0, 0, 38, 38))],
      setKinds: [testKind({ frame: 1, patch: 1 })],
      distances: { gap: 1, edge: 0, void: 0 },
    });
    const answer = runNest(problem);
    expect(answer.placements).toHaveLength(2);
    expect(checkAnswer(problem, answer)).toEqual([]);
  });
});

describe('placements that stay', () => {
  const items = [testItem('square', rectangle(0, 0, 40, 40))];
  const setKinds = [testKind({ square: 3 })];

  it('when a copy is fixed, it stays to the number and the others lie around it', () => {
    const fixed: FixedPlacement[] = [{ ...placement('square', 2, 31.237, 5.001), accepted: [] }];
    const problem = testProblem({ items, setKinds, fixed });
    const answer = runNest({ ...problem, budget: { seed: 1, streams: 1, joins: 1 } });
    expect(checkAnswer(problem, answer)).toEqual([]);
    expect(answer.placements).toContainEqual(placement('square', 2, 31.237, 5.001));
  });

  it('when a fixed copy breaks a rule that was accepted, it stays and the rest keeps the rules', () => {
    const fixed: FixedPlacement[] = [{ ...placement('square', 1, -5, 10), accepted: ['edge'] }];
    const problem = testProblem({ items, setKinds, fixed });
    const answer = runNest(problem);
    const faults = checkAnswer(problem, answer);
    expect(faults.map(({ rule, accepted }) => ({ rule, accepted }))).toEqual([
      { rule: 'edge', accepted: true },
    ]);
    expect(answer.placements).toHaveLength(3);
  });
});

describe('sets', () => {
  const strap = testItem('strap', rectangle(0, 0, 90, 10));
  const patch = testItem('patch', rectangle(0, 0, 30, 20));

  it('when sets are laid, only whole ones are', () => {
    const problem = testProblem({
      items: [strap, patch],
      setKinds: [testKind({ strap: 1, patch: 2 }, { sets: 'many' })],
      objective: { mode: 'sets', keepMm: [20, 20] },
      budget: { seed: 1, streams: 1, joins: 4 },
    });
    const answer = runNest(problem);
    expect(checkAnswer(problem, answer)).toEqual([]);
    expect(answer.placements.length % 3).toBe(0);
    // 2,100 mm² a set on 10,000 mm²: four at most.
    expect(answer.placements.length).toBeGreaterThanOrEqual(9);
    expect(answer.placements.length).toBeLessThanOrEqual(12);
    expect(answer.unplaced).toEqual([]);
  });

  it('when one piece of a set fits nowhere, the others tell that the set is incomplete', () => {
    const long = testItem('long', rectangle(0, 0, 300, 10));
    const problem = testProblem({
      items: [long, patch],
      setKinds: [testKind({ long: 1, patch: 1 })],
      objective: { mode: 'sets', keepMm: [20, 20] },
    });
    const answer = runNest(problem);
    expect(answer.placements).toEqual([]);
    expect(answer.unplaced.map(({ reason }) => reason)).toEqual([
      'larger-than-every-sheet',
      'set-incomplete',
    ]);
  });

  it('when a set keeps to one sheet, it goes to the one that has room for all of it', () => {
    const sheets = [
      testSheet('small', rectangle(0, 0, 45, 45)),
      testSheet('large', rectangle(0, 0, 100, 100)),
    ];
    const item = testItem('square', rectangle(0, 0, 40, 40), { sheets: ['small', 'large'] });
    const problem = testProblem({
      items: [item],
      sheets,
      setKinds: [testKind({ square: 4 }, { keep: 'sheet' })],
    });
    const answer = runNest(problem);
    expect(answer.placements.map(({ sheet }) => sheet)).toEqual(['large', 'large', 'large', 'large']);
  });
});

describe('pairs', () => {
  it('when the first of a pair lies where nothing answers it, both are laid anew', () => {
    // Three places: one on the axis, which comes first, and two on either side of it, farther on.
    const slots: readonly Region[] = [
      rectangle(0, 79, 42, 121),
      rectangle(200, 0, 242, 42),
      rectangle(200, 158, 242, 200),
    ];
    const voids = {
      id: 'voids',
      areas: subtractRegions([rectangle(0, 0, 300, 200)], slots),
      grade: 3,
      weak: false,
      isVoid: true,
      uncertaintyMm: 0,
    };
    const axis = [
      { x: 300, y: 100 },
      { x: 0, y: 100 },
    ];
    const square = rectangle(-20, -20, 20, 20);
    const problem = testProblem({
      items: [
        testItem('left', square),
        testItem('right', square, {
          mirrorOf: 'left',
          pair: { toleranceDeg: 90, distanceMm: 30 },
        }),
      ],
      setKinds: [testKind({ left: 1, right: 1 })],
      sheets: [
        testSheet('sheet', rectangle(0, 0, 300, 200), {
          qualities: [voids],
          direction: { axis, strokes: [] },
        }),
      ],
    });
    const answer = runNest(problem);
    expect(checkAnswer(problem, answer)).toEqual([]);
    expect(answer.unplaced).toEqual([]);
    expect(answer.placements.every(({ x }) => x > 200)).toBe(true);
  });
});

describe('good leather', () => {
  it('when a lining bears poor leather, it leaves the good leather to the front', () => {
    const poor = {
      id: 'belly',
      areas: [rectangle(0, 60, 120, 100)],
      grade: 2,
      weak: false,
      isVoid: false,
      uncertaintyMm: 0,
    };
    const problem = testProblem({
      items: [
        testItem('lining', rectangle(0, 0, 50, 38), {
          need: { maxGrade: 2, strong: false },
          priority: 1,
          angleRule: UPRIGHT,
        }),
        testItem('front', rectangle(0, 0, 50, 55)),
      ],
      setKinds: [testKind({ lining: 2, front: 2 })],
      sheets: [testSheet('sheet', rectangle(0, 0, 120, 100), { qualities: [poor] })],
    });
    const answer = runNest(problem);
    expect(checkAnswer(problem, answer)).toEqual([]);
    expect(answer.unplaced).toEqual([]);
  });
});
