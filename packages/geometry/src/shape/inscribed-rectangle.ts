import { RECTANGLE_CELLS, RECTANGLE_FINEST_MM, TOUCH_MM } from '../tolerance.js';
import type { Box, Point, Region, Ring } from '../types/shape.js';
import { applyAffine, rotationDeg, transformRegion } from './affine.js';
import { boxOfLargestHistogram } from './cell-rectangle.js';
import type { CellGrid } from './cell-rectangle.js';
import { regionBox } from './ring.js';

/** A rectangle that lies within a region. */
export interface InnerRectangle {
  /** In mm, along the direction asked for. */
  readonly alongMm: number;
  /** In mm, across it. */
  readonly acrossMm: number;
  /** Direction of the side `alongMm`, degrees clockwise from the x axis. */
  readonly angleDeg: number;
  /** Oriented as an outer ring. */
  readonly corners: Ring;
}

/**
 * A rectangle of large area inside a region and clear of its openings, its sides along and across `angleDeg`
 * (default 0). It truly lies inside (touching is inside). It is the largest on a grid of up to 512 lines each way, which
 * go through all corners of a region of few, then moved and grown while that gains area: the largest for shapes of
 * upright and level edges, near it for others. None if the region holds no cell of the grid.
 */
export function largestRectangle(
  region: Region,
  options: { readonly angleDeg?: number } = {},
): InnerRectangle | undefined {
  const angleDeg = options.angleDeg ?? 0;
  const upright = transformRegion(rotationDeg(-angleDeg), region);
  const edges = edgesOf(upright);
  const start = boxOfLargestHistogram(markCells(upright, edges));
  if (start === undefined) return undefined;
  const box = climb(grow(start, edges, SIDES), edges);
  const turn = rotationDeg(angleDeg);
  const corners = [
    { x: box.minX, y: box.minY },
    { x: box.maxX, y: box.minY },
    { x: box.maxX, y: box.maxY },
    { x: box.minX, y: box.maxY },
  ].map((p) => applyAffine(turn, p));
  return { alongMm: box.maxX - box.minX, acrossMm: box.maxY - box.minY, angleDeg, corners };
}

type Edge = readonly [Point, Point];

function edgesOf(region: Region): Edge[] {
  return [region.outer, ...region.openings].flatMap((ring) =>
    ring.map((p, i): Edge => [p, ring[(i + 1) % ring.length]!]),
  );
}

/** Cells whose inside no edge enters and whose middle lies in the region lie in it whole. */
function markCells(region: Region, edges: readonly Edge[]): CellGrid {
  const box = regionBox(region);
  const points = [region.outer, ...region.openings].flat();
  const xs = gridLines(
    box.minX,
    box.maxX,
    points.map((p) => p.x),
  );
  const ys = gridLines(
    box.minY,
    box.maxY,
    points.map((p) => p.y),
  );
  const columns = xs.length - 1;
  const rows = ys.length - 1;
  const free = new Uint8Array(Math.max(columns * rows, 0));
  for (let j = 0; j < rows; j++)
    fillRow(free.subarray(j * columns, (j + 1) * columns), (ys[j]! + ys[j + 1]!) / 2, xs, edges);
  for (const edge of edges) blockCells(free, xs, ys, edge);
  return { xs, ys, free };
}

function gridLines(from: number, to: number, corners: readonly number[]): number[] {
  const even = Array.from(
    { length: RECTANGLE_CELLS + 1 },
    (_, i) => from + ((to - from) * i) / RECTANGLE_CELLS,
  );
  const own = corners.length <= RECTANGLE_CELLS ? corners : [];
  return [...new Set([...even, ...own])].sort((a, b) => a - b);
}

function fillRow(row: Uint8Array, y: number, xs: readonly number[], edges: readonly Edge[]): void {
  const crossings: number[] = [];
  for (const [a, b] of edges) {
    if (a.y > y !== b.y > y) crossings.push(a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x));
  }
  crossings.sort((s, t) => s - t);
  let passed = 0;
  for (let i = 0; i < row.length; i++) {
    const middle = (xs[i]! + xs[i + 1]!) / 2;
    while (passed < crossings.length && crossings[passed]! < middle) passed++;
    row[i] = passed % 2;
  }
}

/** Blocks every cell whose inside the edge enters; one that runs along a grid line enters none. */
function blockCells(free: Uint8Array, xs: readonly number[], ys: readonly number[], [a, b]: Edge): void {
  const columns = xs.length - 1;
  const [top, bottom] = a.y <= b.y ? [a, b] : [b, a];
  const slope = bottom.y === top.y ? 0 : (bottom.x - top.x) / (bottom.y - top.y);
  const at = (y: number) => (y <= top.y ? top.x : y >= bottom.y ? bottom.x : top.x + (y - top.y) * slope);
  for (let j = cellBelow(ys, top.y); j < ys.length - 1 && ys[j]! < bottom.y; j++) {
    if (ys[j + 1]! <= top.y) continue;
    const one = at(ys[j]!);
    const other = at(ys[j + 1]!);
    blockSpan(free.subarray(j * columns, (j + 1) * columns), xs, Math.min(one, other), Math.max(one, other));
  }
}

function blockSpan(row: Uint8Array, xs: readonly number[], from: number, to: number): void {
  for (let i = cellBelow(xs, from); i < row.length; i++) {
    // An upright edge on a grid line enters no cell.
    if (xs[i]! >= to) break;
    if (xs[i + 1]! > from) row[i] = 0;
  }
}

/** The last line at or before the place, 0 at least. */
function cellBelow(lines: readonly number[], place: number): number {
  let low = 0;
  let high = lines.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (lines[middle]! <= place) low = middle;
    else high = middle - 1;
  }
  return low;
}

const SIDES: readonly (keyof Box)[] = ['minX', 'maxX', 'minY', 'maxY'];
const UPRIGHT_FIRST: readonly (keyof Box)[] = ['minY', 'maxY', 'minX', 'maxX'];

/** Every side moved out, in this order, until an edge stops it. */
function grow(box: Box, edges: readonly Edge[], order: readonly (keyof Box)[]): Box {
  let grown = box;
  for (const side of order) grown = { ...grown, [side]: limitOf(grown, edges, side) };
  return grown;
}

function limitOf(box: Box, edges: readonly Edge[], side: keyof Box): number {
  const level = side === 'minX' || side === 'maxX';
  const outward = side === 'maxX' || side === 'maxY' ? 1 : -1;
  const [low, high] = level ? [box.minY, box.maxY] : [box.minX, box.maxX];
  const here = box[side];
  let limit = Infinity;
  for (const [a, b] of edges) {
    const [sa, ta, sb, tb] = level ? [a.y, a.x, b.y, b.x] : [a.x, a.y, b.x, b.y];
    if (Math.max(sa, sb) <= low || Math.min(sa, sb) >= high) continue;
    const cut = (s: number) => (sa === sb ? ta : ta + ((s - sa) / (sb - sa)) * (tb - ta));
    const from = sa < low || sa > high ? cut(sa < low ? low : high) : ta;
    const to = sb < low || sb > high ? cut(sb < low ? low : high) : tb;
    const near = Math.min(outward * from, outward * to);
    // An edge that touches the side may read as a last bit inside.
    if (near >= outward * here - TOUCH_MM && near < limit) limit = near;
  }
  return limit === Infinity ? here : outward * Math.max(limit, outward * here);
}

/** Gives way on one side by ever smaller steps, grows the others, and keeps what gains area. */
function climb(start: Box, edges: readonly Edge[]): Box {
  let best = start;
  const coarsest = Math.max(start.maxX - start.minX, start.maxY - start.minY) / 8;
  for (let step = coarsest; step >= RECTANGLE_FINEST_MM; step /= 2) {
    let better = betterNeighbour(best, edges, step);
    for (let tries = 0; better !== undefined && tries < 8; tries++) {
      best = better;
      better = betterNeighbour(best, edges, step);
    }
  }
  return best;
}

function betterNeighbour(box: Box, edges: readonly Edge[], step: number): Box | undefined {
  let best: Box | undefined;
  let bestArea = areaOf(box);
  for (const side of SIDES) {
    const inward = side === 'minX' || side === 'minY' ? step : -step;
    const smaller = { ...box, [side]: box[side] + inward };
    if (smaller.minX >= smaller.maxX || smaller.minY >= smaller.maxY) continue;
    const others = (order: readonly (keyof Box)[]) => [...order.filter((other) => other !== side), side];
    for (const order of [others(SIDES), others(UPRIGHT_FIRST)]) {
      const grown = grow(smaller, edges, order);
      if (areaOf(grown) > bestArea) {
        best = grown;
        bestArea = areaOf(grown);
      }
    }
  }
  return best;
}

function areaOf(box: Box): number {
  return (box.maxX - box.minX) * (box.maxY - box.minY);
}
