import {
  curveLength,
  curveStretch,
  flattenCurve,
  polylineNearest,
  roundCurve,
  startedAt,
} from '@hidebound/geometry';
import type { Curve, CurveSegment, Polyline } from '@hidebound/geometry';
import { nearestOnCurve } from './edges.js';

/** Chords that are measured by need be no nearer to the edge, mm. */
const CHORD_MM = 0.5;

/**
 * A closed edge that runs along a stroke between the stroke's ends ("the edge runs here"), and as before elsewhere. Of the
 * two stretches between the ends the one goes that keeps nearer to the stroke. Undefined where an end of the stroke does
 * not come within reach (mm) of the edge, or both meet it at one place.
 */
export function redrawnStretch(curve: Curve, stroke: Polyline, reachMm: number): Curve | undefined {
  const ends = [nearestOnCurve(curve, stroke[0]!), nearestOnCurve(curve, stroke.at(-1)!)] as const;
  if (ends.some(({ offMm }) => offMm > reachMm)) return undefined;
  const length = curveLength(curve);
  const [first, last] = [ends[0].alongMm, ends[1].alongMm];
  if (Math.abs(first - last) < reachMm / 100) return undefined;
  const turned = startedAt(curve, first);
  const forward = (last - first + length) % length;
  const ahead = curveStretch(turned, 0, forward);
  const back = curveStretch(turned, forward, Infinity);
  const isAhead = farthestFrom(ahead, stroke) <= farthestFrom(back, stroke);
  const drawn = [ends[0].at, ...stroke.slice(1, -1), ends[1].at];
  return isAhead ? joined(back, drawn) : joined(ahead, [...drawn].reverse());
}

/** What is kept, and from its end to its start the line that was drawn. */
function joined(kept: Curve, drawn: Polyline): Curve {
  const lines = drawn.slice(1).map((to): CurveSegment => ({ kind: 'line', to }));
  const closing: CurveSegment = { kind: 'line', to: kept.start };
  const segments = [...kept.segments, ...lines.slice(0, -1), closing];
  return roundCurve({ start: kept.start, segments, closed: true });
}

function farthestFrom(stretch: Curve, stroke: Polyline): number {
  if (stretch.segments.length === 0) return 0;
  return Math.max(...flattenCurve(stretch, CHORD_MM).map((place) => polylineNearest(stroke, place).distance));
}
