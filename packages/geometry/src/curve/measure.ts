import { distanceBetween } from '../point.js';
import { ringBox } from '../shape/ring.js';
import { LENGTH_TOLERANCE_MM } from '../tolerance.js';
import type { ArcSegment, Box, CubicSegment, Curve, CurveSegment, Point } from '../types/shape.js';
import { normalizeDeg, sinCosDeg } from '../number/trigonometry.js';
import { arcCentre, pointOnArc } from './arc.js';
import type { ArcCircle } from './arc.js';
import { cubicDerivative, cubicPoint, cubicTurns } from './cubic.js';
import type { Cubic } from './cubic.js';

const RADIANS_PER_DEGREE = 0.017453292519943295;

/** The smallest axis-parallel box around the true curve. */
export function curveBox(curve: Curve): Box {
  const box = { ...ringBox([curve.start]) };
  for (const { to } of curve.segments) reach(box, to);
  let from = curve.start;
  for (const segment of curve.segments) {
    if (segment.kind === 'cubic') reachCubic(box, from, segment);
    else if (segment.kind === 'arc') for (const p of furthestOfArc(from, segment)) reach(box, p);
    from = segment.to;
  }
  return box;
}

type GrowingBox = { -readonly [key in keyof Box]: Box[key] };

function reach(box: GrowingBox, { x, y }: Point): void {
  if (x < box.minX) box.minX = x;
  if (x > box.maxX) box.maxX = x;
  if (y < box.minY) box.minY = y;
  if (y > box.maxY) box.maxY = y;
}

/** A cubic lies among its ends and handles, so that only where a handle leaves the box may the curve do so. */
function reachCubic(box: GrowingBox, p0: Point, { handle1: p1, handle2: p2, to: p3 }: CubicSegment): void {
  if (Math.min(p1.x, p2.x) < box.minX || Math.max(p1.x, p2.x) > box.maxX) {
    for (const x of cubicTurns(p0.x, p1.x, p2.x, p3.x)) reach(box, { x, y: p0.y });
  }
  if (Math.min(p1.y, p2.y) < box.minY || Math.max(p1.y, p2.y) > box.maxY) {
    for (const y of cubicTurns(p0.y, p1.y, p2.y, p3.y)) reach(box, { x: p0.x, y });
  }
}

/** Length in mm, to within about 1e-6 mm a segment. */
export function curveLength(curve: Curve): number {
  let sum = 0;
  let from = curve.start;
  for (const segment of curve.segments) {
    sum += segmentLength(from, segment);
    from = segment.to;
  }
  return sum;
}

/**
 * Signed area of a closed curve in mm², positive if it runs clockwise as seen; exact but for rounding
 * (Green's theorem, with the closed forms of arcs and a Gauss rule that is exact for cubics).
 */
export function curveArea(curve: Curve): number {
  const origin = curve.start;
  let twice = 0;
  let from = origin;
  for (const segment of curve.segments) {
    twice += twiceAreaSeenFrom(origin, from, segment);
    from = segment.to;
  }
  return twice / 2;
}

/** The four points of a cubic segment. */
export function toCubic(from: Point, segment: Extract<CurveSegment, { kind: 'cubic' }>): Cubic {
  return { p0: from, p1: segment.handle1, p2: segment.handle2, p3: segment.to };
}

function furthestOfArc(from: Point, segment: ArcSegment): Point[] {
  const circle = arcCentre(from, segment.via, segment.to);
  if (circle === 'straight') return [segment.via];
  return [0, 90, 180, 270].flatMap((deg) => {
    const turn =
      circle.sweepDeg > 0 ? normalizeDeg(deg - circle.startDeg) : normalizeDeg(circle.startDeg - deg);
    return turn < Math.abs(circle.sweepDeg) ? [pointAtDeg(circle, deg)] : [];
  });
}

function pointAtDeg(circle: ArcCircle, deg: number): Point {
  return pointOnArc({ ...circle, startDeg: deg, sweepDeg: 0 }, 0);
}

function segmentLength(from: Point, segment: CurveSegment): number {
  switch (segment.kind) {
    case 'line':
      return distanceBetween(from, segment.to);
    case 'arc': {
      const circle = arcCentre(from, segment.via, segment.to);
      if (circle === 'straight') {
        return distanceBetween(from, segment.via) + distanceBetween(segment.via, segment.to);
      }
      return circle.radius * Math.abs(circle.sweepDeg) * RADIANS_PER_DEGREE;
    }
    case 'cubic':
      return cubicLength(toCubic(from, segment), 0, 1, 0);
  }
}

/** Nodes and weights of the five-point Gauss-Legendre rule on [-1, 1] (Abramowitz & Stegun, table 25.4). */
const GAUSS_5: readonly (readonly [number, number])[] = [
  [0, 0.5688888888888889],
  [-0.5384693101056831, 0.47862867049936647],
  [0.5384693101056831, 0.47862867049936647],
  [-0.906179845938664, 0.23692688505618908],
  [0.906179845938664, 0.23692688505618908],
];
const MAX_LENGTH_DEPTH = 24;

function cubicLength(cubic: Cubic, from: number, to: number, depth: number): number {
  const middle = (from + to) / 2;
  const whole = gaussLength(cubic, from, to);
  const halves = gaussLength(cubic, from, middle) + gaussLength(cubic, middle, to);
  if (depth >= MAX_LENGTH_DEPTH || (depth > 1 && Math.abs(whole - halves) < LENGTH_TOLERANCE_MM))
    return halves;
  return cubicLength(cubic, from, middle, depth + 1) + cubicLength(cubic, middle, to, depth + 1);
}

function gaussLength(cubic: Cubic, from: number, to: number): number {
  const half = (to - from) / 2;
  let sum = 0;
  for (const [node, weight] of GAUSS_5) {
    const d = cubicDerivative(cubic, from + half * (node + 1));
    sum += weight * Math.sqrt(d.x * d.x + d.y * d.y);
  }
  return half * sum;
}

function twiceAreaSeenFrom(origin: Point, from: Point, segment: CurveSegment): number {
  if (segment.kind === 'cubic') return twiceCubicArea(origin, toCubic(from, segment));
  const fx = from.x - origin.x;
  const fy = from.y - origin.y;
  const straight = fx * (segment.to.y - origin.y) - (segment.to.x - origin.x) * fy;
  if (segment.kind === 'line') return straight;
  const circle = arcCentre(from, segment.via, segment.to);
  if (circle === 'straight') return straight;
  const sweep = circle.sweepDeg * RADIANS_PER_DEGREE;
  return straight + circle.radius * circle.radius * (sweep - sinCosDeg(circle.sweepDeg).sin);
}

/** x y' - y x' is of degree 5 in t, for which three Gauss points are exact; five are at hand. */
function twiceCubicArea(origin: Point, cubic: Cubic): number {
  let sum = 0;
  for (const [node, weight] of GAUSS_5) {
    const t = (node + 1) / 2;
    const p = cubicPoint(cubic, t);
    const d = cubicDerivative(cubic, t);
    sum += weight * ((p.x - origin.x) * d.y - (p.y - origin.y) * d.x);
  }
  return sum / 2;
}
