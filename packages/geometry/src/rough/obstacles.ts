import { boxesTouch, growBox, ringBox } from '../shape/ring.js';
import { pointInRing } from '../shape/point-in-ring.js';
import { segmentDistance } from '../shape/distance.js';
import { createSpatialIndex } from '../shape/spatial-index.js';
import type { Point, Ring } from '../types/shape.js';
import { CLEAR_MM } from './constants.js';

interface Edge {
  readonly from: Point;
  readonly to: Point;
  /** Who must be kept clear of: a piece of the sheet by its number, or `NO_PIECE`. */
  readonly owner: number;
}

/** Of outlines that no block calls its own: the sheet's, and other blocks'. */
export const NO_PIECE = -1;

/** Outlines that a block must keep clear of. */
export interface Obstacles {
  /** True if the area within the ring stays clear of every outline but those of the given owners. */
  isClear(ring: Ring, own: ReadonlySet<number>): boolean;
}

export interface OwnedRing {
  readonly ring: Ring;
  readonly owner: number;
}

export function createObstacles(rings: readonly OwnedRing[]): Obstacles {
  const edges = rings.flatMap(({ ring, owner }) => edgesOf(ring, owner));
  const index = createSpatialIndex(edges.map(({ from, to }) => ringBox([from, to])));
  return {
    isClear(ring, own) {
      let isClear = true;
      index.query(growBox(ringBox(ring), CLEAR_MM), (i) => {
        const edge = edges[i]!;
        if (own.has(edge.owner) || !meets(edge, ring)) return false;
        isClear = false;
        return true;
      });
      return isClear;
    },
  };
}

function edgesOf(ring: Ring, owner: number): Edge[] {
  return ring.map((from, i) => ({ from, to: ring[(i + 1) % ring.length]!, owner }));
}

function meets({ from, to }: Edge, ring: Ring): boolean {
  if (pointInRing(from, ring) !== 'outside') return true;
  const reach = growBox(ringBox([from, to]), CLEAR_MM);
  return ring.some((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    return boxesTouch(reach, ringBox([a, b])) && segmentDistance(a, b, from, to) < CLEAR_MM;
  });
}
