/** A place, in mm; x grows to the right, y grows downwards, as in SVG. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * A closed polygon without a repeated last corner, at least three corners.
 * Outer rings have positive signed area in the y-down frame, openings negative.
 */
export type Ring = readonly Point[];

/** An open chain of corners, at least two. */
export type Polyline = readonly Point[];

/** An area with openings. The openings lie inside the outer ring and apart from each other. */
export interface Region {
  readonly outer: Ring;
  readonly openings: readonly Ring[];
}

/** An axis-parallel box, in mm. */
export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** Six numbers in SVG order: x' = a x + c y + e, y' = b x + d y + f. */
export interface Affine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

/** A straight run to `to`. */
export interface LineSegment {
  readonly kind: 'line';
  readonly to: Point;
}

/** A circular arc to `to` that passes through `via`; stays the same arc when rounded, turned or mirrored. */
export interface ArcSegment {
  readonly kind: 'arc';
  readonly via: Point;
  readonly to: Point;
}

/** A cubic Bézier to `to` with its two handles. */
export interface CubicSegment {
  readonly kind: 'cubic';
  readonly handle1: Point;
  readonly handle2: Point;
  readonly to: Point;
}

export type CurveSegment = LineSegment | ArcSegment | CubicSegment;

/** A drawn line, kept as curves. A closed one ends where it starts (its last segment's `to` is `start`). */
export interface Curve {
  readonly start: Point;
  readonly segments: readonly CurveSegment[];
  readonly closed: boolean;
}
