import { orient2d } from 'robust-predicates';
import type { Point } from '../types/shape.js';

/**
 * Which way a, b, c turn: positive clockwise as seen (y grows downwards), negative the other way, 0 exactly if they
 * lie on one line. Only the sign is meant; it is exact for any coordinates.
 */
export function turnOf(a: Point, b: Point, c: Point): number {
  // robust-predicates counts the other way as positive
  return -orient2d(a.x, a.y, b.x, b.y, c.x, c.y);
}

/** True if p, which lies on the line through a and b, lies between them or on one of them. */
export function isBetween(a: Point, b: Point, p: Point): boolean {
  const byX = Math.abs(b.x - a.x) >= Math.abs(b.y - a.y);
  const [s, t, q] = byX ? [a.x, b.x, p.x] : [a.y, b.y, p.y];
  return (s <= q && q <= t) || (t <= q && q <= s);
}

/** True if p lies exactly on the segment, ends included. */
export function isOnSegment(a: Point, b: Point, p: Point): boolean {
  return turnOf(a, b, p) === 0 && isBetween(a, b, p);
}

/** True if the segments cross at a point within both: touching ends or a shared stretch don't count. */
export function segmentsCross(a: Point, b: Point, c: Point, d: Point): boolean {
  const abc = turnOf(a, b, c);
  const abd = turnOf(a, b, d);
  if ((abc >= 0 && abd >= 0) || (abc <= 0 && abd <= 0)) return false;
  const cda = turnOf(c, d, a);
  const cdb = turnOf(c, d, b);
  return (cda > 0 && cdb < 0) || (cda < 0 && cdb > 0);
}

/** True if the segments share any point. */
export function segmentsTouch(a: Point, b: Point, c: Point, d: Point): boolean {
  return (
    segmentsCross(a, b, c, d) ||
    isOnSegment(a, b, c) ||
    isOnSegment(a, b, d) ||
    isOnSegment(c, d, a) ||
    isOnSegment(c, d, b)
  );
}

/** Where the lines through both segments meet (rounded as doubles are); none if they are parallel. */
export function lineMeeting(a: Point, b: Point, c: Point, d: Point): Point | undefined {
  const share = meetingShare(a, b, c, d);
  if (share === undefined) return undefined;
  return { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) };
}

/** How far along a-b (0 to 1 within it) the line through c and d meets it; none if they are parallel. */
export function meetingShare(a: Point, b: Point, c: Point, d: Point): number | undefined {
  const ux = b.x - a.x;
  const uy = b.y - a.y;
  const vx = d.x - c.x;
  const vy = d.y - c.y;
  const cross = ux * vy - uy * vx;
  if (cross === 0) return undefined;
  return ((c.x - a.x) * vy - (c.y - a.y) * vx) / cross;
}
