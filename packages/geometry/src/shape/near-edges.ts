import type { Box, Ring } from '../types/shape.js';
import { createSpatialIndex } from './spatial-index.js';

/** Edges to a run at most: 16 to 64 measure alike. */
const RUN_EDGES = 32;
/** Up to so many runs, comparing each with each is faster than an index of them. */
const FEW_RUNS = 96;

/** Edges in a row along which neither x nor y turns back, so that none of them meets another but the next at its end. */
interface Run extends Box {
  readonly from: number;
  /** One past the last edge. */
  readonly to: number;
}

/**
 * Calls `visit` with the numbers i < j of every two edges of a ring whose boxes share a point, but for pairs of one
 * run; edge i goes from corner i to the next. The ring repeats no corner. Takes about n log n.
 */
export function visitNearEdges(ring: Ring, visit: (i: number, j: number) => void): void {
  const runs = monotoneRuns(ring);
  if (runs.length <= FEW_RUNS) {
    for (let r = 0; r < runs.length; r++) {
      for (let s = r + 1; s < runs.length; s++) comparePair(ring, runs[r]!, runs[s]!, visit);
    }
    return;
  }
  const index = createSpatialIndex(runs);
  runs.forEach((run, r) =>
    index.query(run, (s) => {
      if (s > r) comparePair(ring, run, runs[s]!, visit);
    }),
  );
}

function monotoneRuns(ring: Ring): Run[] {
  const runs: Run[] = [];
  let from = 0;
  let wayX = 0;
  let wayY = 0;
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i]!;
    const b = ring[i + 1 < ring.length ? i + 1 : 0]!;
    const dx = Math.sign(b.x - a.x);
    const dy = Math.sign(b.y - a.y);
    if (dx * wayX < 0 || dy * wayY < 0 || i - from === RUN_EDGES) {
      runs.push(runOf(ring, from, i));
      from = i;
      wayX = dx;
      wayY = dy;
    } else {
      if (dx !== 0) wayX = dx;
      if (dy !== 0) wayY = dy;
    }
  }
  if (ring.length > 0) runs.push(runOf(ring, from, ring.length));
  return runs;
}

/** The box of a run is that of its ends. */
function runOf(ring: Ring, from: number, to: number): Run {
  const a = ring[from]!;
  const b = ring[to < ring.length ? to : 0]!;
  return {
    from,
    to,
    minX: Math.min(a.x, b.x),
    minY: Math.min(a.y, b.y),
    maxX: Math.max(a.x, b.x),
    maxY: Math.max(a.y, b.y),
  };
}

function comparePair(ring: Ring, one: Run, other: Run, visit: (i: number, j: number) => void): void {
  if (one.minX > other.maxX || other.minX > one.maxX || one.minY > other.maxY || other.minY > one.maxY)
    return;
  for (let i = one.from; i < one.to; i++) {
    if (!edgeMeetsBox(ring, i, other)) continue;
    for (let j = other.from; j < other.to; j++) if (edgesMayMeet(ring, i, j)) visit(i, j);
  }
}

function edgeMeetsBox(ring: Ring, i: number, box: Box): boolean {
  const a = ring[i]!;
  const b = ring[i + 1 < ring.length ? i + 1 : 0]!;
  return (
    (a.x <= box.maxX || b.x <= box.maxX) &&
    (a.x >= box.minX || b.x >= box.minX) &&
    (a.y <= box.maxY || b.y <= box.maxY) &&
    (a.y >= box.minY || b.y >= box.minY)
  );
}

function edgesMayMeet(ring: Ring, i: number, j: number): boolean {
  const a = ring[i]!;
  const b = ring[i + 1 < ring.length ? i + 1 : 0]!;
  const c = ring[j]!;
  const d = ring[j + 1 < ring.length ? j + 1 : 0]!;
  return (
    Math.max(a.x, b.x) >= Math.min(c.x, d.x) &&
    Math.max(c.x, d.x) >= Math.min(a.x, b.x) &&
    Math.max(a.y, b.y) >= Math.min(c.y, d.y) &&
    Math.max(c.y, d.y) >= Math.min(a.y, b.y)
  );
}
