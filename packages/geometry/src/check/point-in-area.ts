import { orient2d } from 'robust-predicates';
import type { Area } from './area.js';
import { visitEdgesInBox } from './box-tree.js';

/**
 * True when the point lies strictly inside: within the outer ring, in no opening, on no boundary. Exact signs.
 * Each ring counts by how often it winds around the point, so that one that crosses itself, or openings that
 * overlap, leave no hole where there is none.
 */
export function isStrictlyInside(area: Area, x: number, y: number): boolean {
  const { box } = area;
  if (!(x > box.minX && x < box.maxX && y > box.minY && y < box.maxY)) return false;
  const { ax, ay, bx, by, ringStart } = area;
  let ring = 0;
  let winding = 0;
  let isWithinOuter = false;
  let isOut = false;
  const endRing = (): void => {
    if (ring === 0) isWithinOuter = winding !== 0;
    else if (winding !== 0) isOut = true;
    winding = 0;
  };
  visitEdgesInBox(area.tree, x, y, Infinity, y, (i) => {
    const y0 = ay[i]!;
    const y1 = by[i]!;
    if ((y0 < y && y1 < y) || (y0 > y && y1 > y) || (ax[i]! < x && bx[i]! < x)) return;
    // Edges come in the order of their rings.
    while (i >= ringStart[ring + 1]!) {
      endRing();
      ring += 1;
    }
    const rises = y0 > y1;
    const side = rises ? orient2d(bx[i]!, y1, ax[i]!, y0, x, y) : orient2d(ax[i]!, y0, bx[i]!, y1, x, y);
    if (side === 0) {
      if (y0 !== y1 || Math.min(ax[i]!, bx[i]!) <= x) isOut = true;
      return;
    }
    // A corner at the height of the point counts with the edge that goes on below it, so that it counts once.
    if (y0 > y === y1 > y || side > 0) return;
    winding += rises ? -1 : 1;
  });
  endRing();
  return isWithinOuter && !isOut;
}
