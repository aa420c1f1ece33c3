import type { Area } from './area.js';
import { visitEdgesInBox } from './box-tree.js';

/** A stretch of a segment, as shares 0 to 1 of its way. */
export type Stretch = readonly [from: number, to: number];

/** Stretches shorter than this (mm) are rounding: two neighbouring edges cover a segment up to their common corner. */
const SHORTEST_STRETCH_MM = 1e-9;

/**
 * The stretches of the segment from p to q on which every point lies farther than `reach` (mm) from the
 * boundaries of all the areas. Exact up to rounding: the points within `reach` of one edge form a convex
 * shape (a stadium), so a segment meets it in one stretch; what no edge covers is left over. A boundary can't
 * be crossed without coming near it, so each stretch lies wholly inside or wholly outside of each area.
 */
export function farStretches(
  px: number,
  py: number,
  qx: number,
  qy: number,
  areas: readonly Area[],
  reach: number,
): readonly Stretch[] {
  const covered: Stretch[] = [];
  const minX = Math.min(px, qx) - reach;
  const minY = Math.min(py, qy) - reach;
  const maxX = Math.max(px, qx) + reach;
  const maxY = Math.max(py, qy) + reach;
  for (const area of areas) {
    visitEdgesInBox(area.tree, minX, minY, maxX, maxY, (i) => {
      const ax = area.ax[i]!;
      const ay = area.ay[i]!;
      const bx = area.bx[i]!;
      const by = area.by[i]!;
      if (Math.max(ax, bx) < minX || Math.min(ax, bx) > maxX) return;
      if (Math.max(ay, by) < minY || Math.min(ay, by) > maxY) return;
      const stretch = nearStretch(px, py, qx, qy, ax, ay, bx, by, reach);
      if (stretch !== undefined) covered.push(stretch);
    });
  }
  return uncovered(
    covered,
    SHORTEST_STRETCH_MM / Math.max(Math.hypot(qx - px, qy - py), SHORTEST_STRETCH_MM),
  );
}

function uncovered(covered: Stretch[], shortest: number): readonly Stretch[] {
  covered.sort((one, other) => one[0] - other[0]);
  const free: Stretch[] = [];
  let reached = 0;
  for (const [from, to] of covered) {
    if (from - reached > shortest) free.push([reached, from]);
    reached = Math.max(reached, to);
  }
  if (1 - reached > shortest) free.push([reached, 1]);
  return free;
}

/** The stretch of pq within `reach` of the segment ab: from the first to the last meeting with its stadium. */
function nearStretch(
  px: number,
  py: number,
  qx: number,
  qy: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
  reach: number,
): Stretch | undefined {
  const parts = [
    withinDisc(px, py, qx, qy, ax, ay, reach),
    withinDisc(px, py, qx, qy, bx, by, reach),
    withinBand(px, py, qx, qy, ax, ay, bx, by, reach),
  ];
  let from = Infinity;
  let to = -Infinity;
  for (const part of parts) {
    if (part === undefined) continue;
    from = Math.min(from, part[0]);
    to = Math.max(to, part[1]);
  }
  return clip(from, to);
}

function withinDisc(
  px: number,
  py: number,
  qx: number,
  qy: number,
  cx: number,
  cy: number,
  reach: number,
): Stretch | undefined {
  const dx = qx - px;
  const dy = qy - py;
  const lengthSq = dx * dx + dy * dy;
  if (lengthSq === 0) return Math.hypot(px - cx, py - cy) <= reach ? [0, 1] : undefined;
  const crossSq = ((px - cx) * dy - (py - cy) * dx) ** 2 / lengthSq;
  const leftSq = reach * reach - crossSq;
  if (leftSq < 0) return undefined;
  const middle = ((cx - px) * dx + (cy - py) * dy) / lengthSq;
  const half = Math.sqrt(leftSq / lengthSq);
  return [middle - half, middle + half];
}

/** The rectangle of the stadium: beside ab, within `reach` of its line. */
function withinBand(
  px: number,
  py: number,
  qx: number,
  qy: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
  reach: number,
): Stretch | undefined {
  const length = Math.hypot(bx - ax, by - ay);
  const ex = (bx - ax) / length;
  const ey = (by - ay) / length;
  const along = withinRange((px - ax) * ex + (py - ay) * ey, (qx - px) * ex + (qy - py) * ey, 0, length);
  if (along === undefined) return undefined;
  const across = withinRange((py - ay) * ex - (px - ax) * ey, (qy - py) * ex - (qx - px) * ey, -reach, reach);
  if (across === undefined) return undefined;
  const from = Math.max(along[0], across[0]);
  const to = Math.min(along[1], across[1]);
  return from <= to ? [from, to] : undefined;
}

/** The t for which low ≤ start + t · rise ≤ high. */
function withinRange(start: number, rise: number, low: number, high: number): Stretch | undefined {
  if (rise === 0) return start >= low && start <= high ? [-Infinity, Infinity] : undefined;
  const one = (low - start) / rise;
  const other = (high - start) / rise;
  return one <= other ? [one, other] : [other, one];
}

function clip(from: number, to: number): Stretch | undefined {
  const start = Math.max(from, 0);
  const end = Math.min(to, 1);
  return start <= end ? [start, end] : undefined;
}
