import { CURVE_TOLERANCE_MM } from '../tolerance.js';
import type { CubicSegment, Curve, CurveSegment, Point, Polyline } from '../types/shape.js';
import { arcCentre, arcSteps, pointOnArc } from './arc.js';
import { flatness } from './cubic.js';
import type { Cubic } from './cubic.js';

/** Halvings after which a part is taken for straight: a part of a 10 m curve is then below the grid. */
const MAX_DEPTH = 24;

/**
 * The curve as chords whose corners lie on it, nowhere further than the tolerance from it. Lines keep their corners
 * exactly. Of a closed curve the last corner repeats the first. Repeated corners are left out.
 */
export function flattenCurve(curve: Curve, toleranceMm: number = CURVE_TOLERANCE_MM): Polyline {
  const corners: Point[] = [curve.start];
  const parts = curve.segments.some(({ kind }) => kind === 'cubic') ? createParts() : NO_PARTS;
  let from = curve.start;
  for (const segment of curve.segments) {
    addCorners(corners, from, segment, toleranceMm, parts);
    from = segment.to;
  }
  if (corners.length === 1) corners.push(curve.start);
  return corners;
}

/** The corners of one segment after its start. */
export function flattenSegment(from: Point, segment: CurveSegment, toleranceMm: number): Point[] {
  const corners = [from];
  addCorners(corners, from, segment, toleranceMm, segment.kind === 'cubic' ? createParts() : NO_PARTS);
  return corners.slice(1);
}

/** The corners of a cubic's chords after its start. */
export function flattenCubic({ p0, p1, p2, p3 }: Cubic, toleranceMm: number): Point[] {
  return flattenSegment(p0, { kind: 'cubic', handle1: p1, handle2: p2, to: p3 }, toleranceMm);
}

/** Adds those of one segment, but for repeated ones, to the corners so far. */
function addCorners(
  corners: Point[],
  from: Point,
  segment: CurveSegment,
  toleranceMm: number,
  parts: Parts,
): void {
  switch (segment.kind) {
    case 'line':
      addCorner(corners, segment.to);
      break;
    case 'arc':
      for (const p of flattenArc(from, segment.via, segment.to, toleranceMm)) addCorner(corners, p);
      break;
    case 'cubic':
      addChords(from, segment, toleranceMm, corners, parts);
  }
}

function addCorner(corners: Point[], p: Point): void {
  const last = corners[corners.length - 1]!;
  if (p.x !== last.x || p.y !== last.y) corners.push(p);
}

/** Numbers of one cubic: x and y of its four points. */
const CUBIC_NUMBERS = 8;

/** Parts of a cubic that wait to be looked at, the earliest last: their numbers, and how often each was halved. */
interface Parts {
  readonly numbers: Float64Array;
  readonly depths: Uint8Array;
}

/** For lines and arcs, which have none. */
const NO_PARTS: Parts = { numbers: new Float64Array(0), depths: new Uint8Array(0) };

function createParts(): Parts {
  return {
    numbers: new Float64Array((MAX_DEPTH + 2) * CUBIC_NUMBERS),
    depths: new Uint8Array(MAX_DEPTH + 2),
  };
}

/**
 * Halves the cubic (de Casteljau) until its parts are flat. In plain numbers on a stack that all of a curve's cubics
 * share: large files have a million such parts, and objects for each cost half of the time.
 */
function addChords(
  from: Point,
  { handle1, handle2, to }: CubicSegment,
  toleranceMm: number,
  corners: Point[],
  { numbers, depths }: Parts,
): void {
  numbers[0] = from.x;
  numbers[1] = from.y;
  numbers[2] = handle1.x;
  numbers[3] = handle1.y;
  numbers[4] = handle2.x;
  numbers[5] = handle2.y;
  numbers[6] = to.x;
  numbers[7] = to.y;
  depths[0] = 0;
  let top = 0;
  while (top >= 0) {
    const at = top * CUBIC_NUMBERS;
    const x0 = numbers[at]!;
    const y0 = numbers[at + 1]!;
    const x3 = numbers[at + 6]!;
    const y3 = numbers[at + 7]!;
    const off = flatness(
      numbers[at + 2]! - x0,
      numbers[at + 3]! - y0,
      numbers[at + 4]! - x0,
      numbers[at + 5]! - y0,
      x3 - x0,
      y3 - y0,
    );
    const depth = depths[top]!;
    if (off <= toleranceMm || depth >= MAX_DEPTH) {
      addCorner(corners, { x: x3, y: y3 });
      top--;
      continue;
    }
    halve(numbers, at);
    depths[top] = depth + 1;
    depths[top + 1] = depth + 1;
    top++;
  }
}

/** Puts the later half of the cubic at `at` in its place and the earlier one after it, which is taken first. */
function halve(stack: Float64Array, at: number): void {
  for (let i = at; i < at + 2; i++) {
    const p0 = stack[i]!;
    const p1 = stack[i + 2]!;
    const p2 = stack[i + 4]!;
    const p3 = stack[i + 6]!;
    const p01 = p0 + (p1 - p0) * 0.5;
    const p12 = p1 + (p2 - p1) * 0.5;
    const p23 = p2 + (p3 - p2) * 0.5;
    const p012 = p01 + (p12 - p01) * 0.5;
    const p123 = p12 + (p23 - p12) * 0.5;
    const middle = p012 + (p123 - p012) * 0.5;
    stack[i] = middle;
    stack[i + 2] = p123;
    stack[i + 4] = p23;
    stack[i + CUBIC_NUMBERS] = p0;
    stack[i + CUBIC_NUMBERS + 2] = p01;
    stack[i + CUBIC_NUMBERS + 4] = p012;
    stack[i + CUBIC_NUMBERS + 6] = middle;
  }
}

function flattenArc(from: Point, via: Point, to: Point, toleranceMm: number): Point[] {
  const circle = arcCentre(from, via, to);
  if (circle === 'straight') return [via, to];
  const steps = arcSteps(circle, toleranceMm, 'chords');
  const corners: Point[] = [];
  for (let i = 1; i < steps; i++) corners.push(pointOnArc(circle, i / steps));
  corners.push(to);
  return corners;
}
