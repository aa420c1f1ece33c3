import { distanceBetween } from '../point.js';
import { ARCS_FIT_MM, CONTOUR_STRAIGHT_MM } from '../tolerance.js';
import type { Curve, CurveSegment, Point } from '../types/shape.js';
import { arcCentre } from './arc.js';
import {
  cubicEndTangent,
  cubicFlatness,
  cubicInflections,
  cubicPoint,
  cubicStartTangent,
  splitCubic,
  splitCubicAt,
} from './cubic.js';
import type { Cubic } from './cubic.js';
import { toCubic } from './measure.js';
import { curveSteps } from './path.js';

/** Halvings after which two arcs are taken as they are: the part is then far below the grid. */
const MAX_DEPTH = 16;
/** Places at which a pair of arcs is held against its cubic. */
const PROBES = 12;

/**
 * The curve in lines and arcs alone: each cubic becomes pairs of arcs that meet without a corner, within the tolerance
 * of it (0.005 mm by default). Lines and arcs stay as they are; segments without length are left out.
 */
export function curveToArcs(curve: Curve, toleranceMm: number = ARCS_FIT_MM): Curve {
  const segments: CurveSegment[] = [];
  for (const { from, segment } of curveSteps(curve)) {
    if (segment.kind === 'cubic') addCubic(segments, toCubic(from, segment), toleranceMm);
    else if (segment.kind === 'arc' && arcCentre(from, segment.via, segment.to) === 'straight') {
      addLine(segments, from, segment.to);
    } else if (segment.kind === 'line') addLine(segments, from, segment.to);
    else segments.push(segment);
  }
  return { start: curve.start, segments, closed: curve.closed };
}

function addLine(segments: CurveSegment[], from: Point, to: Point): void {
  if (from.x !== to.x || from.y !== to.y) segments.push({ kind: 'line', to });
}

function addCubic(segments: CurveSegment[], cubic: Cubic, toleranceMm: number): void {
  for (const bend of splitCubicAt(cubic, cubicInflections(cubic))) addBend(segments, bend, toleranceMm, 0);
}

/** A cubic that bends one way only. */
function addBend(segments: CurveSegment[], cubic: Cubic, toleranceMm: number, depth: number): void {
  if (cubicFlatness(cubic) <= CONTOUR_STRAIGHT_MM) {
    addLine(segments, cubic.p0, cubic.p3);
    return;
  }
  const pair = arcPair(cubic);
  if (depth >= MAX_DEPTH || (pair !== undefined && farthestOff(cubic, pair) <= toleranceMm)) {
    if (pair === undefined) addLine(segments, cubic.p0, cubic.p3);
    else segments.push(...pair);
    return;
  }
  const [head, tail] = splitCubic(cubic, 0.5);
  addBend(segments, head, toleranceMm, depth + 1);
  addBend(segments, tail, toleranceMm, depth + 1);
}

type ArcPair = readonly [CurveSegment, CurveSegment];

/**
 * Two arcs from end to end of the cubic that take up its directions there and meet without a corner; of all such pairs
 * the one whose two tangent legs are equally long (the biarc of K. M. Bolton, Computer-Aided Design 7, 1975, with
 * equal legs; from memory). None if the cubic turns by a right angle or more.
 */
function arcPair(cubic: Cubic): ArcPair | undefined {
  const { p0, p3 } = cubic;
  const s = unit(cubicStartTangent(cubic));
  const e = unit(cubicEndTangent(cubic));
  const dot = s.x * e.x + s.y * e.y;
  if (dot <= 0) return undefined;
  const v = { x: p3.x - p0.x, y: p3.y - p0.y };
  const vv = v.x * v.x + v.y * v.y;
  const vt = v.x * (s.x + e.x) + v.y * (s.y + e.y);
  if (vv === 0 || vt <= 0) return undefined;
  const k = 2 * (1 - dot);
  // The positive root of k d² + 2 vt d - vv = 0, written so that a small k keeps its digits.
  const leg = vv / (vt + Math.sqrt(vt * vt + k * vv));
  const middle = {
    x: (p0.x + p3.x + leg * (s.x - e.x)) / 2,
    y: (p0.y + p3.y + leg * (s.y - e.y)) / 2,
  };
  return [arcFrom(p0, s, middle), arcFrom(middle, undefined, p3, e)];
}

/** The arc between two points that leaves the first in one direction, or reaches the second in another. */
function arcFrom(from: Point, leaving: Point | undefined, to: Point, reaching?: Point): CurveSegment {
  const length = distanceBetween(from, to);
  if (length === 0) return { kind: 'line', to };
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  // Mirrored across the chord's middle, the direction at the end is the one at the start turned the other way.
  const t = leaving ?? mirrored(reaching!, along);
  const cos = t.x * along.x + t.y * along.y;
  const off = { x: t.x - cos * along.x, y: t.y - cos * along.y };
  const rise = length / 2 / (1 + cos);
  const via = { x: (from.x + to.x) / 2 + off.x * rise, y: (from.y + to.y) / 2 + off.y * rise };
  if (arcCentre(from, via, to) === 'straight') return { kind: 'line', to };
  return { kind: 'arc', via, to };
}

function mirrored(t: Point, along: Point): Point {
  const cos = t.x * along.x + t.y * along.y;
  return { x: 2 * cos * along.x - t.x, y: 2 * cos * along.y - t.y };
}

function farthestOff(cubic: Cubic, [first, second]: ArcPair): number {
  const offs = [distanceFrom(cubic.p0, first), distanceFrom(first.to, second)];
  let worst = 0;
  for (let i = 1; i < PROBES; i++) {
    const p = cubicPoint(cubic, i / PROBES);
    worst = Math.max(worst, Math.min(offs[0]!(p), offs[1]!(p)));
  }
  return worst;
}

/** Distance of a point near the segment from its whole circle or line. */
function distanceFrom(from: Point, segment: CurveSegment): (p: Point) => number {
  const circle = segment.kind === 'arc' ? arcCentre(from, segment.via, segment.to) : 'straight';
  if (circle !== 'straight') return (p) => Math.abs(distanceBetween(p, circle.center) - circle.radius);
  const t = unit({ x: segment.to.x - from.x, y: segment.to.y - from.y });
  return (p) => Math.abs(t.x * (p.y - from.y) - t.y * (p.x - from.x));
}

function unit({ x, y }: Point): Point {
  const length = Math.sqrt(x * x + y * y);
  return length === 0 ? { x: 0, y: 0 } : { x: x / length, y: y / length };
}
