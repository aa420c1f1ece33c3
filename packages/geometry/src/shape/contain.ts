import { TOUCH_MM } from '../tolerance.js';
import type { Point, Region, Ring } from '../types/shape.js';
import { outlineDistance, pointToRing } from './distance.js';
import { meetingShare } from './orientation.js';
import { pointInRegion, pointInRing } from './point-in-ring.js';
import { boxesTouch, ringBox } from './ring.js';

export { pointInRegion, pointInRing } from './point-in-ring.js';
export type { Place } from './point-in-ring.js';

/** True if all of `inner` lies in `outer`. They may touch; 1e-6 mm is forgiven at touching edges. */
export function ringInRing(inner: Ring, outer: Ring): boolean {
  const area = { outer, openings: [] };
  return liesWithin(ringBox(inner), ringBox(outer)) && outlineWithin(inner, area);
}

/**
 * True if all of `inner` lies in `outer`, at least `atLeastMm` from its edges (outline and openings). Openings of
 * `outer` may lie in openings of `inner`. With 0, the default, they may touch; 1e-6 mm is forgiven there.
 */
export function regionInRegion(
  inner: Region,
  outer: Region,
  options: { readonly atLeastMm?: number } = {},
): boolean {
  if (!liesWithin(ringBox(inner.outer), ringBox(outer.outer))) return false;
  if (!outlineWithin(inner.outer, outer)) return false;
  for (const opening of outer.openings) {
    if (openingMeetsMaterial(opening, inner)) return false;
  }
  const atLeast = options.atLeastMm ?? 0;
  if (atLeast <= 0) return true;
  const innerRings = [inner.outer, ...inner.openings];
  return [outer.outer, ...outer.openings].every((edge) =>
    innerRings.every((ring) => outlineDistance(ring, edge, atLeast) >= atLeast),
  );
}

/** A point strictly inside a ring (of more than no area): in the middle of the widest stretch of a level line. */
export function pointInside(ring: Ring): Point {
  const levels = [...new Set(ring.map((p) => p.y))].sort((a, b) => a - b);
  let best: Point = ring[0] ?? { x: 0, y: 0 };
  let bestScore = -1;
  for (let i = 0; i + 1 < levels.length; i++) {
    const height = levels[i + 1]! - levels[i]!;
    const y = levels[i]! + height / 2;
    const xs = levelCrossings(ring, y);
    for (let k = 0; k + 1 < xs.length; k += 2) {
      const score = Math.min(xs[k + 1]! - xs[k]!, height);
      if (score > bestScore) {
        bestScore = score;
        best = { x: (xs[k]! + xs[k + 1]!) / 2, y };
      }
    }
  }
  return best;
}

function levelCrossings(ring: Ring, y: number): number[] {
  const xs: number[] = [];
  let a = ring[ring.length - 1]!;
  for (const b of ring) {
    if (a.y > y !== b.y > y) xs.push(a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x));
    a = b;
  }
  return xs.sort((s, t) => s - t);
}

function liesWithin(inner: ReturnType<typeof ringBox>, outer: ReturnType<typeof ringBox>): boolean {
  return (
    inner.minX >= outer.minX - TOUCH_MM &&
    inner.minY >= outer.minY - TOUCH_MM &&
    inner.maxX <= outer.maxX + TOUCH_MM &&
    inner.maxY <= outer.maxY + TOUCH_MM
  );
}

/** True if no part of the ring's outline leaves the region: between its contacts, no middle does. */
function outlineWithin(ring: Ring, region: Region): boolean {
  const box = ringBox(ring);
  const edges = [region.outer, ...region.openings].flatMap((edge) => edgesNear(edge, box));
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i]!;
    const b = ring[(i + 1) % ring.length]!;
    const shares = contactShares(a, b, edges);
    for (let k = 0; k + 1 < shares.length; k++) {
      const middle = (shares[k]! + shares[k + 1]!) / 2;
      const p = { x: a.x + middle * (b.x - a.x), y: a.y + middle * (b.y - a.y) };
      if (isOff(p, region)) return false;
    }
    if (isOff(a, region)) return false;
  }
  return true;
}

function isOff(p: Point, region: Region): boolean {
  if (pointInRegion(p, region) !== 'outside') return false;
  return [region.outer, ...region.openings].every((ring) => pointToRing(p, ring) > TOUCH_MM);
}

type Stretch = readonly [Point, Point];

function edgesNear(ring: Ring, box: ReturnType<typeof ringBox>): Stretch[] {
  const near: Stretch[] = [];
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i]!;
    const b = ring[(i + 1) % ring.length]!;
    if (boxesTouch(ringBox([a, b]), box, TOUCH_MM)) near.push([a, b]);
  }
  return near;
}

/** Shares of the way from a to b at which it meets an edge, ends of edges included; 0 and 1 always. */
function contactShares(a: Point, b: Point, edges: readonly Stretch[]): number[] {
  const shares = [0, 1];
  const box = ringBox([a, b]);
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const lengthSq = dx * dx + dy * dy;
  if (lengthSq === 0) return shares;
  for (const [c, d] of edges) {
    if (!boxesTouch(ringBox([c, d]), box, TOUCH_MM)) continue;
    const meeting = meetingShare(a, b, c, d);
    if (meeting !== undefined) shares.push(meeting);
    // Near-parallel edges meet where rounding says; their ends part the stretch just as well.
    for (const p of [c, d]) shares.push(((p.x - a.x) * dx + (p.y - a.y) * dy) / lengthSq);
  }
  return shares.filter((share) => share >= 0 && share <= 1).sort((s, t) => s - t);
}

/** An opening of the outer region, whose edge the inner outline does not enter, is harmless beside it or in one of its openings. */
function openingMeetsMaterial(opening: Ring, inner: Region): boolean {
  if (!boxesTouch(ringBox(opening), ringBox(inner.outer))) return false;
  if (pointInRing(pointInside(opening), inner.outer) !== 'inside') return false;
  return !inner.openings.some((gap) => ringInRing(opening, gap));
}
