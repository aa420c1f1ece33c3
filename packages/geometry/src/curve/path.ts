import { GeometryError } from '../error.js';
import { roundPoint } from '../point.js';
import type { Curve, CurveSegment, Point, Polyline } from '../types/shape.js';

/** A chain of lines. If `closed`, a last corner that does not repeat the first is joined to it. */
export function curveFromPolyline(points: readonly Point[], closed: boolean): Curve {
  const start = points[0];
  if (start === undefined || points.length < 2) {
    throw new GeometryError('empty-shape', 'A line needs two points at least.');
  }
  const segments: CurveSegment[] = points.slice(1).map((to) => ({ kind: 'line', to }));
  const last = points[points.length - 1]!;
  if (closed && (last.x !== start.x || last.y !== start.y)) segments.push({ kind: 'line', to: start });
  return { start, segments, closed };
}

/** A circle as two half arcs, clockwise as seen, from its rightmost point. */
export function circleCurve(center: Point, radius: number): Curve {
  const right = { x: center.x + radius, y: center.y };
  const left = { x: center.x - radius, y: center.y };
  return {
    start: right,
    segments: [
      { kind: 'arc', via: { x: center.x, y: center.y + radius }, to: left },
      { kind: 'arc', via: { x: center.x, y: center.y - radius }, to: right },
    ],
    closed: true,
  };
}

/** Where the curve starts and where it ends. */
export function curveEndPoints(curve: Curve): { readonly start: Point; readonly end: Point } {
  return { start: curve.start, end: curve.segments[curve.segments.length - 1]?.to ?? curve.start };
}

/** Each segment with the point that it starts from. */
export function curveSteps(curve: Curve): { readonly from: Point; readonly segment: CurveSegment }[] {
  let from = curve.start;
  return curve.segments.map((segment) => {
    const step = { from, segment };
    from = segment.to;
    return step;
  });
}

/** Starts of all segments, and the end: the corners that stay when curves are taken for straight. */
export function curveCorners(curve: Curve): Polyline {
  return [curve.start, ...curve.segments.map((segment) => segment.to)];
}

/** The same line, drawn from its end to its start. */
export function reverseCurve(curve: Curve): Curve {
  const steps = curveSteps(curve).reverse();
  return {
    start: curveEndPoints(curve).end,
    segments: steps.map(({ from, segment }) => reverseSegment(segment, from)),
    closed: curve.closed,
  };
}

/** Every given point on the 0.001 mm grid. A closed curve stays closed. */
export function roundCurve(curve: Curve): Curve {
  return {
    start: roundPoint(curve.start),
    segments: curve.segments.map((segment) => mapSegment(segment, roundPoint)),
    closed: curve.closed,
  };
}

/** The segment with each of its points replaced. */
export function mapSegment(segment: CurveSegment, map: (p: Point) => Point): CurveSegment {
  switch (segment.kind) {
    case 'line':
      return { kind: 'line', to: map(segment.to) };
    case 'arc':
      return { kind: 'arc', via: map(segment.via), to: map(segment.to) };
    case 'cubic':
      return {
        kind: 'cubic',
        handle1: map(segment.handle1),
        handle2: map(segment.handle2),
        to: map(segment.to),
      };
  }
}

function reverseSegment(segment: CurveSegment, to: Point): CurveSegment {
  switch (segment.kind) {
    case 'line':
      return { kind: 'line', to };
    case 'arc':
      return { kind: 'arc', via: segment.via, to };
    case 'cubic':
      return { kind: 'cubic', handle1: segment.handle2, handle2: segment.handle1, to };
  }
}
