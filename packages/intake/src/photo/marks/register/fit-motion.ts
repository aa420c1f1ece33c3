import type { Affine, Point } from '@hidebound/geometry';

/** Two places that are the same place: `from` is to come to lie on `to`. */
export interface MatchedPair {
  readonly from: Point;
  readonly to: Point;
}

/**
 * The turn and move that brings `from` nearest to `to`, by least squares; with `scaled`, growing or shrinking as well.
 * At least two pairs of different places. Source: B. K. P. Horn, H. M. Hilden, S. Negahdaripour 1988, in the plane.
 */
export function fitMotion(pairs: readonly MatchedPair[], scaled = false): Affine {
  const from = meanOf(pairs.map((pair) => pair.from));
  const to = meanOf(pairs.map((pair) => pair.to));
  let dot = 0;
  let cross = 0;
  let spread = 0;
  for (const pair of pairs) {
    const ax = pair.from.x - from.x;
    const ay = pair.from.y - from.y;
    const bx = pair.to.x - to.x;
    const by = pair.to.y - to.y;
    dot += ax * bx + ay * by;
    cross += ax * by - ay * bx;
    spread += ax * ax + ay * ay;
  }
  const length = Math.hypot(dot, cross);
  if (length === 0) return { a: 1, b: 0, c: 0, d: 1, e: to.x - from.x, f: to.y - from.y };
  const scale = scaled ? length / spread : 1;
  const cos = (scale * dot) / length;
  const sin = (scale * cross) / length;
  return {
    a: cos,
    b: sin,
    c: -sin,
    d: cos,
    e: to.x - cos * from.x + sin * from.y,
    f: to.y - sin * from.x - cos * from.y,
  };
}

/** By how much a motion that neither shears nor mirrors makes longer. */
export function scaleOf(motion: Affine): number {
  return Math.hypot(motion.a, motion.b);
}

/** How far a motion turns, -180 to 180 degrees, clockwise as seen. */
export function turnOfMotion(motion: Affine): number {
  return (Math.atan2(motion.b, motion.a) * 180) / Math.PI;
}

export function meanOf(points: readonly Point[]): Point {
  let x = 0;
  let y = 0;
  for (const point of points) {
    x += point.x;
    y += point.y;
  }
  return { x: x / points.length, y: y / points.length };
}
