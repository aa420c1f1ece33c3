import { curveArea, flattenCurve, pointInRing, ringBox } from '@hidebound/geometry';
import type { Curve } from '@hidebound/geometry';
import { FLATTEN_MM } from '../limits.js';

/**
 * Which outlines of one element are holes in its filled area: by `evenodd` those within an odd number of others, by
 * `nonzero` those around which the windings add up to nothing (SVG 2, section 13.5). An unfilled element is read by
 * `evenodd`: a drawing program that combines outlines means a hole, whatever way they run.
 */
export function holesAmong(
  curves: readonly Curve[],
  fillRule: string | undefined,
  isFilled: boolean,
): boolean[] {
  const isEvenOdd = fillRule === 'evenodd' || !isFilled;
  const outlines = curves.map((curve) => {
    if (!curve.closed) return undefined;
    const ring = flattenCurve(curve, FLATTEN_MM);
    return { ring, box: ringBox(ring), turn: Math.sign(curveArea(curve)), area: Math.abs(curveArea(curve)) };
  });
  return outlines.map((inner, i) => {
    if (inner === undefined) return false;
    let depth = 0;
    let winding = inner.turn;
    outlines.forEach((outer, j) => {
      if (i === j || outer === undefined || outer.area <= inner.area) return;
      const p = inner.ring[0]!;
      const { box } = outer;
      if (p.x < box.minX || p.x > box.maxX || p.y < box.minY || p.y > box.maxY) return;
      if (pointInRing(p, outer.ring) !== 'inside') return;
      depth++;
      winding += outer.turn;
    });
    return depth > 0 && (isEvenOdd ? depth % 2 === 1 : winding === 0);
  });
}
