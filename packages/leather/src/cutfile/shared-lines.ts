import {
  boxesTouch,
  createSpatialIndex,
  curveLength,
  curveStretch,
  curveSteps,
  distanceBetween,
  growBox,
} from '@hidebound/geometry';
import type { Box, Curve, Point } from '@hidebound/geometry';
import { SAME_LINE_MM, acrossAxis, alongAxis } from './contour.js';
import type { Axis, Contour } from './contour.js';

/** Shorter stretches on one line are a touch, not a shared edge. */
const LEAST_SHARED_MM = 0.05;

/**
 * Where two contours run along one straight line, as pieces without a gap between them do, the later one is left out
 * there: it becomes open lines, and what remains of it is cut once.
 */
export function withoutSharedLines(contours: readonly Contour[]): Contour[] {
  const edges = contours.flatMap((contour, owner) => edgesOf(contour, owner));
  const boxes = edges.map(({ box }) => box);
  const index = createSpatialIndex(boxes);
  return contours.flatMap((contour, owner) => {
    const curves = contour.curves.map((curve) => {
      const shared = sharedSpans(curve, (box, visit) => {
        const found: number[] = [];
        index.query(box, (i) => void (edges[i]!.owner < owner && found.push(i)));
        for (const i of found.sort((a, b) => a - b)) visit(edges[i]!);
      });
      return { curve, shared };
    });
    if (curves.every(({ shared }) => shared.length === 0)) return [contour];
    const rest = curves.flatMap(({ curve, shared }) =>
      shared.length === 0 ? [curve] : restOf(curve, shared),
    );
    return rest.length === 0 ? [] : [{ ...contour, curves: rest, waste: 'none' as const }];
  });
}

interface Edge {
  readonly owner: number;
  readonly from: Point;
  readonly to: Point;
  readonly box: Box;
}

function edgesOf({ curves }: Contour, owner: number): Edge[] {
  return curves.flatMap((curve) =>
    curveSteps(curve)
      .filter(({ segment }) => segment.kind === 'line')
      .map(({ from, segment: { to } }) => ({ owner, from, to, box: boxOf(from, to) })),
  );
}

function boxOf(a: Point, b: Point): Box {
  return {
    minX: Math.min(a.x, b.x),
    minY: Math.min(a.y, b.y),
    maxX: Math.max(a.x, b.x),
    maxY: Math.max(a.y, b.y),
  };
}

interface Span {
  readonly from: number;
  readonly to: number;
}

type FindEdges = (box: Box, visit: (edge: Edge) => void) => void;

/** Stretches of the curve, by length along it, that lie on edges found. */
function sharedSpans(curve: Curve, find: FindEdges): Span[] {
  const spans: Span[] = [];
  let passed = 0;
  for (const { from, segment } of curveSteps(curve)) {
    const length = curveLength({ start: from, segments: [segment], closed: false });
    if (segment.kind === 'line' && length > LEAST_SHARED_MM) {
      const { to } = segment;
      const axis: Axis = { from, unit: { x: (to.x - from.x) / length, y: (to.y - from.y) / length } };
      const box = growBox(boxOf(from, to), SAME_LINE_MM);
      find(box, (edge) => {
        if (!boxesTouch(box, edge.box)) return;
        const span = overlapOn(axis, length, edge);
        if (span !== undefined) spans.push({ from: passed + span.from, to: passed + span.to });
      });
    }
    passed += length;
  }
  return united(spans);
}

function overlapOn(axis: Axis, length: number, { from, to }: Edge): Span | undefined {
  if (distanceBetween(from, to) <= LEAST_SHARED_MM) return undefined;
  if (Math.abs(acrossAxis(axis, from)) > SAME_LINE_MM || Math.abs(acrossAxis(axis, to)) > SAME_LINE_MM) {
    return undefined;
  }
  const [a, b] = [alongAxis(axis, from), alongAxis(axis, to)];
  const span = { from: Math.max(0, Math.min(a, b)), to: Math.min(length, Math.max(a, b)) };
  return span.to - span.from > LEAST_SHARED_MM ? span : undefined;
}

function united(spans: readonly Span[]): Span[] {
  const sorted = [...spans].sort((a, b) => a.from - b.from || a.to - b.to);
  const result: Span[] = [];
  for (const span of sorted) {
    const last = result[result.length - 1];
    if (last !== undefined && span.from <= last.to + SAME_LINE_MM) {
      result[result.length - 1] = { from: last.from, to: Math.max(last.to, span.to) };
    } else result.push(span);
  }
  return result;
}

/** What lies between the spans; of a closed curve the last part runs on into the first. */
function restOf(curve: Curve, spans: readonly Span[]): Curve[] {
  const whole = curveLength(curve);
  const parts: Curve[] = [];
  let from = 0;
  for (const span of spans) {
    if (span.from - from > SAME_LINE_MM) parts.push(curveStretch(curve, from, span.from));
    from = span.to;
  }
  if (whole - from <= SAME_LINE_MM) return parts;
  const tail = curveStretch(curve, from, whole);
  const [head] = parts;
  if (!curve.closed || head === undefined || spans[0]!.from <= SAME_LINE_MM) {
    return [...parts, tail];
  }
  return [{ ...tail, segments: [...tail.segments, ...head.segments] }, ...parts.slice(1)];
}
