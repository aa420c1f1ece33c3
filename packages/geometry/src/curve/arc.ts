import { atan2Deg, normalizeDeg, sinCosDeg } from '../number/trigonometry.js';
import { distanceBetween } from '../point.js';
import { ARC_STRAIGHT_MM } from '../tolerance.js';
import type { Point } from '../types/shape.js';

/** The circle that an arc is part of, and the part. */
export interface ArcCircle {
  readonly center: Point;
  readonly radius: number;
  /** Where the arc starts, degrees clockwise from the x axis as seen from the centre. */
  readonly startDeg: number;
  /** How far it turns: positive clockwise as seen, between -360 and 360. */
  readonly sweepDeg: number;
}

/**
 * The circle through three points, passed in this order; `straight` if `via` lies within 1e-6 mm of the line through
 * the ends, or start and end are one point.
 */
export function arcCentre(start: Point, via: Point, to: Point): ArcCircle | 'straight' {
  const vx = via.x - start.x;
  const vy = via.y - start.y;
  const tx = to.x - start.x;
  const ty = to.y - start.y;
  const cross = vx * ty - vy * tx;
  const chord = Math.sqrt(tx * tx + ty * ty);
  if (chord === 0 || Math.abs(cross) <= ARC_STRAIGHT_MM * chord) return 'straight';
  const vv = vx * vx + vy * vy;
  const tt = tx * tx + ty * ty;
  const center = {
    x: start.x + (ty * vv - vy * tt) / (2 * cross),
    y: start.y + (vx * tt - tx * vv) / (2 * cross),
  };
  const startDeg = atan2Deg(start.y - center.y, start.x - center.x);
  const toDeg = atan2Deg(to.y - center.y, to.x - center.x);
  // The triangle start, via, to runs the way the arc turns.
  const clockwise = normalizeDeg(toDeg - startDeg);
  const sweepDeg = cross > 0 ? clockwise : clockwise - 360;
  return { center, radius: distanceBetween(center, start), startDeg, sweepDeg };
}

/** The point a share (0 to 1) of the way along the arc. */
export function pointOnArc(circle: ArcCircle, share: number): Point {
  const { sin, cos } = sinCosDeg(circle.startDeg + circle.sweepDeg * share);
  return { x: circle.center.x + circle.radius * cos, y: circle.center.y + circle.radius * sin };
}

/**
 * Equal steps into which an arc is cut so that neither its chords nor, if `tangents`, the corners of its tangents
 * lie further than the tolerance from it.
 */
export function arcSteps(circle: ArcCircle, toleranceMm: number, side: 'chords' | 'tangents'): number {
  const { radius } = circle;
  // chords: r (1 - cos h) <= tol; tangents: r (1 / cos h - 1) <= tol; h is half a step
  const cosHalf = side === 'chords' ? Math.max(1 - toleranceMm / radius, 0) : radius / (radius + toleranceMm);
  const halfDeg = atan2Deg(Math.sqrt((1 - cosHalf) * (1 + cosHalf)), cosHalf);
  const stepDeg = Math.min(2 * halfDeg, 90);
  return Math.max(1, Math.ceil(Math.abs(circle.sweepDeg) / stepDeg - 1e-9));
}
