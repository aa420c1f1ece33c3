import type { Curve, CurveSegment, Point } from '@hidebound/geometry';

/** The curve without segments that stay in place (rounding makes such); nothing if none is left. */
export function dropStandstill(curve: Curve): Curve | undefined {
  let at = curve.start;
  const segments: CurveSegment[] = [];
  for (const segment of curve.segments) {
    if (moves(at, segment)) segments.push(segment);
    at = segment.to;
  }
  if (segments.length === 0) return undefined;
  return segments.length === curve.segments.length ? curve : { ...curve, segments };
}

function moves(from: Point, segment: CurveSegment): boolean {
  switch (segment.kind) {
    case 'line':
      return !same(from, segment.to);
    case 'arc':
      return !same(from, segment.to) || !same(from, segment.via);
    case 'cubic':
      return !same(from, segment.to) || !same(from, segment.handle1) || !same(from, segment.handle2);
  }
}

function same(a: Point, b: Point): boolean {
  return a.x === b.x && a.y === b.y;
}
