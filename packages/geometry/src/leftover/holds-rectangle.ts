import { regionArea } from '../shape/ring.js';
import type { Point, Region, Ring } from '../types/shape.js';

/** Lines across the region on which a rectangle's near side is looked for, at most; their pitch is its error. */
const MOST_LINES = 400;

/** Pitch of those lines where the region is small, in mm. */
const FINEST_PITCH_MM = 0.5;

/**
 * True if the region holds a rectangle of `along` by `across` mm with sides along and across the direction.
 * Looks on a fine pitch (0.5 mm, or a 400th of the region), so a rectangle that fits by less may be missed, and
 * one is never found that doesn't fit by more than that.
 */
export function holdsRectangle(region: Region, direction: Point, along: number, across: number): boolean {
  if (along * across > regionArea(region)) return false;
  const rings = [region.outer, ...region.openings].map((ring) => turnRing(ring, direction));
  let [minU, maxU, minV, maxV] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { x, y } of rings[0]!) {
    minU = Math.min(minU, x);
    maxU = Math.max(maxU, x);
    minV = Math.min(minV, y);
    maxV = Math.max(maxV, y);
  }
  if (maxU - minU < along || maxV - minV < across) return false;
  const pitch = Math.max(FINEST_PITCH_MM, (maxU - minU) / MOST_LINES);
  const lines = Math.floor((maxU - minU) / pitch) + 1;
  const free: Span[][] = [];
  for (let i = 0; i <= lines; i++) free.push(spansAcross(rings, minU + i * pitch, across));
  const needed = Math.ceil(along / pitch);
  for (let i = 0; i + needed <= lines; i++) {
    if (holdsFrom(free, i, needed, across)) return true;
  }
  return false;
}

/** A stretch of a line across that lies inside. */
interface Span {
  readonly low: number;
  readonly high: number;
}

function turnRing(ring: Ring, direction: Point): Point[] {
  return ring.map(({ x, y }) => ({
    x: x * direction.x + y * direction.y,
    y: y * direction.x - x * direction.y,
  }));
}

/** Stretches of the line at u that are inside and long enough. */
function spansAcross(rings: readonly (readonly Point[])[], u: number, across: number): Span[] {
  const crossings: number[] = [];
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i++) {
      const a = ring[i]!;
      const b = ring[i + 1 === ring.length ? 0 : i + 1]!;
      if (a.x > u === b.x > u) continue;
      crossings.push(a.y + ((u - a.x) / (b.x - a.x)) * (b.y - a.y));
    }
  }
  crossings.sort((a, b) => a - b);
  const spans: Span[] = [];
  for (let i = 0; i + 1 < crossings.length; i += 2) {
    const span = { low: crossings[i]!, high: crossings[i + 1]! };
    if (span.high - span.low >= across) spans.push(span);
  }
  return spans;
}

/** The stretches that all lines from the first on share: one of them must be long enough. */
function holdsFrom(free: readonly Span[][], first: number, count: number, across: number): boolean {
  let shared: Span[] = free[first]!;
  for (let i = first + 1; i <= first + count && shared.length > 0; i++) {
    const next: Span[] = [];
    for (const a of shared) {
      for (const b of free[i]!) {
        const span = { low: Math.max(a.low, b.low), high: Math.min(a.high, b.high) };
        if (span.high - span.low >= across) next.push(span);
      }
    }
    shared = next;
  }
  return shared.length > 0;
}
