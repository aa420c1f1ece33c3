import type { Path, Paths } from 'clipper-lib';
import type { Point, Region, Ring } from '../types/shape.js';
import { toPath, unitePaths } from './clipper.js';
import { convexParts } from './convex-parts.js';
import { turnOf } from './orientation.js';

/**
 * Where b's origin may not lie: with it strictly inside the result, b (moved, not turned) and a overlap; on its edge
 * they touch. It is a ⊕ -b. Both are rounded to the 1 µm grid first, then it is exact, summed of convex parts, so that no
 * false opening arises. An opening of the result is a place where b fits into a hollow of a; a fit so exact that
 * this place is a point or a line is not told.
 */
export function noFitPolygon(a: Ring, b: Ring): Region[] {
  return noFitRegions({ outer: a, openings: [] }, { outer: b, openings: [] });
}

/** As `noFitPolygon`, for regions with openings: b may also fit into an opening of a, or a into one of b. */
export function noFitRegions(a: Region, b: Region): Region[] {
  const partsA = convexParts(onGrid(a));
  const partsB = convexParts(onGrid(b)).map(negated);
  const sums: Paths = partsA.flatMap((partA) =>
    partsB.map((partB): Path => toSteps(convexSum(partA, partB))),
  );
  return unitePaths(sums);
}

/**
 * The sum of two convex rings (every point of one plus every point of the other): their edges in the order of their
 * directions. Both oriented as outer rings, in whole numbers, for which it is exact.
 */
export function convexSum(a: Ring, b: Ring): Ring {
  const startA = topmost(a);
  const startB = topmost(b);
  const corners: Point[] = [];
  let i = 0;
  let j = 0;
  while (i < a.length || j < b.length) {
    const p = a[(startA + i) % a.length]!;
    const q = b[(startB + j) % b.length]!;
    corners.push({ x: p.x + q.x, y: p.y + q.y });
    const nextP = a[(startA + i + 1) % a.length]!;
    const nextQ = b[(startB + j + 1) % b.length]!;
    const turn = i >= a.length ? -1 : j >= b.length ? 1 : turnBetween(p, nextP, q, nextQ);
    if (turn >= 0) i++;
    if (turn <= 0) j++;
  }
  return corners;
}

/** Sign of the turn from the first edge's direction to the second's; whole numbers below 2^25 are exact. */
function turnBetween(p: Point, nextP: Point, q: Point, nextQ: Point): number {
  const zero = { x: 0, y: 0 };
  return turnOf(zero, { x: nextP.x - p.x, y: nextP.y - p.y }, { x: nextQ.x - q.x, y: nextQ.y - q.y });
}

/** The corner at which the edges' directions begin: topmost, of those the leftmost. */
function topmost(ring: Ring): number {
  let best = 0;
  ring.forEach((p, i) => {
    const q = ring[best]!;
    if (p.y < q.y || (p.y === q.y && p.x < q.x)) best = i;
  });
  return best;
}

/** Whole grid steps as plain points. */
function onGrid(region: Region): Region {
  const steps = (ring: Ring): Ring => toPath(ring).map(({ X, Y }) => ({ x: X, y: Y }));
  return { outer: steps(region.outer), openings: region.openings.map(steps) };
}

/** Turned about the origin by half a turn, which keeps the sign of the area. */
function negated(ring: Ring): Ring {
  return ring.map((p) => ({ x: -p.x, y: -p.y }));
}

function toSteps(ring: Ring): Path {
  return ring.map((p) => ({ X: p.x, Y: p.y }));
}
