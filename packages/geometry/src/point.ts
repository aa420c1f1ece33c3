import { GRID_STEPS_PER_MM } from './tolerance.js';
import type { Point } from './types/shape.js';

/** Distance in mm. */
export function distanceBetween(a: Point, b: Point): number {
  return Math.sqrt(distanceSq(a, b));
}

/** Squared distance in mm². */
export function distanceSq(a: Point, b: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  return dx * dx + dy * dy;
}

/**
 * The nearest multiple of the 0.001 mm grid, as the double that its decimal text reads as. Halves go away
 * from zero, so that a mirrored shape rounds to the mirror image. Never gives -0.
 */
export function roundCoordinate(n: number): number {
  const steps = Math.round(Math.abs(n) * GRID_STEPS_PER_MM);
  return n < 0 && steps !== 0 ? -steps / GRID_STEPS_PER_MM : steps / GRID_STEPS_PER_MM;
}

/** Both coordinates on the 0.001 mm grid; moves the point by at most 0.71 µm. */
export function roundPoint(p: Point): Point {
  return { x: roundCoordinate(p.x), y: roundCoordinate(p.y) };
}
