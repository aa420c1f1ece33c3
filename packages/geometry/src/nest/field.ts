import { directionAt, thicknessAt } from '../direction-field.js';
import type { DirectionField, ThicknessField } from '../types/problem.js';

/**
 * The local direction at a place in degrees, clockwise from the sheet's x axis; NaN where it is unknown. Without
 * an axis it is one of two opposite directions (see `isDirected`).
 */
export function directionDegAt(field: DirectionField | undefined, x: number, y: number): number {
  if (field === undefined) return NaN;
  const local = directionAt(field, { x, y });
  return local === 'unknown' ? NaN : local.angleDeg;
}

/** A direction without an axis does not tell head from tail. */
export function isDirected(field: DirectionField | undefined): boolean {
  return field?.axis !== undefined;
}

/** Distance in mm to the axis; NaN if the sheet has none. */
export function axisDistanceAt(field: DirectionField | undefined, x: number, y: number): number {
  if (field?.axis === undefined) return NaN;
  let least = NaN;
  for (let i = 0; i + 1 < field.axis.length; i++) {
    const a = field.axis[i]!;
    const dx = field.axis[i + 1]!.x - a.x;
    const dy = field.axis[i + 1]!.y - a.y;
    const length2 = dx * dx + dy * dy;
    if (length2 === 0) continue;
    const t = Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / length2));
    const ex = a.x + t * dx - x;
    const ey = a.y + t * dy - y;
    const distance = Math.sqrt(ex * ex + ey * ey);
    if (!(distance >= least)) least = distance;
  }
  return least;
}

/** The range of thickness that the leather may have at a place: one number where readings tell it. */
export function thicknessRangeAt(field: ThicknessField, x: number, y: number): readonly [number, number] {
  return thicknessAt(field, { x, y });
}
