import { orient2d } from 'robust-predicates';
import type { Point } from '../types/shape.js';
import type { Area } from './area.js';
import { visitNearestEdges } from './box-tree.js';

/** How near two boundaries come, and where. */
export interface Nearest {
  readonly distance: number;
  /** Half way between the two. */
  readonly place: Point;
  /** The edge of the second area that is nearest. */
  readonly edge: number;
}

/** Distance (mm) of a point to the boundary of an area. */
export function distanceToBoundary(area: Area, x: number, y: number): number {
  return distanceToEdge(area, nearestEdge(area, x, y), x, y);
}

/** The edge of an area that is nearest to a point. */
export function nearestEdge(area: Area, x: number, y: number): number {
  let best = Infinity;
  let edge = 0;
  visitNearestEdges(area.tree, { minX: x, minY: y, maxX: x, maxY: y }, Infinity, (i) => {
    const distance = distanceToEdge(area, i, x, y);
    if (distance < best) {
      best = distance;
      edge = i;
    }
    return best;
  });
  return edge;
}

function distanceToEdge(area: Area, i: number, x: number, y: number): number {
  return pointToSegment(x, y, area.ax[i]!, area.ay[i]!, area.bx[i]!, area.by[i]!);
}

/** The shortest distance (mm) between the boundaries of two areas where it is below `reach`; 0 where they cross. */
export function nearestBoundaries(one: Area, other: Area, reach: number): Nearest | undefined {
  let best = reach;
  let nearest: Nearest | undefined;
  for (let i = 0; i < one.count; i++) {
    const px = one.ax[i]!;
    const py = one.ay[i]!;
    const qx = one.bx[i]!;
    const qy = one.by[i]!;
    const box = {
      minX: Math.min(px, qx),
      minY: Math.min(py, qy),
      maxX: Math.max(px, qx),
      maxY: Math.max(py, qy),
    };
    visitNearestEdges(other.tree, box, best, (k) => {
      const ax = other.ax[k]!;
      const ay = other.ay[k]!;
      const bx = other.bx[k]!;
      const by = other.by[k]!;
      const distance = segmentToSegment(px, py, qx, qy, ax, ay, bx, by);
      if (distance < best) {
        best = distance;
        nearest = { distance, place: placeBetween(px, py, qx, qy, ax, ay, bx, by), edge: k };
      }
      return best;
    });
    if (best === 0) break;
  }
  return nearest;
}

/** Distance of the point (x, y) to the segment from a to b. */
export function pointToSegment(x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
  const near = nearestOnSegment(x, y, ax, ay, bx, by);
  const dx = x - near.x;
  const dy = y - near.y;
  return Math.sqrt(dx * dx + dy * dy);
}

/** The nearest point of a segment; its ends are returned as they are, without rounding. */
export function nearestOnSegment(
  x: number,
  y: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
): Point {
  const dx = bx - ax;
  const dy = by - ay;
  const along = (x - ax) * dx + (y - ay) * dy;
  const lengthSq = dx * dx + dy * dy;
  if (!(along > 0)) return { x: ax, y: ay };
  if (along >= lengthSq) return { x: bx, y: by };
  const t = along / lengthSq;
  return { x: ax + t * dx, y: ay + t * dy };
}

function segmentToSegment(
  px: number,
  py: number,
  qx: number,
  qy: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
): number {
  if (doCross(px, py, qx, qy, ax, ay, bx, by)) return 0;
  return Math.min(
    pointToSegment(px, py, ax, ay, bx, by),
    pointToSegment(qx, qy, ax, ay, bx, by),
    pointToSegment(ax, ay, px, py, qx, qy),
    pointToSegment(bx, by, px, py, qx, qy),
  );
}

/** True when two segments cross within both; those that merely touch have an end at distance 0 anyway. */
function doCross(
  px: number,
  py: number,
  qx: number,
  qy: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
): boolean {
  if (Math.max(px, qx) < Math.min(ax, bx) || Math.max(ax, bx) < Math.min(px, qx)) return false;
  if (Math.max(py, qy) < Math.min(ay, by) || Math.max(ay, by) < Math.min(py, qy)) return false;
  const p = orient2d(ax, ay, bx, by, px, py);
  const q = orient2d(ax, ay, bx, by, qx, qy);
  if (!((p > 0 && q < 0) || (p < 0 && q > 0))) return false;
  const a = orient2d(px, py, qx, qy, ax, ay);
  const b = orient2d(px, py, qx, qy, bx, by);
  return (a > 0 && b < 0) || (a < 0 && b > 0);
}

function placeBetween(
  px: number,
  py: number,
  qx: number,
  qy: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
): Point {
  if (doCross(px, py, qx, qy, ax, ay, bx, by)) {
    const dx = qx - px;
    const dy = qy - py;
    const ex = bx - ax;
    const ey = by - ay;
    const t = ((ax - px) * ey - (ay - py) * ex) / (dx * ey - dy * ex);
    return { x: px + t * dx, y: py + t * dy };
  }
  const candidates: readonly (readonly [Point, Point])[] = [
    [{ x: px, y: py }, nearestOnSegment(px, py, ax, ay, bx, by)],
    [{ x: qx, y: qy }, nearestOnSegment(qx, qy, ax, ay, bx, by)],
    [{ x: ax, y: ay }, nearestOnSegment(ax, ay, px, py, qx, qy)],
    [{ x: bx, y: by }, nearestOnSegment(bx, by, px, py, qx, qy)],
  ];
  let best = Infinity;
  let place: Point = { x: px, y: py };
  for (const [from, to] of candidates) {
    const apart = Math.hypot(from.x - to.x, from.y - to.y);
    if (apart >= best) continue;
    best = apart;
    place = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  }
  return place;
}
