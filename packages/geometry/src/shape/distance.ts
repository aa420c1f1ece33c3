import { distanceBetween } from '../point.js';
import { DISTANCE_CHUNK } from '../tolerance.js';
import type { Box, Point, Polyline, Region, Ring } from '../types/shape.js';
import { pointInRing } from './point-in-ring.js';
import { segmentsTouch } from './orientation.js';
import { boxUnion, ringBox } from './ring.js';

/** Distance in mm from p to the segment from a to b. */
export function pointToSegment(p: Point, a: Point, b: Point): number {
  return Math.sqrt(pointToSegmentSq(p.x, p.y, a.x, a.y, b.x, b.y));
}

/** Distance in mm from p to the ring's outline, from either side. */
export function pointToRing(p: Point, ring: Ring): number {
  let best = Infinity;
  let a = ring[ring.length - 1];
  for (const b of ring) {
    const d = pointToSegmentSq(p.x, p.y, a!.x, a!.y, b.x, b.y);
    if (d < best) best = d;
    a = b;
  }
  return Math.sqrt(best);
}

/** Distance in mm between two segments; 0 if they touch. */
export function segmentDistance(a: Point, b: Point, c: Point, d: Point): number {
  return Math.sqrt(segmentDistanceSq(a, b, c, d));
}

/** Distance in mm between the areas within two rings: 0 if they overlap, touch or one contains the other. */
export function ringDistance(a: Ring, b: Ring): number {
  if (holdsCornerOf(a, b) || holdsCornerOf(b, a)) return 0;
  return outlineDistance(a, b);
}

/** Distance in mm between two regions; a region that lies in an opening of the other is measured to its edge. */
export function regionDistance(a: Region, b: Region): number {
  if (meets(a, b) || meets(b, a)) return 0;
  let best = Infinity;
  for (const ringA of [a.outer, ...a.openings]) {
    for (const ringB of [b.outer, ...b.openings]) best = Math.min(best, outlineDistance(ringA, ringB, best));
  }
  return best;
}

/**
 * Distance in mm between two outlines, as lines: 0 if they touch. `enough`: once the distance is known to be no
 * less, the exact figure doesn't matter, and `enough` is returned.
 */
export function outlineDistance(a: Ring, b: Ring, enough = Infinity): number {
  const chunksA = chunksOf(a);
  const chunksB = chunksOf(b);
  const enoughSq = enough * enough;
  let bestSq = enoughSq;
  const pairs: { sq: number; i: number; j: number }[] = [];
  chunksA.forEach((boxA, i) => {
    chunksB.forEach((boxB, j) => pairs.push({ sq: boxDistanceSq(boxA, boxB), i, j }));
  });
  pairs.sort((p, q) => p.sq - q.sq || p.i - q.i || p.j - q.j);
  for (const { sq, i, j } of pairs) {
    if (sq >= bestSq) break;
    bestSq = chunkDistanceSq(a, i, b, j, bestSq);
  }
  return bestSq === enoughSq ? enough : Math.sqrt(bestSq);
}

/** The nearest point of a chain of lines. */
export interface NearestOnPolyline {
  readonly point: Point;
  readonly distance: number;
  /** Of the segment from corner i to corner i + 1; the first of several that are as near. */
  readonly segmentIndex: number;
  /** Length along the chain from its start to the point, in mm. */
  readonly alongMm: number;
}

/** The point of the chain that is nearest to p. */
export function polylineNearest(polyline: Polyline, p: Point): NearestOnPolyline {
  let best: NearestOnPolyline = {
    point: polyline[0]!,
    distance: distanceBetween(p, polyline[0]!),
    segmentIndex: 0,
    alongMm: 0,
  };
  let along = 0;
  for (let i = 0; i + 1 < polyline.length; i++) {
    const a = polyline[i]!;
    const b = polyline[i + 1]!;
    const share = nearestShare(p.x, p.y, a.x, a.y, b.x, b.y);
    const point = { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) };
    const distance = distanceBetween(p, point);
    const length = distanceBetween(a, b);
    if (distance < best.distance)
      best = { point, distance, segmentIndex: i, alongMm: along + share * length };
    along += length;
  }
  return best;
}

function nearestShare(px: number, py: number, ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const lengthSq = dx * dx + dy * dy;
  if (lengthSq === 0) return 0;
  const share = ((px - ax) * dx + (py - ay) * dy) / lengthSq;
  return share <= 0 ? 0 : share >= 1 ? 1 : share;
}

function pointToSegmentSq(px: number, py: number, ax: number, ay: number, bx: number, by: number): number {
  const share = nearestShare(px, py, ax, ay, bx, by);
  // From the nearer end, so that a point close to it keeps its digits.
  const fromEnd = share > 0.5;
  const back = fromEnd ? share - 1 : share;
  const dx = px - (fromEnd ? bx : ax) - back * (bx - ax);
  const dy = py - (fromEnd ? by : ay) - back * (by - ay);
  return dx * dx + dy * dy;
}

function segmentDistanceSq(a: Point, b: Point, c: Point, d: Point): number {
  const least = Math.min(
    pointToSegmentSq(a.x, a.y, c.x, c.y, d.x, d.y),
    pointToSegmentSq(b.x, b.y, c.x, c.y, d.x, d.y),
    pointToSegmentSq(c.x, c.y, a.x, a.y, b.x, b.y),
    pointToSegmentSq(d.x, d.y, a.x, a.y, b.x, b.y),
  );
  return least > 0 && segmentsTouch(a, b, c, d) ? 0 : least;
}

/** Boxes of runs of so many edges. */
function chunksOf(ring: Ring): Box[] {
  const boxes: Box[] = [];
  for (let from = 0; from < ring.length; from += DISTANCE_CHUNK) {
    const run = ringBox(ring.slice(from, from + DISTANCE_CHUNK + 1));
    boxes.push(from + DISTANCE_CHUNK < ring.length ? run : boxUnion(run, ringBox([ring[0]!])));
  }
  return boxes;
}

function boxDistanceSq(a: Box, b: Box): number {
  const dx = Math.max(a.minX - b.maxX, b.minX - a.maxX, 0);
  const dy = Math.max(a.minY - b.maxY, b.minY - a.maxY, 0);
  return dx * dx + dy * dy;
}

function chunkDistanceSq(a: Ring, i: number, b: Ring, j: number, knownSq: number): number {
  let bestSq = knownSq;
  const endA = Math.min((i + 1) * DISTANCE_CHUNK, a.length);
  const endB = Math.min((j + 1) * DISTANCE_CHUNK, b.length);
  for (let k = i * DISTANCE_CHUNK; k < endA; k++) {
    const p = a[k]!;
    const q = a[k + 1 === a.length ? 0 : k + 1]!;
    const boxP = ringBox([p, q]);
    for (let l = j * DISTANCE_CHUNK; l < endB; l++) {
      const r = b[l]!;
      const s = b[l + 1 === b.length ? 0 : l + 1]!;
      const dx = Math.max(boxP.minX - Math.max(r.x, s.x), Math.min(r.x, s.x) - boxP.maxX, 0);
      const dy = Math.max(boxP.minY - Math.max(r.y, s.y), Math.min(r.y, s.y) - boxP.maxY, 0);
      if (dx * dx + dy * dy < bestSq) bestSq = Math.min(bestSq, segmentDistanceSq(p, q, r, s));
    }
  }
  return bestSq;
}

/** If outlines don't meet, one area holds all of the other or nothing: one corner tells. */
function holdsCornerOf(a: Ring, b: Ring): boolean {
  return b[0] !== undefined && pointInRing(b[0], a) !== 'outside';
}

/** True if the first corner of b is on leather of a; as above, if outlines don't meet, one corner tells. */
function meets(a: Region, b: Region): boolean {
  const corner = b.outer[0];
  if (corner === undefined || !holdsCornerOf(a.outer, b.outer)) return false;
  return a.openings.every((opening) => pointInRing(corner, opening) !== 'inside');
}
