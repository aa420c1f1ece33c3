/**
 * Exact slides: how far rings may move along an axis until they are at a distance from standing rings, and how
 * far they must move to get free. Kernel code: two segments, one of which moves along an axis, are too near
 * while the point 0 is within the distance of the parallelogram of their differences, which is convex, so the
 * forbidden travel of a pair is one interval with a closed form.
 */
import type { Soup } from './soup.js';

/** Along x or along y, forwards or backwards. */
export interface SlideAxis {
  readonly alongX: boolean;
  readonly sign: 1 | -1;
}

/** Kept by the caller and written by the kernel: travel so far, and whether the start itself is too near. */
export interface SlideState {
  travel: number;
  blocked: boolean;
}

/** Ends of the forbidden interval of a pair; scratch of `forbidden`, rewritten by each call. */
export interface Interval {
  lo: number;
  hi: number;
}

/**
 * Shortens `state.travel` to what the pair allows. Sets `state.blocked` if they are too near at the start.
 */
export function limitSlide(
  moving: Soup,
  dx: number,
  dy: number,
  standing: Soup,
  distance: number,
  axis: SlideAxis,
  state: SlideState,
): void {
  const interval: Interval = { lo: 0, hi: 0 };
  forEachNear(moving, dx, dy, standing, distance, axis, state.travel, interval, () => {
    if (interval.lo < 0 && interval.hi > 0) state.blocked = true;
    else if (interval.lo >= 0 && interval.lo < state.travel) state.travel = interval.lo;
    return state.blocked;
  });
}

/**
 * Lengthens `state.travel` while the pair is too near there; true if it did. Looks as far as `mostTravel`.
 */
export function extendEscape(
  moving: Soup,
  dx: number,
  dy: number,
  standing: Soup,
  distance: number,
  axis: SlideAxis,
  mostTravel: number,
  state: SlideState,
): boolean {
  const interval: Interval = { lo: 0, hi: 0 };
  let longer = false;
  forEachNear(moving, dx, dy, standing, distance, axis, mostTravel, interval, () => {
    if (interval.lo < state.travel && interval.hi > state.travel) {
      state.travel = interval.hi;
      longer = true;
    }
    return state.travel > mostTravel;
  });
  return longer;
}

/** Every travel from 0 to `reach` at which some pair of edges begins or ceases to be too near. */
export function intervalEnds(
  moving: Soup,
  dx: number,
  dy: number,
  standing: Soup,
  distance: number,
  axis: SlideAxis,
  reach: number,
): number[] {
  const interval: Interval = { lo: 0, hi: 0 };
  const ends: number[] = [];
  forEachNear(moving, dx, dy, standing, distance, axis, reach, interval, () => {
    if (interval.lo >= 0 && interval.lo <= reach) ends.push(interval.lo);
    if (interval.hi >= 0 && interval.hi <= reach) ends.push(interval.hi);
    return false;
  });
  return ends;
}

/**
 * Calls `visit` for each pair of edges that is too near somewhere along the travel, with its forbidden interval
 * measured forwards along the axis; `visit` returns true to stop.
 */
function forEachNear(
  moving: Soup,
  dx: number,
  dy: number,
  standing: Soup,
  distance: number,
  axis: SlideAxis,
  reach: number,
  interval: Interval,
  visit: () => boolean,
): void {
  const alongX = axis.alongX;
  const grow = axis.sign > 0 ? reach : 0;
  const back = axis.sign > 0 ? 0 : reach;
  const beforeX = distance + (alongX ? back : 0);
  const afterX = distance + (alongX ? grow : 0);
  const beforeY = distance + (alongX ? 0 : back);
  const afterY = distance + (alongX ? 0 : grow);
  if (moving.minX + dx - beforeX > standing.maxX || moving.maxX + dx + afterX < standing.minX) return;
  if (moving.minY + dy - beforeY > standing.maxY || moving.maxY + dy + afterY < standing.minY) return;
  const mBox = moving.chunkBox;
  const sBox = standing.chunkBox;
  const mChunks = moving.chunkStart.length - 1;
  for (let s = 0; s + 1 < standing.chunkStart.length; s++) {
    const left = sBox[4 * s]! - dx - afterX;
    const right = sBox[4 * s + 2]! - dx + beforeX;
    const top = sBox[4 * s + 1]! - dy - afterY;
    const bottom = sBox[4 * s + 3]! - dy + beforeY;
    if (left > moving.maxX || right < moving.minX || top > moving.maxY || bottom < moving.minY) continue;
    for (let m = 0; m < mChunks; m++) {
      if (mBox[4 * m]! > right || mBox[4 * m + 2]! < left) continue;
      if (mBox[4 * m + 1]! > bottom || mBox[4 * m + 3]! < top) continue;
      const mEnd = moving.chunkStart[m + 1]!;
      const sEnd = standing.chunkStart[s + 1]!;
      for (let i = moving.chunkStart[m]!; i < mEnd; i++) {
        const ax = moving.ax[i]!;
        const bx = moving.bx[i]!;
        if ((ax < left && bx < left) || (ax > right && bx > right)) continue;
        const ay = moving.ay[i]!;
        const by = moving.by[i]!;
        if ((ay < top && by < top) || (ay > bottom && by > bottom)) continue;
        for (let j = standing.chunkStart[s]!; j < sEnd; j++) {
          const cx = standing.ax[j]! - dx;
          const cy = standing.ay[j]! - dy;
          const ex = standing.bx[j]! - dx;
          const ey = standing.by[j]! - dy;
          if (isBeyond(ax, bx, cx, ex, afterX, beforeX) || isBeyond(ay, by, cy, ey, afterY, beforeY))
            continue;
          const found = alongX
            ? forbidden(ax, ay, bx, by, cx, cy, ex, ey, distance, interval)
            : forbidden(ay, ax, by, bx, cy, cx, ey, ex, distance, interval);
          if (!found) continue;
          if (axis.sign < 0) {
            const lo = interval.lo;
            interval.lo = -interval.hi;
            interval.hi = -lo;
          }
          if (visit()) return;
        }
      }
    }
  }
}

/** True if the span c-e lies more than `after` past the span a-b, or more than `before` short of it. */
function isBeyond(a: number, b: number, c: number, e: number, after: number, before: number): boolean {
  const least = c < e ? c : e;
  const most = c < e ? e : c;
  return (a > b ? a : b) + after < least || (a < b ? a : b) - before > most;
}

/**
 * The travel t along x for which segment a-b moved by t is nearer to segment c-e than the distance: one open
 * interval, or none (false).
 */
function forbidden(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
  ex: number,
  ey: number,
  d: number,
  out: Interval,
): boolean {
  const y0 = cy - ay;
  const y1 = cy - by;
  const y2 = ey - by;
  const y3 = ey - ay;
  if (y0 >= d && y1 >= d && y2 >= d && y3 >= d) return false;
  if (y0 <= -d && y1 <= -d && y2 <= -d && y3 <= -d) return false;
  const x0 = cx - ax;
  const x1 = cx - bx;
  const x2 = ex - bx;
  const x3 = ex - ax;
  out.lo = Infinity;
  out.hi = -Infinity;
  corner(x0, y0, d, out);
  corner(x1, y1, d, out);
  corner(x2, y2, d, out);
  corner(x3, y3, d, out);
  // Opposite sides of the parallelogram run alike.
  sides(x1 - x0, y1 - y0, x0, y0, x3, y3, d, out);
  sides(x2 - x1, y2 - y1, x1, y1, x0, y0, d, out);
  return out.lo < out.hi;
}

function corner(x: number, y: number, d: number, out: Interval): void {
  const w2 = d * d - y * y;
  if (w2 <= 0) return;
  const w = Math.sqrt(w2);
  if (x - w < out.lo) out.lo = x - w;
  if (x + w > out.hi) out.hi = x + w;
}

/** Where the lines beside two sides along (dx, dy), from p and from q, at the distance from them, meet the axis. */
function sides(
  dx: number,
  dy: number,
  px: number,
  py: number,
  qx: number,
  qy: number,
  d: number,
  out: Interval,
): void {
  if (dy === 0) return;
  const scale = d / Math.sqrt(dx * dx + dy * dy);
  const nx = -dy * scale;
  const ny = dx * scale;
  meet(px + nx, py + ny, dx, dy, out);
  meet(px - nx, py - ny, dx, dy, out);
  meet(qx + nx, qy + ny, dx, dy, out);
  meet(qx - nx, qy - ny, dx, dy, out);
}

function meet(px: number, py: number, dx: number, dy: number, out: Interval): void {
  const t = -py / dy;
  if (!(t >= 0 && t <= 1)) return;
  const x = px + t * dx;
  if (x < out.lo) out.lo = x;
  if (x > out.hi) out.hi = x;
}
