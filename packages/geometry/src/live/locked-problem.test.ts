import { describe, expect, test } from 'vitest';
import { checkAnswer } from '../check/index.js';
import { copyKey } from '../check/violation.js';
import { GeometryError } from '../error.js';
import { runNest } from '../nest/run.js';
import { lockedProblem } from './locked-problem.js';
import { laidSample } from './test-benches.js';

describe('a problem with locked copies', () => {
  const { problem, answer } = laidSample(11, { pieces: 14, share: 0.25 });
  const locked = answer.placements.filter((_, i) => i % 3 === 0);

  test('when it is laid anew, the locked ones stay to the micrometre and the rest lies well around them', () => {
    const again = lockedProblem(
      { ...problem, budget: { ...problem.budget, seed: 99 } },
      answer.placements,
      locked,
    );
    const anew = runNest(again);
    expect(checkAnswer(again, anew)).toEqual([]);
    expect(locked.length).toBeGreaterThan(3);
    for (const one of locked) {
      expect(anew.placements.find((placement) => copyKey(placement) === copyKey(one))).toEqual(one);
    }
  });

  test('when something was fixed before, it stays so, and its accepted rules with it', () => {
    const [one, other] = [answer.placements[0]!, answer.placements[1]!];
    const before = { ...problem, fixed: [{ ...one, accepted: ['looks' as const] }] };
    expect(lockedProblem(before, answer.placements, [other]).fixed).toEqual([
      { ...one, accepted: ['looks'] },
      { ...other, accepted: [] },
    ]);
    const moved = answer.placements.map((placement, i) => (i === 0 ? { ...one, x: one.x + 5 } : placement));
    expect(lockedProblem(before, moved, [one]).fixed).toEqual([
      { ...one, x: one.x + 5, accepted: ['looks'] },
    ]);
    expect(lockedProblem(before, answer.placements, [{ ...one, accepted: [] }]).fixed).toEqual([
      { ...one, accepted: [] },
    ]);
  });

  test('when a locked copy lies nowhere, that is an error of the caller', () => {
    expect(() => lockedProblem(problem, [], locked)).toThrow(GeometryError);
  });
});
