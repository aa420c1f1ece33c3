import { isDeepStrictEqual } from 'node:util';
import { describe, expect, it } from 'vitest';
import type { CopyRef, RuleName } from '../types/problem.js';
import { checkAnswer } from './index.js';
import { LIMIT_CASES } from './test-limit-cases.js';
import { turnJob } from './test-jobs.js';

/** Whole jobs are turned by these: nothing, quarter turns (exact) and odd angles. */
const TURNS_DEG = [0, 90, 33.7, 211.123456, -0.000123];

interface Told {
  readonly rule: RuleName;
  readonly at: CopyRef | undefined;
  readonly other: CopyRef | string | undefined;
}

describe.each(LIMIT_CASES)('when $name', ({ build, rule, at, other, beyond, within }) => {
  const told = (off: number, turnDeg: number): readonly Told[] => {
    const { problem, answer } = turnJob(build(off), turnDeg, 12.5 * turnDeg, -3 * turnDeg);
    const all = checkAnswer(problem, answer).map((one) => ({ rule: one.rule, at: one.at, other: one.other }));
    return all.filter((one, i) => all.findIndex((earlier) => isDeepStrictEqual(earlier, one)) === i);
  };

  it.each(TURNS_DEG)('and within the limit, it passes (job turned by %d°)', (turnDeg) => {
    expect(told(0, turnDeg)).toEqual([]);
    expect(told(-within, turnDeg)).toEqual([]);
  });

  it.each(TURNS_DEG)('by a rounding, it passes (job turned by %d°)', (turnDeg) => {
    expect(told(within, turnDeg)).toEqual([]);
  });

  it.each(TURNS_DEG)('by ten times more, it fails by copy and cause (job turned by %d°)', (turnDeg) => {
    expect(told(beyond, turnDeg)).toEqual([{ rule, at, other }]);
  });
});
