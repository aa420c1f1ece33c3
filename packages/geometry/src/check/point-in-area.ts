import { orient2d } from 'robust-predicates';
import type { Area } from './area.js';
import { visitEdgesInBox } from './box-tree.js';

/** True when the point lies strictly inside: even-odd rule, exact signs; a point on the boundary is not inside. */
export function isStrictlyInside(area: Area, x: number, y: number): boolean {
  const { box } = area;
  if (!(x > box.minX && x < box.maxX && y > box.minY && y < box.maxY)) return false;
  const { ax, ay, bx, by } = area;
  let inside = false;
  let onBoundary = false;
  visitEdgesInBox(area.tree, x, y, Infinity, y, (i) => {
    const y0 = ay[i]!;
    const y1 = by[i]!;
    if (Math.max(y0, y1) < y || Math.min(y0, y1) > y || Math.max(ax[i]!, bx[i]!) < x) return;
    const upwards = y0 > y1;
    const side = upwards ? orient2d(bx[i]!, y1, ax[i]!, y0, x, y) : orient2d(ax[i]!, y0, bx[i]!, y1, x, y);
    if (side === 0) {
      if (y0 !== y1 || Math.min(ax[i]!, bx[i]!) <= x) onBoundary = true;
      return;
    }
    // A corner at the height of the point counts with the edge that goes on below it, so that it counts once.
    if (y0 > y === y1 > y) return;
    if (side < 0) inside = !inside;
  });
  return inside && !onBoundary;
}
