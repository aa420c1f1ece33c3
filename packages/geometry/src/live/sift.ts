import type { Area } from '../check/area.js';
import { areBoxesNear, ringOfEdge } from '../check/area.js';
import { nearestBoundaries } from '../check/boundary-distance.js';
import { visitEdgesInBox } from '../check/box-tree.js';
import type { CopyRef } from '../types/problem.js';
import { ARITHMETIC_MM, INSET_END_MM, SIFT_MM, TOUCHING_MM } from './constants.js';
import type { Obstacle } from './obstacles.js';
import type { SolidLoops } from './solid-loops.js';
import { solidLoops } from './solid-loops.js';

/**
 * The first obstacle that the shapes, where they lie, come nearer to than rounding explains; -1 if none does. Quick
 * and coarse: it knows boundaries only, and finds no shape that lies wholly within another one. `first` is looked at
 * before all others.
 */
export function firstInTheWay(
  shapes: readonly Area[],
  obstacles: readonly Obstacle[],
  first: number,
): number {
  const insets: (SolidLoops | undefined)[] = [];
  const isInTheWay = ({ shape, area, distance, isPassable }: Obstacle): boolean => {
    const own = shapes[shape]!;
    if (isPassable || !areBoxesNear(own.box, area.box, distance)) return false;
    if (distance > SIFT_MM) return nearestBoundaries(own, area, distance - SIFT_MM) !== undefined;
    return doesCross((insets[shape] ??= solidLoops(own, 'inside')), area);
  };
  if (first >= 0 && isInTheWay(obstacles[first]!)) return first;
  return obstacles.findIndex((obstacle, i) => i !== first && isInTheWay(obstacle));
}

/** True if the shapes keep every distance in full, as doubles tell it; distances of nothing are not looked at. */
export function keepsInFull(shapes: readonly Area[], obstacles: readonly Obstacle[]): boolean {
  return obstacles.every(({ shape, area, distance }) => {
    return distance === 0 || nearestBoundaries(shapes[shape]!, area, distance - ARITHMETIC_MM) === undefined;
  });
}

/** What the shapes touch: whose distance they keep to within what the check forgives. */
export function touchedBy(
  shapes: readonly Area[],
  obstacles: readonly Obstacle[],
): readonly (CopyRef | string)[] {
  const touched = new Set<CopyRef | string>();
  for (const { name, shape, area, distance } of obstacles) {
    const own = shapes[shape]!;
    const nearest = nearestBoundaries(own, area, distance + TOUCHING_MM);
    if (nearest === undefined) continue;
    const ring = name === 'outline' ? ringOfEdge(area, nearest.edge) : 0;
    touched.add(ring === 0 ? name : `opening ${ring}`);
  }
  return [...touched];
}

/** True if a side of the solid, drawn in by what rounding explains, crosses the area's boundary. */
function doesCross(solid: SolidLoops, area: Area): boolean {
  for (let i = 0; i < solid.count; i++) {
    const ux = solid.ux[i]!;
    const uy = solid.uy[i]!;
    // The solid lies to the right of its sides.
    const px = solid.ax[i]! + INSET_END_MM * ux - SIFT_MM * uy;
    const py = solid.ay[i]! + INSET_END_MM * uy + SIFT_MM * ux;
    const qx = solid.bx[i]! - INSET_END_MM * ux - SIFT_MM * uy;
    const qy = solid.by[i]! - INSET_END_MM * uy + SIFT_MM * ux;
    if ((qx - px) * ux + (qy - py) * uy <= 0) continue;
    if (crossesBoundary(px, py, qx, qy, area)) return true;
  }
  return false;
}

function crossesBoundary(px: number, py: number, qx: number, qy: number, area: Area): boolean {
  const sideOf = (ax: number, ay: number, bx: number, by: number, x: number, y: number): number =>
    (bx - ax) * (y - ay) - (by - ay) * (x - ax);
  const { ax, ay, bx, by } = area;
  let crosses = false;
  const visit = (k: number): void => {
    if (crosses) return;
    const [cx, cy, dx, dy] = [ax[k]!, ay[k]!, bx[k]!, by[k]!];
    if (sideOf(px, py, qx, qy, cx, cy) > 0 === sideOf(px, py, qx, qy, dx, dy) > 0) return;
    crosses = sideOf(cx, cy, dx, dy, px, py) > 0 !== sideOf(cx, cy, dx, dy, qx, qy) > 0;
  };
  visitEdgesInBox(area.tree, Math.min(px, qx), Math.min(py, qy), Math.max(px, qx), Math.max(py, qy), visit);
  return crosses;
}
