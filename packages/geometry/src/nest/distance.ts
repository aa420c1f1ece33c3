/**
 * Distances and slides between flat edges. Kernel code: numbers in, numbers out, long by nature because
 * calls and objects in the innermost loop would cost more than the arithmetic.
 */
import type { Soup } from './soup.js';

/** Squared distance of two segments. */
export function segmentDistanceSq(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
  dx: number,
  dy: number,
): number {
  const ux = bx - ax;
  const uy = by - ay;
  const wx = dx - cx;
  const wy = dy - cy;
  const sideC = ux * (cy - ay) - uy * (cx - ax);
  const sideD = ux * (dy - ay) - uy * (dx - ax);
  if (sideC > 0 !== sideD > 0) {
    const sideA = wx * (ay - cy) - wy * (ax - cx);
    const sideB = wx * (by - cy) - wy * (bx - cx);
    if (sideA > 0 !== sideB > 0) return 0;
  }
  const u2 = ux * ux + uy * uy;
  const w2 = wx * wx + wy * wy;
  let best = pointSegmentSq(cx - ax, cy - ay, ux, uy, u2);
  let d = pointSegmentSq(dx - ax, dy - ay, ux, uy, u2);
  if (d < best) best = d;
  d = pointSegmentSq(ax - cx, ay - cy, wx, wy, w2);
  if (d < best) best = d;
  d = pointSegmentSq(bx - cx, by - cy, wx, wy, w2);
  return d < best ? d : best;
}

function pointSegmentSq(px: number, py: number, ux: number, uy: number, u2: number): number {
  let t = u2 > 0 ? (px * ux + py * uy) / u2 : 0;
  if (t < 0) t = 0;
  else if (t > 1) t = 1;
  const ex = px - t * ux;
  const ey = py - t * uy;
  return ex * ex + ey * ey;
}

/** True if the moving rings, shifted by (dx, dy), come nearer to the standing rings than `distance`. */
export function isNearer(moving: Soup, dx: number, dy: number, standing: Soup, distance: number): boolean {
  if (!boxesNear(moving, dx, dy, standing, distance)) return false;
  const limit = distance * distance;
  const mBox = moving.chunkBox;
  const sBox = standing.chunkBox;
  const lowX = moving.minX + dx - distance;
  const highX = moving.maxX + dx + distance;
  const lowY = moving.minY + dy - distance;
  const highY = moving.maxY + dy + distance;
  const mChunks = moving.chunkStart.length - 1;
  for (let s = 0; s + 1 < standing.chunkStart.length; s++) {
    const sx0 = sBox[4 * s]!;
    const sy0 = sBox[4 * s + 1]!;
    const sx1 = sBox[4 * s + 2]!;
    const sy1 = sBox[4 * s + 3]!;
    if (sx0 > highX || sx1 < lowX || sy0 > highY || sy1 < lowY) continue;
    const left = sx0 - distance - dx;
    const right = sx1 + distance - dx;
    const top = sy0 - distance - dy;
    const bottom = sy1 + distance - dy;
    for (let m = 0; m < mChunks; m++) {
      if (mBox[4 * m]! > right || mBox[4 * m + 2]! < left) continue;
      if (mBox[4 * m + 1]! > bottom || mBox[4 * m + 3]! < top) continue;
      if (chunksNearer(moving, m, dx, dy, standing, s, distance, limit)) return true;
    }
  }
  return false;
}

function chunksNearer(
  moving: Soup,
  m: number,
  dx: number,
  dy: number,
  standing: Soup,
  s: number,
  distance: number,
  limit: number,
): boolean {
  const mEnd = moving.chunkStart[m + 1]!;
  const sStart = standing.chunkStart[s]!;
  const sEnd = standing.chunkStart[s + 1]!;
  const sx0 = standing.chunkBox[4 * s]! - distance;
  const sy0 = standing.chunkBox[4 * s + 1]! - distance;
  const sx1 = standing.chunkBox[4 * s + 2]! + distance;
  const sy1 = standing.chunkBox[4 * s + 3]! + distance;
  for (let i = moving.chunkStart[m]!; i < mEnd; i++) {
    const ax = moving.ax[i]! + dx;
    const bx = moving.bx[i]! + dx;
    if ((ax < sx0 && bx < sx0) || (ax > sx1 && bx > sx1)) continue;
    const ay = moving.ay[i]! + dy;
    const by = moving.by[i]! + dy;
    if ((ay < sy0 && by < sy0) || (ay > sy1 && by > sy1)) continue;
    const x0 = (ax < bx ? ax : bx) - distance;
    const x1 = (ax < bx ? bx : ax) + distance;
    const y0 = (ay < by ? ay : by) - distance;
    const y1 = (ay < by ? by : ay) + distance;
    for (let j = sStart; j < sEnd; j++) {
      const cx = standing.ax[j]!;
      const ex = standing.bx[j]!;
      if ((cx < x0 && ex < x0) || (cx > x1 && ex > x1)) continue;
      const cy = standing.ay[j]!;
      const ey = standing.by[j]!;
      if ((cy < y0 && ey < y0) || (cy > y1 && ey > y1)) continue;
      if (segmentDistanceSq(ax, ay, bx, by, cx, cy, ex, ey) < limit) return true;
    }
  }
  return false;
}

export function boxesNear(moving: Soup, dx: number, dy: number, standing: Soup, distance: number): boolean {
  return (
    moving.minX + dx <= standing.maxX + distance &&
    moving.maxX + dx >= standing.minX - distance &&
    moving.minY + dy <= standing.maxY + distance &&
    moving.maxY + dy >= standing.minY - distance
  );
}
