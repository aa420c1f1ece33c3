import { distanceBetween } from '@hidebound/geometry';
import type { Point, Ring } from '@hidebound/geometry';
import { MEASURE_STEP_MM, roundLength } from './frame.js';
import type { LineEnd, OutlineCorner } from './model.js';

/** An end this near to a corner is the corner. */
export const AT_CORNER_MM = 1;
/** A rounded distance moves the end along the edge by about as much; where it would be farther, the edge runs round the corner. */
const FARTHEST_MOVE_MM = 5;

/**
 * An end of the base line, told from the nearest corner of the outline and moved along the edge so that it is exactly
 * the rounded distance from it. At an edge the distance is rounded up where the outline
 * reaches so far: the line moves inwards then, not off the leather.
 */
export function endAtCorner(
  outer: Ring,
  at: Point,
  corners: readonly OutlineCorner[],
  roundUp: boolean,
): LineEnd {
  const corner = corners.reduce((near, each) =>
    distanceBetween(each.at, at) < distanceBetween(near.at, at) ? each : near,
  );
  const distance = distanceBetween(corner.at, at);
  if (distance <= AT_CORNER_MM) return { at: corner.at, corner, fromCornerMm: 0 };
  const up = Math.ceil(distance / MEASURE_STEP_MM) * MEASURE_STEP_MM;
  const near = roundLength(distance);
  for (const fromCornerMm of roundUp ? [up, up - MEASURE_STEP_MM] : [near]) {
    const moved = nearestAtDistance(outer, corner.at, fromCornerMm, at);
    if (moved !== undefined) return { at: moved, corner, fromCornerMm };
  }
  return { at, corner, fromCornerMm: near };
}

/** Of the places of a ring that lie so far from a point the one nearest to where it was. */
function nearestAtDistance(ring: Ring, from: Point, distance: number, was: Point): Point | undefined {
  let best: Point | undefined;
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    for (const place of atDistance(p, q, from, distance)) {
      const off = distanceBetween(place, was);
      if (off <= FARTHEST_MOVE_MM && (best === undefined || off < distanceBetween(best, was))) best = place;
    }
  });
  return best;
}

/** The places of a segment that lie so far from a point: where it crosses the circle. */
function atDistance(p: Point, q: Point, from: Point, distance: number): Point[] {
  const [dx, dy] = [q.x - p.x, q.y - p.y];
  const [fx, fy] = [p.x - from.x, p.y - from.y];
  const a = dx * dx + dy * dy;
  const b = dx * fx + dy * fy;
  const c = fx * fx + fy * fy - distance * distance;
  const root = b * b - a * c;
  if (a === 0 || root < 0) return [];
  return [(-b - Math.sqrt(root)) / a, (-b + Math.sqrt(root)) / a]
    .filter((share) => share >= 0 && share <= 1)
    .map((share) => ({ x: p.x + share * dx, y: p.y + share * dy }));
}
