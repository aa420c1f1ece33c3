import { createRandom } from '@hidebound/geometry';
import { cumulativeStdNormalProbability, mean, quantile } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { chanceOfCount, countFor, inHundred, sizeClasses } from './chances.js';
import { areaForChance, chanceOfEnough, needAfter } from './need.js';
import type { NeedBeliefs } from './need.js';
import { squareFeetToMm2 } from '../../units/area.js';

const SHARP: NeedBeliefs = { gain: 0, usualSpread: 0.001, unknown: 0.001 };
const USUAL: NeedBeliefs = { gain: 0.1, usualSpread: 0.2, unknown: 0.1 };

describe('the need after trials', () => {
  test('when nothing is unknown, it is the sample itself with one more case at its mean', () => {
    const need = needAfter([100, 200, 300, 400], 0, SHARP);
    // Five cases: 100, 200, 250, 300, 400; counted by hand.
    expect(chanceOfEnough(need, 150)).toBeCloseTo(1 / 5, 6);
    expect(chanceOfEnough(need, 275)).toBeCloseTo(3 / 5, 6);
    expect(chanceOfEnough(need, 500)).toBeCloseTo(1, 6);
    expect(Math.abs(areaForChance(need, 0.5) - 250)).toBeLessThan(1);
  });

  test('when a longer search gains a tenth, every area that is enough falls by a tenth', () => {
    const trials = [100, 130, 150];
    const without = needAfter(trials, 0, { ...USUAL, gain: 0 });
    const withGain = needAfter(trials, 0, { ...USUAL, gain: 0.1 });
    for (const chance of [0.1, 0.5, 0.9]) {
      expect(areaForChance(withGain, chance)).toBeCloseTo(0.9 * areaForChance(without, chance), 6);
    }
  });

  test('when there is no trial yet, the guess stands in the middle, and widely', () => {
    const need = needAfter([], 1000, USUAL);
    expect(areaForChance(need, 0.5)).toBeCloseTo(900, 3);
    // Spreads add as squares: sqrt(0.2² + 0.1²) of 900; 1.31 of it to nine in ten (table of Student's t, 30 degrees).
    expect(Math.abs(areaForChance(need, 0.9) - (900 + 1.31 * 900 * Math.sqrt(0.05)))).toBeLessThan(1);
  });

  // Judge: simple-statistics, a general-purpose library.
  test('when trials are many and nothing is unknown, its quantiles are those of the sample', () => {
    const random = createRandom(5);
    const trials = Array.from({ length: 400 }, () => 1000 + 60 * random.normal());
    const need = needAfter(trials, 0, SHARP);
    for (const chance of [0.1, 0.25, 0.5, 0.9, 0.95]) {
      expect(Math.abs(areaForChance(need, chance) - quantile(trials, chance))).toBeLessThan(5);
    }
  });

  // Judge: the normal distribution of simple-statistics; the kernel is within 0.006 of it, and that library within 0.001.
  test('when needs are blurred, the chance is the mean of normal chances about each of them', () => {
    const trials = [700, 1000, 1020, 1600];
    const need = needAfter(trials, 0, { gain: 0, unknown: 0.1, usualSpread: 0 });
    const middles = [...trials, mean(trials)];
    for (const area of [600, 900, 1100, 1500, 1900]) {
      const chances = middles.map((own) => cumulativeStdNormalProbability((area - own) / (0.1 * own)));
      expect(Math.abs(chanceOfEnough(need, area) - mean(chances))).toBeLessThan(0.008);
    }
  });

  test('when an area is asked for a chance, it has that chance', () => {
    const need = needAfter([100, 130, 150, 400], 0, USUAL);
    for (const chance of [0.05, 0.3, 0.5, 0.77, 0.95]) {
      expect(chanceOfEnough(need, areaForChance(need, chance))).toBeCloseTo(chance, 9);
    }
  });
});

describe('numbers of hides', () => {
  const need = needAfter([300, 320, 340], 0, USUAL);
  const area = { min: 90, max: 110 };

  test('when there are more hides, they are enough at least as often', () => {
    const chances = [1, 2, 3, 4, 5].map((count) => chanceOfCount(need, count, area));
    expect(chances).toEqual([...chances].sort((a, b) => a - b));
    expect(chances[0]).toBeLessThan(0.1);
    expect(chances[4]).toBeGreaterThan(0.9);
  });

  test('when hides are larger, they are enough at least as often', () => {
    const small = chanceOfCount(need, 3, { min: 90, max: 100 });
    expect(chanceOfCount(need, 3, { min: 100, max: 110 })).toBeGreaterThan(small);
  });

  test('when all hides are of one size, the chance is that of their area', () => {
    expect(chanceOfCount(need, 3, { min: 100, max: 100 })).toBeCloseTo(chanceOfEnough(need, 300), 9);
  });

  test('when a level is asked for, the number is the least that reaches it', () => {
    for (const level of [50, 90, 95]) {
      const count = countFor(need, level, area)!;
      expect(inHundred(chanceOfCount(need, count, area))).toBeGreaterThanOrEqual(level);
      if (count > 1) expect(inHundred(chanceOfCount(need, count - 1, area))).toBeLessThan(level);
    }
  });

  test('when hides are far too small for any number of them, there is none', () => {
    expect(countFor(needAfter([1e6], 0, USUAL), 90, { min: 1, max: 2 })).toBeUndefined();
  });

  test('when a chance is told in hundreds, it is cut and never certain', () => {
    expect([0.9399, 0.94, 0.999, 1, 0.0099].map(inHundred)).toEqual([93, 94, 99, 99, 0]);
  });

  test('when sizes are sorted, classes of 2 ft² cover the span without a gap, and of 1 ft² for small skins', () => {
    const ft2 = (from: number, to: number) => ({ min: squareFeetToMm2(from), max: squareFeetToMm2(to) });
    const sides = sizeClasses(ft2(18, 22));
    expect(sides.map(({ min, max }) => [min, max].map((mm2) => Math.round(mm2 / 92903.04)))).toEqual([
      [18, 20],
      [20, 22],
    ]);
    expect(sizeClasses(ft2(4, 7))).toHaveLength(3);
    expect(sizeClasses(ft2(20, 20))).toHaveLength(1);
  });
});
