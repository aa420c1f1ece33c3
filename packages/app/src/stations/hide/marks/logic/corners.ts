import { curveSteps, curveStretch, roundCurve, roundPoint } from '@hidebound/geometry';
import type { Curve, CurveSegment, Point } from '@hidebound/geometry';

/** An edge with fewer corners than this has no inside. */
const FEWEST = 3;

/** The same closed curve, started at another of its corners. */
export function startedAtCorner(curve: Curve, corner: number): Curve {
  if (corner === 0) return curve;
  const start = curve.segments[corner - 1]?.to ?? curve.start;
  return { ...curve, start, segments: [...curve.segments.slice(corner), ...curve.segments.slice(0, corner)] };
}

/** A corner of a closed curve moved; handles beside it go with it, and an arc's middle goes half of the way. */
export function movedCorner(curve: Curve, corner: number, to: Point): Curve {
  const turned = startedAtCorner(curve, corner);
  const by = { x: to.x - turned.start.x, y: to.y - turned.start.y };
  const last = turned.segments.length - 1;
  const segments = turned.segments.map((segment, i) => {
    const started = i === 0 ? withStartMoved(segment, by) : segment;
    return i === last ? withEndMoved(started, by, to) : started;
  });
  const moved = roundCurve({ ...turned, start: to, segments });
  return startedAtCorner(moved, (curve.segments.length - corner) % curve.segments.length);
}

function shift({ x, y }: Point, by: Point, share = 1): Point {
  return { x: x + by.x * share, y: y + by.y * share };
}

function withStartMoved(segment: CurveSegment, by: Point): CurveSegment {
  if (segment.kind === 'cubic') return { ...segment, handle1: shift(segment.handle1, by) };
  return segment.kind === 'arc' ? { ...segment, via: shift(segment.via, by, 0.5) } : segment;
}

function withEndMoved(segment: CurveSegment, by: Point, to: Point): CurveSegment {
  if (segment.kind === 'cubic') return { ...segment, handle2: shift(segment.handle2, by), to };
  return segment.kind === 'arc' ? { ...segment, via: shift(segment.via, by, 0.5), to } : { ...segment, to };
}

/** Without one corner; its neighbours are joined. Undefined where too few are left. */
export function withoutCorner(curve: Curve, corner: number): Curve | undefined {
  if (curve.segments.length <= FEWEST) return undefined;
  // Started one corner later, the corner that goes lies between the last two parts.
  const turned = startedAtCorner(curve, (corner + 1) % curve.segments.length);
  const [before, after] = turned.segments.slice(-2) as [CurveSegment, CurveSegment];
  return { ...turned, segments: [...turned.segments.slice(0, -2), joinedSegment(before, after)] };
}

/** Two curves become one that leaves and comes in as they did; with a straight one or an arc, a straight one. */
function joinedSegment(before: CurveSegment, after: CurveSegment): CurveSegment {
  if (before.kind !== 'cubic' || after.kind !== 'cubic') return { kind: 'line', to: after.to };
  return { kind: 'cubic', handle1: before.handle1, handle2: after.handle2, to: after.to };
}

/** One corner more, on the edge: the part that it lies on becomes two of its kind. Gives the corner's number, too. */
export function withCorner(
  curve: Curve,
  segment: number,
  alongSegmentMm: number,
): { readonly curve: Curve; readonly corner: number } {
  const { from, segment: whole } = curveSteps(curve)[segment]!;
  const part: Curve = { start: from, segments: [whole], closed: false };
  const [head] = curveStretch(part, 0, alongSegmentMm).segments;
  const [tail] = curveStretch(part, alongSegmentMm, Infinity).segments;
  if (head === undefined || tail === undefined) return { curve, corner: segment };
  const between: readonly CurveSegment[] = [{ ...head, to: roundPoint(head.to) }, tail];
  const segments = [...curve.segments.slice(0, segment), ...between, ...curve.segments.slice(segment + 1)];
  return { curve: roundCurve({ ...curve, segments }), corner: segment + 1 };
}
