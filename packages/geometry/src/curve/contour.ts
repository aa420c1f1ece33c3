import { GeometryError } from '../error.js';
import { sinCosDeg } from '../number/trigonometry.js';
import { roundPoint } from '../point.js';
import { findSelfCrossing } from '../shape/self-contact.js';
import { unionRegions } from '../shape/clipper.js';
import { orientRing, regionArea, ringArea } from '../shape/ring.js';
import { CONTOUR_STRAIGHT_MM, CURVE_TOLERANCE_MM, GRID_MM } from '../tolerance.js';
import type { Curve, CurveSegment, Point, Region, Ring } from '../types/shape.js';
import { arcCentre, arcSteps, pointOnArc } from './arc.js';
import type { ArcCircle } from './arc.js';
import {
  cubicDerivative,
  cubicEndTangent,
  cubicFlatness,
  cubicInflections,
  cubicPoint,
  cubicStartTangent,
  splitCubic,
  splitCubicAt,
} from './cubic.js';
import type { Cubic } from './cubic.js';
import { curveArea, toCubic } from './measure.js';
import { curveSteps } from './path.js';

/**
 * A polygon that contains a closed curve that does not cross itself, and lies within the tolerance of it. Corners
 * are rounded to 0.001 mm, so the curve may stick out by up to 1 µm. Lines keep their corners. The ring is oriented
 * as an outer ring. Throws `not-closed`, or `empty-shape` if nothing is left on the grid.
 */
export function containingRing(curve: Curve, toleranceMm: number = CURVE_TOLERANCE_MM): Ring {
  return contour(curve, toleranceMm, 'containing');
}

/** A polygon within a closed curve, and within the tolerance of it; otherwise as `containingRing`. */
export function containedRing(curve: Curve, toleranceMm: number = CURVE_TOLERANCE_MM): Ring {
  return contour(curve, toleranceMm, 'contained');
}

/** The region of a piece: contains the true one, so its openings lie within the true openings. */
export function containingRegion(
  outline: Curve,
  openings: readonly Curve[],
  toleranceMm: number = CURVE_TOLERANCE_MM,
): Region {
  return {
    outer: containingRing(outline, toleranceMm),
    openings: openings.map((opening) => orientRing(containedRing(opening, toleranceMm), 'opening')),
  };
}

/** The region of a hide: lies within the true one, so its openings contain the true openings. */
export function containedRegion(
  outline: Curve,
  openings: readonly Curve[],
  toleranceMm: number = CURVE_TOLERANCE_MM,
): Region {
  return {
    outer: containedRing(outline, toleranceMm),
    openings: openings.map((opening) => orientRing(containingRing(opening, toleranceMm), 'opening')),
  };
}

type Side = 'containing' | 'contained';

/** Tangents at a narrow cleft can cross each other; drawn closer to the curve, they mostly don't. */
const TRIES = [1, 1 / 8, 1 / 64];

function contour(curve: Curve, toleranceMm: number, side: Side): Ring {
  const { start } = curve;
  const end = curve.segments[curve.segments.length - 1]?.to;
  if (!curve.closed || end === undefined || end.x !== start.x || end.y !== start.y) {
    throw new GeometryError('not-closed', 'Only a closed line has an inside; this one is open.');
  }
  const outward = curveArea(curve) < 0 ? -1 : 1;
  const room = Math.max(toleranceMm - GRID_MM, toleranceMm / 2);
  let ring: Ring = [];
  for (const share of TRIES) {
    const pen: Pen = {
      tolerance: room * share,
      bulgeForTangents: side === 'containing' ? outward : -outward,
    };
    ring = toGrid(drawCurve(curve, pen));
    if (findSelfCrossing(ring) === undefined) return orientRing(ring, 'outer');
  }
  return largestOuter(ring);
}

/** Where a part bends this way (sign of the turn), tangents are drawn; where it bends the other way, chords. */
interface Pen {
  readonly tolerance: number;
  readonly bulgeForTangents: number;
}

function drawCurve(curve: Curve, pen: Pen): Point[] {
  const corners: Point[] = [];
  for (const { from, segment } of curveSteps(curve)) {
    corners.push(from);
    drawSegment(from, segment, pen, corners);
  }
  return corners;
}

/** Adds the corners strictly between the segment's ends. */
function drawSegment(from: Point, segment: CurveSegment, pen: Pen, corners: Point[]): void {
  if (segment.kind === 'line') return;
  if (segment.kind === 'arc') {
    const circle = arcCentre(from, segment.via, segment.to);
    if (circle === 'straight') corners.push(segment.via);
    else drawArc(circle, pen, corners);
    return;
  }
  const cubic = toCubic(from, segment);
  splitCubicAt(cubic, cubicInflections(cubic)).forEach((part, i) => {
    if (i > 0) corners.push(part.p0);
    drawBend(part, pen, corners);
  });
}

function drawArc(circle: ArcCircle, pen: Pen, corners: Point[]): void {
  const bulge = circle.sweepDeg > 0 ? 1 : -1;
  if (bulge !== pen.bulgeForTangents) {
    const steps = arcSteps(circle, pen.tolerance, 'chords');
    for (let i = 1; i < steps; i++) corners.push(pointOnArc(circle, i / steps));
    return;
  }
  // Tangents at the ends of equal steps meet half a step on, a little outside.
  const steps = arcSteps(circle, pen.tolerance, 'tangents');
  const halfCos = sinCosDeg((circle.sweepDeg * 0.5) / steps).cos;
  const outer = { ...circle, radius: circle.radius / halfCos };
  for (let i = 0; i < steps; i++) corners.push(pointOnArc(outer, (i + 0.5) / steps));
}

/** A cubic that bends one way only. */
function drawBend(cubic: Cubic, pen: Pen, corners: Point[]): void {
  const ahead = cubicDerivative(cubic, 0.625);
  const behind = cubicDerivative(cubic, 0.375);
  const turn = behind.x * ahead.y - behind.y * ahead.x;
  if (turn > 0 === pen.bulgeForTangents > 0) drawTangents(cubic, pen.tolerance, corners, 0);
  else drawChords(cubic, pen.tolerance, corners, 0);
}

const MAX_DEPTH = 24;

function drawChords(cubic: Cubic, tolerance: number, corners: Point[], depth: number): void {
  if (depth >= MAX_DEPTH || cubicFlatness(cubic) <= tolerance) return;
  const [head, tail] = splitCubic(cubic, 0.5);
  drawChords(head, tolerance, corners, depth + 1);
  corners.push(tail.p0);
  drawChords(tail, tolerance, corners, depth + 1);
}

/**
 * Corners where the tangents of neighbouring parts meet. The points of contact between them are left out: they lie
 * on the line between two such corners.
 */
function drawTangents(cubic: Cubic, tolerance: number, corners: Point[], depth: number): void {
  if (cubicFlatness(cubic) <= CONTOUR_STRAIGHT_MM || depth >= MAX_DEPTH) {
    corners.push(cubic.p0, cubic.p3);
    return;
  }
  const corner = tangentCorner(cubic);
  if (corner !== undefined) {
    const middle = cubicPoint(cubic, 0.5);
    const dx = corner.x - middle.x;
    const dy = corner.y - middle.y;
    if (dx * dx + dy * dy <= tolerance * tolerance) {
      corners.push(corner);
      return;
    }
  }
  const [head, tail] = splitCubic(cubic, 0.5);
  drawTangents(head, tolerance, corners, depth + 1);
  drawTangents(tail, tolerance, corners, depth + 1);
}

/** Where the tangents at both ends meet; none if the part turns by more than about a right angle. */
function tangentCorner(cubic: Cubic): Point | undefined {
  const s = cubicStartTangent(cubic);
  const e = cubicEndTangent(cubic);
  const cross = s.x * e.y - s.y * e.x;
  if (s.x * e.x + s.y * e.y <= 0 || cross === 0) return undefined;
  const dx = cubic.p3.x - cubic.p0.x;
  const dy = cubic.p3.y - cubic.p0.y;
  const along = (dx * e.y - dy * e.x) / cross;
  const back = (dy * s.x - dx * s.y) / cross;
  if (!(along >= 0) || !(back <= 0 || back >= 0)) return undefined;
  return { x: cubic.p0.x + along * s.x, y: cubic.p0.y + along * s.y };
}

/** Rounds, and leaves out repeated corners. */
function toGrid(corners: readonly Point[]): Ring {
  const ring: Point[] = [];
  for (const corner of corners) {
    const p = roundPoint(corner);
    const last = ring[ring.length - 1];
    if (last === undefined || p.x !== last.x || p.y !== last.y) ring.push(p);
  }
  while (
    ring.length > 1 &&
    ring[0]!.x === ring[ring.length - 1]!.x &&
    ring[0]!.y === ring[ring.length - 1]!.y
  ) {
    ring.pop();
  }
  if (ring.length < 3 || ringArea(ring) === 0) {
    throw new GeometryError('empty-shape', 'A closed line must enclose more than a point or a stroke.');
  }
  return ring;
}

/** The outline of what a ring that crosses itself winds round forwards; what crossings cut off is lost. */
function largestOuter(ring: Ring): Ring {
  const parts = unionRegions([{ outer: orientRing(ring, 'outer'), openings: [] }]);
  parts.sort((a, b) => regionArea(b) - regionArea(a));
  const largest = parts[0];
  if (largest === undefined) throw new GeometryError('empty-shape', 'This line encloses nothing.');
  return largest.outer;
}
