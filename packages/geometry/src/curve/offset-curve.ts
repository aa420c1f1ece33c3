import { lineMeeting } from '../shape/orientation.js';
import { offsetRegions } from '../shape/clipper.js';
import { orientRing } from '../shape/ring.js';
import { findSelfCrossing } from '../shape/self-contact.js';
import { distanceBetween, distanceSq } from '../point.js';
import { normalizeDeg, atan2Deg } from '../number/trigonometry.js';
import { ARCS_FIT_MM, MOVED_ENDS_MM, OFFSET_MITRE_LIMIT } from '../tolerance.js';
import type { Curve, CurveSegment, Point, Ring } from '../types/shape.js';
import { arcCentre, pointOnArc } from './arc.js';
import type { ArcCircle } from './arc.js';
import { endDirection, startDirection } from './direction.js';
import { flattenCurve } from './flatten.js';
import { curveArea } from './measure.js';
import { curveFromPolyline, curveSteps, reverseCurve } from './path.js';
import { curveToArcs } from './to-arcs.js';

/** What a closed curve becomes when it is moved sideways. */
export interface OffsetCurve {
  /** Closed; none where nothing is left, several where the curve closes on itself. All run the way the given one does. */
  readonly curves: readonly Curve[];
  /** Lines and arcs moved as such. If not, the parts met each other and all became short lines, within 0.01 mm. */
  readonly isExact: boolean;
}

/**
 * The closed curve moved by so many mm, outwards if positive. Lines become lines and arcs arcs; cubics become arcs
 * first, within 0.005 mm. A corner that opens stays a corner where it turns by 120° at most, and is rounded beyond.
 */
export function offsetCurve(curve: Curve, distanceMm: number): OffsetCurve {
  if (distanceMm === 0) return { curves: [curve], isExact: true };
  const source = curveToArcs(curve);
  const moved = moveExactly(source, distanceMm);
  if (moved !== undefined) return { curves: [moved], isExact: true };
  return { curves: moveFlattened(source, distanceMm), isExact: false };
}

/** A segment moved sideways; `circle` if it is an arc. */
interface Moved {
  readonly circle?: ArcCircle;
  from: Point;
  to: Point;
  /** Where it started and ended before it was moved. */
  readonly source: { readonly from: Point; readonly to: Point };
  readonly leaving: Point;
  readonly reaching: Point;
}

/** Segment by segment; none if parts of the result would turn back or meet each other. */
function moveExactly(source: Curve, distanceMm: number): Curve | undefined {
  const area = curveArea(source);
  const side = area < 0 ? -distanceMm : distanceMm;
  const moved: Moved[] = [];
  for (const { from, segment } of curveSteps(source)) {
    const one = moveSegment(from, segment, side);
    if (one === undefined) return undefined;
    moved.push(one);
  }
  const joints: CurveSegment[][] = [];
  for (const [i, one] of moved.entries()) {
    const joint = join(one, moved[(i + 1) % moved.length]!, side);
    if (joint === undefined) return undefined;
    joints.push(joint);
  }
  const segments: CurveSegment[] = [];
  for (const [i, one] of moved.entries()) {
    const segment = segmentOf(one);
    if (segment === undefined) return undefined;
    segments.push(segment, ...joints[i]!);
  }
  const result: Curve = { start: moved[0]!.from, segments, closed: true };
  return isSound(result, area) ? result : undefined;
}

/** `side` mm to the left of its way as seen; none if an arc would shrink to nothing. */
function moveSegment(from: Point, segment: CurveSegment, side: number): Moved | undefined {
  const leaving = startDirection(from, segment);
  const reaching = endDirection(from, segment);
  const common = {
    from: aside(from, leaving, side),
    to: aside(segment.to, reaching, side),
    source: { from, to: segment.to },
    leaving,
    reaching,
  };
  const circle = segment.kind === 'arc' ? arcCentre(from, segment.via, segment.to) : 'straight';
  if (circle === 'straight') return common;
  const radius = circle.radius + (circle.sweepDeg > 0 ? side : -side);
  return radius <= MOVED_ENDS_MM ? undefined : { ...common, circle: { ...circle, radius } };
}

function aside(p: Point, along: Point, side: number): Point {
  return { x: p.x + along.y * side, y: p.y - along.x * side };
}

/** Brings the end of one and the start of the next together; what has to go between. None if they miss each other. */
function join(one: Moved, next: Moved, side: number): CurveSegment[] | undefined {
  if (distanceSq(one.to, next.from) <= MOVED_ENDS_MM * MOVED_ENDS_MM) {
    const middle = { x: (one.to.x + next.from.x) / 2, y: (one.to.y + next.from.y) / 2 };
    one.to = middle;
    next.from = middle;
    return [];
  }
  const turn = one.reaching.x * next.leaving.y - one.reaching.y * next.leaving.x;
  return turn * side > 0 || isReversal(one, next) ? opened(one, next, side) : closed(one, next);
}

function isReversal(one: Moved, next: Moved): boolean {
  return cosOfTurn(one, next) < -1 + 1e-9;
}

function cosOfTurn(one: Moved, next: Moved): number {
  return one.reaching.x * next.leaving.x + one.reaching.y * next.leaving.y;
}

/** A mitre of a limit L is reached where 1 + cos of the turn is 2 / L². */
const LEAST_MITRE = 2 / (OFFSET_MITRE_LIMIT * OFFSET_MITRE_LIMIT);

/** The corner as it was, moved: lines run on to where they meet, arcs by a short line. A sharp one is rounded. */
function opened(one: Moved, next: Moved, side: number): CurveSegment[] {
  const corner = one.source.to;
  const flat = 1 + cosOfTurn(one, next);
  const sum = { x: one.reaching.x + next.leaving.x, y: one.reaching.y + next.leaving.y };
  if (flat < LEAST_MITRE - 1e-12) {
    const length = Math.sqrt(sum.x * sum.x + sum.y * sum.y);
    const away = length < 1e-6 ? undefined : { x: sum.x / length, y: sum.y / length };
    const outwards = Math.abs(side);
    const via =
      away === undefined
        ? { x: corner.x + one.reaching.x * outwards, y: corner.y + one.reaching.y * outwards }
        : aside(corner, away, side);
    return [{ kind: 'arc', via, to: next.from }];
  }
  const tip = aside(corner, sum, side / flat);
  const between: CurveSegment[] = [];
  if (one.circle === undefined) one.to = tip;
  else between.push({ kind: 'line', to: tip });
  if (next.circle === undefined) next.from = tip;
  else between.push({ kind: 'line', to: next.from });
  return between;
}

/** Both cut short where they meet. */
function closed(one: Moved, next: Moved): CurveSegment[] | undefined {
  const at = meeting(one, next);
  if (at === undefined) return undefined;
  one.to = at;
  next.from = at;
  return [];
}

/** Where the two whole lines or circles meet, nearest to the ends that belong together. */
function meeting(one: Moved, next: Moved): Point | undefined {
  if (one.circle === undefined && next.circle === undefined) {
    return lineMeeting(one.from, one.to, next.from, next.to);
  }
  const near = { x: (one.to.x + next.from.x) / 2, y: (one.to.y + next.from.y) / 2 };
  const places =
    one.circle === undefined
      ? lineOnCircle(one.from, one.reaching, next.circle!)
      : next.circle === undefined
        ? lineOnCircle(next.from, next.leaving, one.circle)
        : circlesMeet(one.circle, next.circle);
  return [...places].sort((a, b) => distanceSq(a, near) - distanceSq(b, near))[0];
}

function lineOnCircle(p: Point, along: Point, { center, radius }: ArcCircle): Point[] {
  const foot = (center.x - p.x) * along.x + (center.y - p.y) * along.y;
  const x = p.x + along.x * foot;
  const y = p.y + along.y * foot;
  const halfSq = radius * radius - (x - center.x) ** 2 - (y - center.y) ** 2;
  if (halfSq < 0) return [];
  const half = Math.sqrt(halfSq);
  return [half, -half].map((by) => ({ x: x + along.x * by, y: y + along.y * by }));
}

function circlesMeet(a: ArcCircle, b: ArcCircle): Point[] {
  const d = distanceBetween(a.center, b.center);
  if (d === 0) return [];
  const along = (d * d + a.radius * a.radius - b.radius * b.radius) / (2 * d);
  const halfSq = a.radius * a.radius - along * along;
  if (halfSq < 0) return [];
  const ux = (b.center.x - a.center.x) / d;
  const uy = (b.center.y - a.center.y) / d;
  const half = Math.sqrt(halfSq);
  return [half, -half].map((by) => ({
    x: a.center.x + ux * along - uy * by,
    y: a.center.y + uy * along + ux * by,
  }));
}

/** A moved segment between the ends that the joints left it; none if it would run backwards. */
function segmentOf({ circle, from, to, leaving }: Moved): CurveSegment | undefined {
  if (circle === undefined) {
    const ahead = (to.x - from.x) * leaving.x + (to.y - from.y) * leaving.y;
    return ahead > 0 ? { kind: 'line', to } : undefined;
  }
  const startDeg = degOn(circle, from);
  const turnDeg = degOn(circle, to) - startDeg;
  const sweepDeg = circle.sweepDeg > 0 ? normalizeDeg(turnDeg) : -normalizeDeg(-turnDeg);
  // What was cut off at both ends can only shorten it; a far longer way round means that it was used up.
  if (sweepDeg === 0 || Math.abs(sweepDeg) > Math.abs(circle.sweepDeg) + 1) return undefined;
  return { kind: 'arc', via: pointOnArc({ ...circle, startDeg, sweepDeg }, 0.5), to };
}

function degOn({ center }: ArcCircle, p: Point): number {
  return atan2Deg(p.y - center.y, p.x - center.x);
}

/** Runs the way it did, and does not cross itself. */
function isSound(curve: Curve, area: number): boolean {
  if (curveArea(curve) > 0 !== area > 0) return false;
  return findSelfCrossing(ringOf(curve)) === undefined;
}

function ringOf(curve: Curve): Ring {
  return flattenCurve(curve, ARCS_FIT_MM).slice(0, -1);
}

function moveFlattened(source: Curve, distanceMm: number): Curve[] {
  const isForwards = curveArea(source) > 0;
  const region = { outer: orientRing(ringOf(source), 'outer'), openings: [] };
  const grown = offsetRegions([region], distanceMm, { join: 'mitre', arcTolerance: ARCS_FIT_MM });
  const rings = grown.flatMap(({ outer, openings }) => [outer, ...openings.map((o) => [...o].reverse())]);
  return rings.map((ring) => {
    const line = curveFromPolyline(ring, true);
    return isForwards ? line : reverseCurve(line);
  });
}
