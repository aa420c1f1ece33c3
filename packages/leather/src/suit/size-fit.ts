import { convexHull, distanceBetween, minimumWidthBox, regionArea } from '@hidebound/geometry';
import type { Region } from '@hidebound/geometry';

/** What of a shape tells that it can't lie in a smaller one. */
export interface ShapeSize {
  /** Between the two corners that are furthest apart, mm. */
  readonly acrossMm: number;
  /** Least width between parallel lines, mm. */
  readonly narrowMm: number;
  readonly areaMm2: number;
}

export function sizeOf(region: Region): ShapeSize {
  const hull = convexHull(region.outer);
  let acrossMm = 0;
  for (const [i, a] of hull.entries()) {
    for (const b of hull.slice(i + 1)) acrossMm = Math.max(acrossMm, distanceBetween(a, b));
  }
  return { acrossMm, narrowMm: minimumWidthBox(hull).width, areaMm2: regionArea(region) };
}

/** True if no way of turning it makes the piece lie within the hide; false proves nothing. */
export function isTooLarge(piece: ShapeSize, hide: ShapeSize): boolean {
  return piece.acrossMm > hide.acrossMm || piece.narrowMm > hide.narrowMm || piece.areaMm2 > hide.areaMm2;
}
