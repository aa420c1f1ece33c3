import { GeometryError } from '../error.js';
import { atan2Deg, normalizeDeg } from '../number/trigonometry.js';
import { TIE_SHARE } from '../tolerance.js';
import type { Point, Ring } from '../types/shape.js';
import { convexHull } from './hull.js';

/** A rectangle at any angle. */
export interface TurnedBox {
  /** The shorter side, in mm. */
  readonly width: number;
  /** The longer side, in mm. */
  readonly length: number;
  /** Direction of the longer side, in [0, 180). */
  readonly angleDeg: number;
  /** Oriented as an outer ring. */
  readonly corners: Ring;
}

/**
 * Of the rectangles around the points the one of the smallest width, and of those the shortest. One of its long
 * sides lies on an edge of the convex hull (Houle & Toussaint 1988). Throws `empty-shape` for no points.
 */
export function minimumWidthBox(points: readonly Point[]): TurnedBox {
  const hull = convexHull(points);
  const first = hull[0];
  if (first === undefined) throw new GeometryError('empty-shape', 'No points, so no box around them.');
  const from = { ahead: 1, far: 1, behind: 1 };
  let best: TurnedBox | undefined;
  for (let i = 0; i < hull.length; i++) {
    const box = boxOnEdge(hull, i, from);
    if (best === undefined || isBetter(box, best)) best = box;
  }
  return best!;
}

/** Corners at which the calipers stand; they only ever go on around the hull. */
interface Calipers {
  ahead: number;
  far: number;
  behind: number;
}

function boxOnEdge(hull: Ring, i: number, at: Calipers): TurnedBox {
  const n = hull.length;
  const a = hull[i]!;
  const b = hull[(i + 1) % n]!;
  const length = Math.sqrt((b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y));
  const ux = length === 0 ? 1 : (b.x - a.x) / length;
  const uy = length === 0 ? 0 : (b.y - a.y) / length;
  const along = (k: number) => (hull[k % n]!.x - a.x) * ux + (hull[k % n]!.y - a.y) * uy;
  const across = (k: number) => (hull[k % n]!.y - a.y) * ux - (hull[k % n]!.x - a.x) * uy;
  const advance = (from: number, value: (k: number) => number) => {
    let k = from;
    while (k < i + n && value(k + 1) > value(k)) k++;
    return k;
  };
  at.ahead = advance(Math.max(at.ahead, i + 1), along);
  at.far = advance(Math.max(at.far, at.ahead), across);
  at.behind = advance(Math.max(at.behind, at.far), (k) => -along(k));
  const near = Math.min(along(at.behind), 0);
  const farAlong = along(at.ahead);
  const depth = across(at.far);
  const corner = (s: number, t: number): Point => ({ x: a.x + s * ux - t * uy, y: a.y + s * uy + t * ux });
  const corners = [corner(near, 0), corner(farAlong, 0), corner(farAlong, depth), corner(near, depth)];
  const deg = normalizeDeg(atan2Deg(uy, ux));
  return { width: depth, length: farAlong - near, angleDeg: deg >= 180 ? deg - 180 : deg, corners };
}

/** Better by more than rounding, so that a ruler's two long sides give the first of them. */
function isBetter(a: TurnedBox, b: TurnedBox): boolean {
  const slack = TIE_SHARE * (b.length + b.width);
  if (Math.abs(a.width - b.width) > slack) return a.width < b.width;
  return a.length < b.length - slack;
}
