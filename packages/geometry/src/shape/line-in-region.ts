import type { Point, Region } from '../types/shape.js';
import { meetingShare } from './orientation.js';

/** Where the endless line through two points runs within the region, in the order from a to b; none for one point twice. */
export function lineInRegion(a: Point, b: Point, region: Region): (readonly [Point, Point])[] {
  if (a.x === b.x && a.y === b.y) return [];
  const side = (p: Point): number => (p.x - a.x) * (b.y - a.y) - (p.y - a.y) * (b.x - a.x);
  const shares: number[] = [];
  for (const ring of [region.outer, ...region.openings]) {
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length]!;
      // A corner on the line counts to one side only, so that it is crossed once or not at all.
      if (side(p) < 0 === side(q) < 0) return;
      const share = meetingShare(a, b, p, q);
      if (share !== undefined) shares.push(share);
    });
  }
  shares.sort((s, t) => s - t);
  const at = (share: number): Point => ({ x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) });
  const stretches: (readonly [Point, Point])[] = [];
  for (let i = 0; i + 1 < shares.length; i += 2) stretches.push([at(shares[i]!), at(shares[i + 1]!)]);
  return stretches;
}
