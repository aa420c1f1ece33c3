import { flattenCurve, pointInRing } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import type { Hide } from '@hidebound/leather';

/** Whether a place lies within the hide's outline. */
export function pointInside({ outline }: Hide, place: Point): boolean {
  return pointInRing(place, flattenCurve(outline).slice(0, -1)) !== 'outside';
}
