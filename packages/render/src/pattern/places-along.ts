import { distanceBetween, flattenCurve } from '@hidebound/geometry';
import type { Curve, Polyline } from '@hidebound/geometry';

/** Chords for telling what lies where. */
const CHORD_MM = 0.05;
/** Places are no farther apart: a narrower overlap is no piece's width, and no letter is much smaller. */
const STEP_MM = 2;

/** Places of a curve, close enough together to tell what it passes through. */
export function placesAlong(curve: Curve): Polyline {
  const points = flattenCurve(curve, CHORD_MM);
  return points.flatMap((p, i) => {
    const before = points[i - 1];
    if (before === undefined) return [p];
    const steps = Math.ceil(distanceBetween(before, p) / STEP_MM);
    return Array.from({ length: steps }, (_, k) => {
      const share = (k + 1) / steps;
      return { x: before.x + (p.x - before.x) * share, y: before.y + (p.y - before.y) * share };
    });
  });
}
