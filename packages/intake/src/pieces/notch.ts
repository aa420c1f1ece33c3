import {
  atan2Deg,
  distanceBetween,
  flattenCurve,
  normalizeDeg,
  polylineNearest,
  roundPoint,
} from '@hidebound/geometry';
import type { Curve, Point, Ring } from '@hidebound/geometry';
import type { Notch } from '@hidebound/leather';
import { FLATTEN_MM, NOTCH_REACH_MM } from '../limits.js';

/**
 * The notch that a mark at the edge stands for: a line from the cut line inwards, or a V or wedge with its ends on the
 * cut line. It starts at the cut line, nearest to the mark (to the middle of its ends, if both reach the edge), and
 * points to the place of the mark that is farthest from the cut line. Nothing if the mark keeps away from the edge.
 */
export function notchOfMark(curve: Curve, cut: Ring): Notch | undefined {
  const edge = [...cut, cut[0]!];
  const points = flattenCurve(curve, FLATTEN_MM);
  const near = points.map((p) => ({ p, ...polylineNearest(edge, p) }));
  const foot = near.reduce((best, next) => (next.distance < best.distance ? next : best));
  if (foot.distance > NOTCH_REACH_MM) return undefined;
  const tip = near.reduce((best, next) => (next.distance > best.distance ? next : best));
  const [first, last] = [near[0]!, near.at(-1)!];
  const bothReach = first.distance <= NOTCH_REACH_MM && last.distance <= NOTCH_REACH_MM && points.length > 2;
  const at =
    bothReach && !curve.closed ? nearestTo(edge, first.p, last.p) : wedgeFoot(edge, near, foot.point);
  const depthMm = distanceBetween(at, tip.p);
  if (depthMm === 0) return undefined;
  return {
    at: roundPoint(at),
    angleDeg: normalizeDeg(atan2Deg(tip.p.y - at.y, tip.p.x - at.x)),
    depthMm: Math.round(depthMm * 1000) / 1000,
  };
}

function nearestTo(edge: readonly Point[], a: Point, b: Point): Point {
  return polylineNearest(edge, { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }).point;
}

/** Of a closed wedge, the middle of the corners that touch the edge; else the nearest place. */
function wedgeFoot(
  edge: readonly Point[],
  near: readonly { readonly p: Point; readonly distance: number }[],
  fallback: Point,
): Point {
  const touching = near.filter(({ distance }) => distance <= 0.1).map(({ p }) => p);
  if (touching.length < 2) return fallback;
  const far = touching.reduce((a, b) =>
    distanceBetween(touching[0]!, b) > distanceBetween(touching[0]!, a) ? b : a,
  );
  return nearestTo(edge, touching[0]!, far);
}
