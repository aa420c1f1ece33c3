import { roundDeg, turnDeg } from '../nest/angle.js';
import type { FieldCache } from '../nest/field-cache.js';
import { cacheIndex } from '../nest/field-cache.js';
import type { Random } from '../number/random.js';
import type { AngleRule } from '../types/problem.js';
import { ALIGNED_SHARE } from './constants.js';
import type { Angles } from './world.js';

/** The angles that a rule allows, on sheets whose fields are given. */
export function anglesOf(rule: AngleRule, fields: readonly FieldCache[]): Angles {
  if (rule.frame === 'free') {
    return { listDeg: undefined, draw: (random) => 360 * random.next(), nearest: (deg) => deg };
  }
  const bases = rule.targetsDeg.flatMap((target) => {
    const base = target - rule.arrowDeg;
    return rule.modulo === 180 ? [base, base + 180] : [base];
  });
  if (rule.frame === 'sheet') return sheetAngles(bases, rule.toleranceDeg);
  return localAngles(bases, rule.toleranceDeg, (sheet, u, v) => {
    const field = fields[sheet]!;
    return field.directionDeg[cacheIndex(field, u, v)]!;
  });
}

function sheetAngles(bases: readonly number[], tolerance: number): Angles {
  const listDeg = tolerance === 0 ? [...new Set(bases.map(roundDeg))] : undefined;
  return {
    listDeg,
    draw: (random) => drawAbout(random, bases, tolerance),
    nearest: (deg) => nearestWithin(deg, bases, tolerance),
  };
}

function localAngles(
  bases: readonly number[],
  tolerance: number,
  directionAt: (sheet: number, u: number, v: number) => number,
): Angles {
  return {
    listDeg: undefined,
    draw: (random, sheet, u, v) => directionAt(sheet, u, v) + drawAbout(random, bases, tolerance),
    nearest: (deg, sheet, u, v) => {
      const direction = directionAt(sheet, u, v);
      return direction + nearestWithin(deg - direction, bases, tolerance);
    },
  };
}

/** A share of the draws is right on the target. */
function drawAbout(random: Random, bases: readonly number[], tolerance: number): number {
  const base = bases[random.integer(bases.length)]!;
  if (tolerance === 0 || random.next() < ALIGNED_SHARE) return base;
  return base + (2 * random.next() - 1) * tolerance;
}

function nearestWithin(deg: number, bases: readonly number[], tolerance: number): number {
  let best = NaN;
  let least = Infinity;
  for (const base of bases) {
    const turn = turnDeg(deg, base, 360);
    const bounded = turn > tolerance ? tolerance : turn < -tolerance ? -tolerance : turn;
    const off = Math.abs(turn - bounded);
    if (off >= least) continue;
    least = off;
    best = base + bounded;
  }
  return best;
}
