import type { Box, Point, Region, Ring } from '../types/shape.js';
import { buildBoxTree } from './box-tree.js';
import type { BoxTree } from './box-tree.js';

/**
 * A region as the check measures it: the edges of all its rings, one after the other, in flat arrays (mm),
 * with a tree of boxes over them. Which way a ring runs does not matter. Edges without length are left out.
 */
export interface Area {
  readonly count: number;
  readonly ax: Float64Array;
  readonly ay: Float64Array;
  readonly bx: Float64Array;
  readonly by: Float64Array;
  /** First edge of each ring, and the number of all edges at the end; ring 0 is the outer one. */
  readonly ringStart: readonly number[];
  readonly box: Box;
  readonly tree: BoxTree;
  /** What was computed of this area once it was asked for. */
  readonly memo: { deepPoints?: readonly Point[] };
}

/** Where points of an item's own frame come to lie: x' = cos·x − sin·y + x0, y' = sin·x + cos·y + y0. */
export interface Placing {
  readonly cos: number;
  readonly sin: number;
  readonly x: number;
  readonly y: number;
}

export const UNMOVED: Placing = { cos: 1, sin: 0, x: 0, y: 0 };

/** The area of a region after placing it. */
export function areaOfRegion(region: Region, placing: Placing = UNMOVED): Area {
  return areaOfRings([region.outer, ...region.openings], placing);
}

/** The area within the first ring and outside of all others. */
export function areaOfRings(rings: readonly Ring[], placing: Placing = UNMOVED): Area {
  const most = rings.reduce((sum, ring) => sum + ring.length, 0);
  const ax = new Float64Array(most);
  const ay = new Float64Array(most);
  const bx = new Float64Array(most);
  const by = new Float64Array(most);
  const ringStart: number[] = [0];
  let count = 0;
  const { cos, sin, x, y } = placing;
  for (const ring of rings) {
    const last = ring[ring.length - 1]!;
    let fromX = cos * last.x - sin * last.y + x;
    let fromY = sin * last.x + cos * last.y + y;
    for (const corner of ring) {
      const toX = cos * corner.x - sin * corner.y + x;
      const toY = sin * corner.x + cos * corner.y + y;
      if (fromX !== toX || fromY !== toY) {
        ax[count] = fromX;
        ay[count] = fromY;
        bx[count] = toX;
        by[count] = toY;
        count += 1;
      }
      fromX = toX;
      fromY = toY;
    }
    ringStart.push(count);
  }
  const tree = buildBoxTree(ax, ay, bx, by, count);
  return { count, ax, ay, bx, by, ringStart, box: boxOfEdges(ax, ay, count), tree, memo: {} };
}

/** Where a point of the item's own frame lies on the sheet. */
export function placePoint(x: number, y: number, placing: Placing): Point {
  return {
    x: placing.cos * x - placing.sin * y + placing.x,
    y: placing.sin * x + placing.cos * y + placing.y,
  };
}

/** The ring to which an edge belongs: 0 is the outer one. */
export function ringOfEdge(area: Area, edge: number): number {
  let ring = 0;
  while (ring + 2 < area.ringStart.length && edge >= area.ringStart[ring + 1]!) ring += 1;
  return ring;
}

/** True when two boxes come nearer to each other than `reach` (mm; negative: overlap by more than that). */
export function areBoxesNear(one: Box, other: Box, reach: number): boolean {
  return (
    one.minX - other.maxX < reach &&
    other.minX - one.maxX < reach &&
    one.minY - other.maxY < reach &&
    other.minY - one.maxY < reach
  );
}

function boxOfEdges(ax: Float64Array, ay: Float64Array, count: number): Box {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (let i = 0; i < count; i++) {
    minX = Math.min(minX, ax[i]!);
    maxX = Math.max(maxX, ax[i]!);
    minY = Math.min(minY, ay[i]!);
    maxY = Math.max(maxY, ay[i]!);
  }
  return { minX, minY, maxX, maxY };
}
