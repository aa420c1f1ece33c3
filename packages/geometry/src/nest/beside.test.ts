import { describe, expect, it } from 'vitest';
import { checkAnswer } from '../check/index.js';
import { runNest } from './run.js';
import { rectangle, testItem, testKind, testProblem, testSheet } from './test-problems.js';

/** Fronts and backs of six sets on one long sheet. */
function problemWith(beside: readonly (readonly [string, string])[]) {
  return testProblem({
    items: [testItem('front', rectangle(-40, -30, 40, 30)), testItem('back', rectangle(-35, -30, 35, 30))],
    setKinds: [testKind({ front: 1, back: 1 }, { sets: 6, beside })],
    sheets: [testSheet('sheet', rectangle(0, 0, 330, 300))],
    distances: { gap: 2, edge: 2, void: 0 },
  });
}

function apartIn(problem: ReturnType<typeof problemWith>): number {
  const { placements } = runNest(problem);
  expect(checkAnswer(problem, { ...runNest(problem) })).toEqual([]);
  return [1, 2, 3, 4, 5, 6].reduce((sum, set) => {
    const [a, b] = ['front', 'back'].map((item) => placements.find((p) => p.item === item && p.set === set)!);
    return sum + Math.hypot(a!.x - b!.x, a!.y - b!.y);
  }, 0);
}

describe('faces that end up side by side', () => {
  it('when an order names them, each set gets its two from leather closer together, and nothing else moves', () => {
    const named = problemWith([['front', 'back']]);
    const unnamed = problemWith([]);
    const placesOf = (problem: ReturnType<typeof problemWith>) =>
      runNest(problem)
        .placements.map(({ item, x, y, rotationDeg }) => `${item} ${x} ${y} ${rotationDeg}`)
        .sort();
    expect(placesOf(named)).toEqual(placesOf(unnamed));
    expect(apartIn(named)).toBeLessThan(apartIn(unnamed));
  });
});
