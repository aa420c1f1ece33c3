import type { Placement } from '../types/problem.js';
import type { Placing } from './area.js';

const QUARTER_TURNS: readonly (readonly [number, number])[] = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
];

/** Cosine and sine of an angle in degrees; exact for whole quarter turns. */
export function cosSinOfDeg(angleDeg: number): readonly [cos: number, sin: number] {
  const turned = ((angleDeg % 360) + 360) % 360;
  if (turned % 90 === 0) return QUARTER_TURNS[(turned / 90) % 4]!;
  const radians = (turned * Math.PI) / 180;
  return [Math.cos(radians), Math.sin(radians)];
}

/** How a placement moves its item: clockwise turn about (0, 0), then the move by x, y. */
export function placingOf(placement: Placement): Placing {
  const [cos, sin] = cosSinOfDeg(placement.rotationDeg);
  return { cos, sin, x: placement.x, y: placement.y };
}

/** Direction of a vector in degrees, clockwise from the x axis as seen (y grows downwards). */
export function angleDegOf(x: number, y: number): number {
  return (Math.atan2(y, x) * 180) / Math.PI;
}

/** How far two angles lie apart, 0 to modulo / 2 degrees, when `modulo` degrees count as no turn. */
export function angleApartDeg(one: number, other: number, modulo: 180 | 360): number {
  const turned = (((one - other) % modulo) + modulo) % modulo;
  return Math.min(turned, modulo - turned);
}
