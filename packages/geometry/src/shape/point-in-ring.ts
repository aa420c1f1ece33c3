import type { Point, Region, Ring } from '../types/shape.js';
import { isBetween, turnOf } from './orientation.js';

/** Where a point lies, seen from an area; exact for the coordinates as they stand. */
export type Place = 'inside' | 'outside' | 'edge';

/** Where a point lies, whichever way the ring runs. Exact signs, so `edge` means exactly on an edge. */
export function pointInRing(p: Point, ring: Ring): Place {
  let inside = false;
  let a = ring[ring.length - 1];
  for (const b of ring) {
    if (a === undefined) break;
    if (a.y === p.y && b.y === p.y) {
      if (isBetween(a, b, p)) return 'edge';
    } else if (a.y > p.y !== b.y > p.y) {
      const side = crossingSide(a, b, p);
      if (side === 0) return 'edge';
      if (side > 0) inside = !inside;
    } else if ((b.x === p.x && b.y === p.y) || (a.x === p.x && a.y === p.y)) return 'edge';
    a = b;
  }
  return inside ? 'inside' : 'outside';
}

/** Where a point lies; in an opening it is outside. */
export function pointInRegion(p: Point, region: Region): Place {
  const place = pointInRing(p, region.outer);
  if (place !== 'inside') return place;
  for (const opening of region.openings) {
    const inOpening = pointInRing(p, opening);
    if (inOpening !== 'outside') return inOpening === 'inside' ? 'outside' : 'edge';
  }
  return 'inside';
}

/** Positive if the level ray from p towards greater x crosses a-b, negative if not, 0 if p is on it. */
function crossingSide(a: Point, b: Point, p: Point): number {
  if (a.x < p.x && b.x < p.x) return -1;
  if (a.x > p.x && b.x > p.x) return 1;
  const turn = turnOf(a, b, p);
  return b.y > a.y ? turn : -turn;
}
