import { angleBetweenDeg, atan2Deg, normalizeDeg } from '../number/trigonometry.js';
import { ROTATION_DECIMALS } from '../tolerance.js';
import type { AngleRule } from '../types/problem.js';
import type { Point } from '../types/shape.js';
import type { Repeat } from './repeat.js';

export interface PatternRotationOptions {
  readonly rule: AngleRule;
  /** The direction on the sheet from which a rule of frame `local` counts, degrees; of no effect otherwise. */
  readonly directionDeg?: number;
  /** Directions of straight sides, and the direction in which the sheet is used up, degrees. */
  readonly sidesDeg: readonly number[];
  /** At most so many; default 16. */
  readonly most?: number;
}

const MOST_ROTATIONS = 16;

/** True if a rule lets a piece lie at an angle and at its half turn, whatever the angle. */
export function allowsHalfTurn(rule: AngleRule): boolean {
  if (rule.frame === 'free' || rule.modulo === 180) return true;
  return rule.targetsDeg.every((target) =>
    rule.targetsDeg.some((other) => Math.abs(angleBetweenDeg(target + 180, other)) < 1e-9),
  );
}

/**
 * Rotations of a whole pattern to try, in degrees rounded as stored: those at which a row of pieces runs along one of
 * the sheet's sides, as far as the rule allows it, and for a bound item the rule's own targets first. The rule is
 * kept by the piece (and, in a double lattice, its half turn: see `allowsHalfTurn`).
 */
export function patternRotations(repeat: Repeat, options: PatternRotationOptions): number[] {
  const { rule, sidesDeg } = options;
  const aligned = rowDirectionsDeg(repeat).flatMap((row) =>
    sidesDeg.flatMap((side) => [side - row, side - row + 180]),
  );
  const turns = repeat.kind === 'double' ? [0] : [0, 180];
  if (rule.frame === 'free') return distinct(repeat, [...aligned, ...sidesDeg], options.most);
  const direction = rule.frame === 'local' ? (options.directionDeg ?? 0) : 0;
  const half = rule.modulo === 180 ? turns : [0];
  const bases = half.flatMap((turn) =>
    rule.targetsDeg.map((target) => direction + target - rule.arrowDeg + turn),
  );
  const within = bases.flatMap((base) =>
    aligned.filter((deg) => Math.abs(angleBetweenDeg(deg, base)) <= rule.toleranceDeg),
  );
  return distinct(repeat, [...bases, ...within], options.most);
}

/** Directions in which pieces of the pattern stand in rows, nearest neighbours first, degrees. */
function rowDirectionsDeg({ u, v }: Repeat): number[] {
  const rows: Point[] = [u, v, { x: u.x + v.x, y: u.y + v.y }, { x: u.x - v.x, y: u.y - v.y }];
  return rows.map(({ x, y }) => atan2Deg(y, x));
}

const STEPS_PER_DEGREE = Number(`1e${ROTATION_DECIMALS}`);

/** A double lattice turned by half a turn is itself: of it one of the two is enough. */
function distinct(repeat: Repeat, rotations: readonly number[], most = MOST_ROTATIONS): number[] {
  const kept: number[] = [];
  for (const rotation of rotations) {
    const deg = normalizeDeg(Math.round(normalizeDeg(rotation) * STEPS_PER_DEGREE) / STEPS_PER_DEGREE);
    const modulo = repeat.kind === 'double' ? 180 : 360;
    const isKnown = kept.some((other) => Math.abs(angleBetweenDeg(deg, other, modulo)) < 1e-6);
    if (!isKnown && kept.length < most) kept.push(deg);
  }
  return kept;
}
