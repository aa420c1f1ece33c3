import { CURVE_TOLERANCE_MM } from '../tolerance.js';
import type { Curve, CurveSegment, Point, Polyline } from '../types/shape.js';
import { arcCentre, arcSteps, pointOnArc } from './arc.js';
import { cubicFlatness, splitCubic } from './cubic.js';
import type { Cubic } from './cubic.js';
import { toCubic } from './measure.js';
import { curveSteps } from './path.js';

/** Halvings after which a part is taken for straight: a part of a 10 m curve is then below the grid. */
const MAX_DEPTH = 24;

/**
 * The curve as chords whose corners lie on it, nowhere further than the tolerance from it. Lines keep their corners
 * exactly. Of a closed curve the last corner repeats the first. Repeated corners are left out.
 */
export function flattenCurve(curve: Curve, toleranceMm: number = CURVE_TOLERANCE_MM): Polyline {
  const corners: Point[] = [curve.start];
  for (const { from, segment } of curveSteps(curve)) {
    for (const p of flattenSegment(from, segment, toleranceMm)) {
      const last = corners[corners.length - 1]!;
      if (p.x !== last.x || p.y !== last.y) corners.push(p);
    }
  }
  if (corners.length === 1) corners.push(curve.start);
  return corners;
}

/** The corners of one segment after its start. */
export function flattenSegment(from: Point, segment: CurveSegment, toleranceMm: number): Point[] {
  switch (segment.kind) {
    case 'line':
      return [segment.to];
    case 'arc':
      return flattenArc(from, segment.via, segment.to, toleranceMm);
    case 'cubic':
      return flattenCubic(toCubic(from, segment), toleranceMm);
  }
}

/** The corners of a cubic's chords after its start. */
export function flattenCubic(cubic: Cubic, toleranceMm: number): Point[] {
  const corners: Point[] = [];
  addChords(cubic, toleranceMm, corners, 0);
  return corners;
}

function addChords(cubic: Cubic, toleranceMm: number, corners: Point[], depth: number): void {
  if (depth >= MAX_DEPTH || cubicFlatness(cubic) <= toleranceMm) {
    corners.push(cubic.p3);
    return;
  }
  const [head, tail] = splitCubic(cubic, 0.5);
  addChords(head, toleranceMm, corners, depth + 1);
  addChords(tail, toleranceMm, corners, depth + 1);
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
