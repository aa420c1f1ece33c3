import { distanceBetween, ringPerimeter } from '@hidebound/geometry';
import type { Point, Region, Ring } from '@hidebound/geometry';

/** Points at even distances along a ring. */
export function evenPoints(ring: Ring, count: number): Point[] {
  const step = ringPerimeter(ring) / count;
  const points: Point[] = [];
  let next = 0;
  let done = 0;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    const length = distanceBetween(a, b);
    while (next < done + length && points.length < count) {
      const share = (next - done) / length;
      points.push({ x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) });
      next += step;
    }
    done += length;
  });
  return points;
}

/** The edges of a region, sorted into square cells so that the nearest place is found quickly. */
export interface EdgeGrid {
  nearest(point: Point): Point;
}

/** Width of a cell. Smaller ones make the search in empty places longer, larger ones that beside the edge. */
const CELL_MM = 40;

/** Points that stand for an edge lie so near each other that no line between them is needed. */
const POINT_EVERY_MM = 2;

/** All edges of the region, openings too, as points 2 mm apart: the nearest one is off by 1 mm along the edge at most. */
export function edgeGrid(region: Region): EdgeGrid {
  const cells = new Map<number, Point[]>();
  for (const ring of [region.outer, ...region.openings]) {
    const count = Math.max(8, Math.round(ringPerimeter(ring) / POINT_EVERY_MM));
    for (const point of evenPoints(ring, count)) {
      const key = cellKey(Math.floor(point.x / CELL_MM), Math.floor(point.y / CELL_MM));
      const held = cells.get(key);
      if (held === undefined) cells.set(key, [point]);
      else held.push(point);
    }
  }
  return { nearest: (point) => nearestIn(cells, point) };
}

/** One number for a cell; floors of up to some 160 m either way. */
function cellKey(i: number, j: number): number {
  return (i + 4096) * 8192 + j + 4096;
}

/** Goes outwards in square rings of cells; stops when no farther ring can hold a nearer point. */
function nearestIn(cells: ReadonlyMap<number, readonly Point[]>, { x, y }: Point): Point {
  const ci = Math.floor(x / CELL_MM);
  const cj = Math.floor(y / CELL_MM);
  let best: Point = { x: Infinity, y: Infinity };
  let bestSq = Infinity;
  for (let reach = 0; reach < 400; reach++) {
    const beyond = (reach - 1) * CELL_MM;
    if (beyond > 0 && bestSq <= beyond * beyond) break;
    for (const [i, j] of squareRing(ci, cj, reach)) {
      for (const point of cells.get(cellKey(i, j)) ?? []) {
        const sq = (point.x - x) ** 2 + (point.y - y) ** 2;
        if (sq < bestSq) {
          bestSq = sq;
          best = point;
        }
      }
    }
  }
  return best;
}

function* squareRing(ci: number, cj: number, reach: number): Generator<readonly [number, number]> {
  if (reach === 0) {
    yield [ci, cj];
    return;
  }
  for (let k = -reach; k <= reach; k++) {
    yield [ci + k, cj - reach];
    yield [ci + k, cj + reach];
    if (Math.abs(k) === reach) continue;
    yield [ci - reach, cj + k];
    yield [ci + reach, cj + k];
  }
}
