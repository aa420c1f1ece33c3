import { findSelfCrossing, pointToSegment, ringArea, ringPerimeter } from '@hidebound/geometry';
import type { Point, Ring } from '@hidebound/geometry';

/** How far a simplified ring may lie beyond the traced one: less than a fifth of what the best photo is off by. */
export const BEYOND_MM = 0.1;
/** A hole is round more often than not, and lines across its bends would all make it smaller. */
const OPENING_BEYOND_MM = 0.03;
/** Share of its area that a piece may lose by being simplified. */
const AREA_LOSS = 0.001;
/** A line that cuts off hollows and bulges alike lies about this share of the tolerance within the ring on the whole. */
const MEAN_LOSS = 0.4;
/** Points that one line may stand for; keeps the work from growing with the square of the ring. */
const LONGEST_RUN = 400;
/** How often the tolerance is halved where the lines would cross each other or lose too much. */
const TRIES = 4;

/**
 * A ring through some of the given ring's corners, fewer of them. It lies nowhere more than BEYOND_MM outside of the
 * leather's given edge and nowhere more than `toleranceMm` within it, loses less than a thousandth of an outer ring's
 * area (so small pieces get a smaller tolerance), and does not cross itself unless the given ring does. An opening's
 * ring (negative area) grows where an outer ring shrinks, and reaches over the hole by 0.03 mm at most. Orientation stays.
 */
export function simplifyWithin(ring: Ring, toleranceMm = 0.5): Ring {
  if (ring.length < 4) return ring;
  const area = ringArea(ring);
  const mostLost = area > 0 ? AREA_LOSS * area : Infinity;
  const most = area > 0 ? BEYOND_MM : OPENING_BEYOND_MM;
  let within = Math.min(toleranceMm, mostLost / (MEAN_LOSS * ringPerimeter(ring)));
  for (let tries = 0; tries < TRIES; tries++, within /= 2) {
    const simple = withFewerCorners(ring, within, Math.min(most, within));
    if (simple.length < 3 || findSelfCrossing(simple) !== undefined) continue;
    if (Math.abs(ringArea(simple) - area) <= mostLost) return simple;
  }
  return ring;
}

/** Goes around from the sharpest corner, each time to the furthest corner that one line can reach. */
function withFewerCorners(ring: Ring, within: number, beyond: number): Ring {
  const start = farthestFrom(ring, ring[0]!);
  const corner = (k: number): Point => ring[(start + k) % ring.length]!;
  const kept: Point[] = [];
  for (let at = 0; at < ring.length;) {
    kept.push(corner(at));
    at += reachFrom(corner, at, ring.length, within, beyond);
  }
  return kept;
}

/** A far corner is one that stays in any case. */
function farthestFrom(ring: Ring, from: Point): number {
  let best = 0;
  let bestSq = -1;
  ring.forEach(({ x, y }, i) => {
    const awaySq = (x - from.x) ** 2 + (y - from.y) ** 2;
    if (awaySq > bestSq) [best, bestSq] = [i, awaySq];
  });
  return best;
}

/** How many corners one line from this one can skip to: doubles its stride while it fits, then closes in. */
function reachFrom(
  corner: (k: number) => Point,
  from: number,
  count: number,
  within: number,
  beyond: number,
): number {
  const most = Math.min(LONGEST_RUN, count - from);
  let good = 1;
  let bad = most + 1;
  while (good < bad - 1) {
    const next = good * 2 < bad && bad > most ? good * 2 : (good + bad) >> 1;
    const tried = Math.min(next, most);
    if (fits(corner, from, from + tried, within, beyond)) good = tried;
    else bad = tried;
  }
  return good;
}

/** The leather lies on the right hand of the way: a corner to the right of the line would be left outside by it. */
function fits(
  corner: (k: number) => Point,
  first: number,
  last: number,
  within: number,
  beyond: number,
): boolean {
  const a = corner(first);
  const b = corner(last);
  for (let k = first + 1; k < last; k++) {
    const p = corner(k);
    const isInside = (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x) > 0;
    // Where the traced edge lies on the leather's side of the line, the line runs beyond it.
    if (pointToSegment(p, a, b) > (isInside ? beyond : within)) return false;
  }
  return true;
}
