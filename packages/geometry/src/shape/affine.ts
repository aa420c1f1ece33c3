import { GeometryError } from '../error.js';
import { sinCosDeg } from '../number/trigonometry.js';
import type { Affine, Point, Region, Ring } from '../types/shape.js';

/** Leaves everything where it is. */
export const IDENTITY: Affine = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

/** Mirrors across the y axis: x becomes -x. */
export const MIRROR_X: Affine = { a: -1, b: 0, c: 0, d: 1, e: 0, f: 0 };

/** Moves by (dx, dy) mm. */
export function translation(dx: number, dy: number): Affine {
  return { a: 1, b: 0, c: 0, d: 1, e: dx, f: dy };
}

/** Turns about the origin, clockwise as seen (y grows downwards); exact at multiples of 90 degrees. */
export function rotationDeg(deg: number): Affine {
  const { sin, cos } = sinCosDeg(deg);
  return { a: cos, b: sin, c: -sin + 0, d: cos, e: 0, f: 0 };
}

/** Scales about the origin. */
export function scaling(sx: number, sy: number = sx): Affine {
  return { a: sx, b: 0, c: 0, d: sy, e: 0, f: 0 };
}

/** First `inner`, then `outer`. */
export function composeAffine(outer: Affine, inner: Affine): Affine {
  return {
    a: outer.a * inner.a + outer.c * inner.b,
    b: outer.b * inner.a + outer.d * inner.b,
    c: outer.a * inner.c + outer.c * inner.d,
    d: outer.b * inner.c + outer.d * inner.d,
    e: outer.a * inner.e + outer.c * inner.f + outer.e,
    f: outer.b * inner.e + outer.d * inner.f + outer.f,
  };
}

/** Where a point goes. */
export function applyAffine(m: Affine, p: Point): Point {
  return { x: m.a * p.x + m.c * p.y + m.e + 0, y: m.b * p.x + m.d * p.y + m.f + 0 };
}

/** By what factor areas grow; negative if the transform mirrors. */
export function affineDeterminant(m: Affine): number {
  return m.a * m.d - m.b * m.c;
}

/** The way back. Throws `bad-argument` if the transform flattens the plane. */
export function invertAffine(m: Affine): Affine {
  const det = affineDeterminant(m);
  if (det === 0 || !Number.isFinite(det)) {
    throw new GeometryError('bad-argument', 'A transform that flattens the plane has no inverse.');
  }
  return {
    a: m.d / det + 0,
    b: -m.b / det + 0,
    c: -m.c / det + 0,
    d: m.a / det + 0,
    e: (m.c * m.f - m.d * m.e) / det + 0,
    f: (m.b * m.e - m.a * m.f) / det + 0,
  };
}

/** Keeps the sign of the ring's area: a mirroring transform reverses the order of the corners. */
export function transformRing(m: Affine, ring: Ring): Ring {
  const moved = ring.map((p) => applyAffine(m, p));
  return affineDeterminant(m) < 0 ? moved.reverse() : moved;
}

/** Outer ring and openings, each with its sign kept. */
export function transformRegion(m: Affine, region: Region): Region {
  return {
    outer: transformRing(m, region.outer),
    openings: region.openings.map((opening) => transformRing(m, opening)),
  };
}
