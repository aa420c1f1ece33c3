import type { Point } from '@hidebound/geometry';
import { EDGE_STATE } from './trace-edge.js';
import type { TracedEdge } from './trace-edge.js';

/** A point that is said to lie on the edge but is further from it than this was not meant for it, mm. */
const FARTHEST_MM = 200;
/** How far along the edge a pull reaches: so much at least, and so many times as far as the edge is pulled. */
const REACH_MM = 8;
const REACH_TIMES = 1.5;
/** How exactly somebody points at an edge, mm. */
const POINTED_OFF_MM = 1;

interface Pull {
  readonly index: number;
  readonly by: Point;
  readonly reach: number;
}

/**
 * The edges drawn through the points that a person says lie on them (px of the picture). Each point pulls the nearest
 * edge; the pull fades along it, between two points from one to the other. Points too far from any edge are counted as
 * strays and pull nothing.
 */
export function pulledToPoints(
  edges: readonly TracedEdge[],
  edgePoints: readonly Point[],
  pxPerMm: number,
): { readonly edges: TracedEdge[]; readonly strays: number } {
  const pulls = edges.map((): Pull[] => []);
  let strays = 0;
  for (const place of edgePoints) {
    const nearest = nearestOf(edges, place);
    if (nearest === undefined || nearest.distance > FARTHEST_MM * pxPerMm) {
      strays++;
      continue;
    }
    const { edge, index, distance } = nearest;
    const at = edges[edge]!.points[index]!;
    const reach = Math.max(REACH_MM * pxPerMm, REACH_TIMES * distance);
    pulls[edge]!.push({ index, by: { x: place.x - at.x, y: place.y - at.y }, reach });
  }
  return {
    edges: edges.map((edge, i) => (pulls[i]!.length === 0 ? edge : pulled(edge, pulls[i]!, pxPerMm))),
    strays,
  };
}

function nearestOf(
  edges: readonly TracedEdge[],
  place: Point,
): { readonly edge: number; readonly index: number; readonly distance: number } | undefined {
  let best: { edge: number; index: number; distance: number } | undefined;
  edges.forEach(({ points }, edge) =>
    points.forEach((p, index) => {
      const distance = Math.hypot(p.x - place.x, p.y - place.y);
      if (best === undefined || distance < best.distance) best = { edge, index, distance };
    }),
  );
  return best;
}

function pulled(edge: TracedEdge, pulls: readonly Pull[], pxPerMm: number): TracedEdge {
  const { points } = edge;
  const count = points.length;
  const step = ringLength(points) / count;
  // Of two points that ask for the same place of the edge the last one holds.
  const sorted = [...new Map(pulls.map((pull) => [pull.index, pull])).values()].sort(
    (a, b) => a.index - b.index,
  );
  const offPx = edge.offPx.slice();
  const state = edge.state.slice();
  const moved = points.map((p) => ({ ...p }));
  sorted.forEach((pull, k) => {
    const before = sorted[(k + sorted.length - 1) % sorted.length]!;
    const after = sorted[(k + 1) % sorted.length]!;
    // Nothing of a pull is left where the next one holds.
    const gap = (from: number, to: number): number =>
      ((((to - from) % count) + count) % count || count) * step;
    const back = Math.min(pull.reach, gap(before.index, pull.index));
    const forth = Math.min(pull.reach, gap(pull.index, after.index));
    for (let d = -Math.floor(back / step); d * step <= forth && d < count; d++) {
      const share = 1 - Math.abs(d * step) / (d < 0 ? back : forth);
      if (share <= 0) continue;
      const i = (((pull.index + d) % count) + count) % count;
      moved[i] = { x: moved[i]!.x + share * pull.by.x, y: moved[i]!.y + share * pull.by.y };
      if (share < 0.5) continue;
      offPx[i] = POINTED_OFF_MM * pxPerMm;
      state[i] = EDGE_STATE.plain;
    }
  });
  return { points: moved, rail: edge.rail, offPx, state };
}

function ringLength(points: readonly Point[]): number {
  return points.reduce((sum, p, i) => {
    const q = points[(i + 1) % points.length]!;
    return sum + Math.hypot(q.x - p.x, q.y - p.y);
  }, 0);
}
