import {
  arcCentre,
  circleCurve,
  curveFromPolyline,
  normalizeDeg,
  pointOnArc,
  transformCurve,
} from '@hidebound/geometry';
import type { Affine, ArcCircle, Curve, CurveSegment, Point } from '@hidebound/geometry';

/** A part of a circle, degrees anticlockwise with y up; start and end alike are the whole circle. */
export interface Arc {
  readonly center: Point;
  readonly radius: number;
  readonly startDeg: number;
  readonly endDeg: number;
}

const WHOLE_DEG = 360;
/** Angles this near to a whole turn are meant as one. */
const WHOLE_SLACK_DEG = 1e-7;
const HALF_DEG = 180;

export function arcCurve({ center, radius, startDeg, endDeg }: Arc): Curve {
  const turn = normalizeDeg(endDeg - startDeg);
  if (turn < WHOLE_SLACK_DEG || turn > WHOLE_DEG - WHOLE_SLACK_DEG) return circleCurve(center, radius);
  const circle: ArcCircle = { center, radius, startDeg, sweepDeg: turn };
  return { start: pointOnArc(circle, 0), segments: arcParts(circle), closed: false };
}

/** In two where it turns by more than half a circle, so that ends that nearly meet cost no digits. */
function arcParts(circle: ArcCircle, to = pointOnArc(circle, 1)): CurveSegment[] {
  if (Math.abs(circle.sweepDeg) <= HALF_DEG) return [{ kind: 'arc', via: pointOnArc(circle, 0.5), to }];
  return [
    { kind: 'arc', via: pointOnArc(circle, 0.25), to: pointOnArc(circle, 0.5) },
    { kind: 'arc', via: pointOnArc(circle, 0.75), to },
  ];
}

/** A corner of a polyline with the bulge of the way to the next one. */
export interface Vertex {
  readonly x: number;
  readonly y: number;
  readonly bulge: number;
}

/** Straight ways and arcs through all corners; nothing of fewer than two. One whose last corner is its first is closed. */
export function bulgedCurve(
  vertices: readonly Vertex[],
  isFlaggedClosed: boolean,
  plane: Affine,
): Curve | undefined {
  const first = vertices[0];
  const last = vertices[vertices.length - 1];
  if (first === undefined || last === undefined || vertices.length < 2) return undefined;
  const comesBack = vertices.length > 2 && first.x === last.x && first.y === last.y;
  const segments: CurveSegment[] = [];
  for (let i = 0; i + 1 < vertices.length; i++) addWay(segments, vertices[i]!, vertices[i + 1]!);
  if (isFlaggedClosed && !comesBack) addWay(segments, last, first);
  const curve = { start: { x: first.x, y: first.y }, segments, closed: isFlaggedClosed || comesBack };
  return plane.a > 0 ? curve : transformCurve(plane, curve);
}

/** A bulge is the tangent of a quarter of the turn, above 0 anticlockwise: the arc's middle lies half of it beside the chord. */
function addWay(segments: CurveSegment[], from: Vertex, next: Vertex): void {
  const to = { x: next.x, y: next.y };
  const { bulge } = from;
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  if (dx === 0 && dy === 0) return;
  if (bulge === 0) {
    segments.push({ kind: 'line', to });
    return;
  }
  const via = { x: (from.x + to.x + dy * bulge) / 2, y: (from.y + to.y - dx * bulge) / 2 };
  const circle = Math.abs(bulge) > 1 ? arcCentre(from, via, to) : 'straight';
  if (circle === 'straight') segments.push({ kind: 'arc', via, to });
  else segments.push(...arcParts(circle, to));
}

export function straightCurve(from: Point, to: Point): Curve {
  return curveFromPolyline([from, to], false);
}
