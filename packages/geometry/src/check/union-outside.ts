import type { Point } from '../types/shape.js';
import type { Area } from './area.js';
import { distanceToBoundary } from './boundary-distance.js';
import { visitEdgesInBox } from './box-tree.js';
import { farStretches } from './far-stretches.js';
import type { Depth } from './overlap-depth.js';
import { isStrictlyInside } from './point-in-area.js';

/** A line that lies just farther from an edge than what is forgiven. */
const JUST_BEYOND = 1.01;

/**
 * Tells whether an area reaches out of the union of some others deeper than `forgiven` (mm), and where. A slit
 * between two of them no wider than twice that is no outside. The far outside is either met by the area's
 * boundary, or is a hole in the union that the area covers whole: then it lies beside an edge of the union.
 */
export function outsideUnionDeeperThan(
  inner: Area,
  union: readonly Area[],
  forgiven: number,
): Depth | undefined {
  const near = union.filter((area) => isBoxNear(inner, area, forgiven));
  for (let i = 0; i < inner.count; i++) {
    const place = uncoveredPlace(inner.ax[i]!, inner.ay[i]!, inner.bx[i]!, inner.by[i]!, near, forgiven);
    if (place !== undefined) return { depth: distanceToUnion(union, place), place };
  }
  const hole = holeWithin(inner, near, forgiven);
  return hole === undefined ? undefined : { depth: distanceToUnion(union, hole), place: hole };
}

function holeWithin(inner: Area, union: readonly Area[], forgiven: number): Point | undefined {
  const { minX, minY, maxX, maxY } = inner.box;
  for (const area of union) {
    const edges: number[] = [];
    visitEdgesInBox(area.tree, minX, minY, maxX, maxY, (edge) => edges.push(edge));
    for (const edge of edges) {
      for (const side of [1, -1]) {
        const place = holeBeside(inner, union, area, edge, side * forgiven * JUST_BEYOND, forgiven);
        if (place !== undefined) return place;
      }
    }
  }
  return undefined;
}

function holeBeside(
  inner: Area,
  union: readonly Area[],
  area: Area,
  edge: number,
  aside: number,
  forgiven: number,
): Point | undefined {
  const dx = area.bx[edge]! - area.ax[edge]!;
  const dy = area.by[edge]! - area.ay[edge]!;
  const length = Math.hypot(dx, dy);
  const px = area.ax[edge]! - (aside * dy) / length;
  const py = area.ay[edge]! + (aside * dx) / length;
  return uncoveredPlace(px, py, px + dx, py + dy, union, forgiven, inner);
}

/** The middle of the first stretch of pq that lies far outside of the union and, if asked, inside of `within`. */
function uncoveredPlace(
  px: number,
  py: number,
  qx: number,
  qy: number,
  union: readonly Area[],
  forgiven: number,
  within?: Area,
): Point | undefined {
  for (const [from, to] of farStretches(px, py, qx, qy, union, forgiven)) {
    const t = (from + to) / 2;
    const place = { x: px + t * (qx - px), y: py + t * (qy - py) };
    if (within !== undefined && !isStrictlyInside(within, place.x, place.y)) continue;
    if (!union.some((area) => isStrictlyInside(area, place.x, place.y))) return place;
  }
  return undefined;
}

function distanceToUnion(union: readonly Area[], place: Point): number {
  return union.reduce((least, area) => Math.min(least, distanceToBoundary(area, place.x, place.y)), Infinity);
}

function isBoxNear(inner: Area, area: Area, reach: number): boolean {
  return (
    area.box.minX <= inner.box.maxX + reach &&
    area.box.maxX >= inner.box.minX - reach &&
    area.box.minY <= inner.box.maxY + reach &&
    area.box.maxY >= inner.box.minY - reach
  );
}
