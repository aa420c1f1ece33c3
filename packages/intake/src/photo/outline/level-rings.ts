import type { Point, Ring } from '@hidebound/geometry';
import type { GridSize } from './grid.js';

/**
 * The rings along which numbers on a grid go through 0 (marching squares), what is above 0 on the inside: outer rings
 * have positive area, openings negative. In pixels; beyond the grid all is below 0. Where two corners above 0 face each
 * other across a cell, its middle decides whether they hang together.
 */
export function levelRings(grid: GridSize, values: Float32Array): Ring[] {
  const links = cellLinks(grid, values);
  const rings: Ring[] = [];
  const place = edgePlace(grid, values);
  for (const start of links.keys()) {
    if (!links.has(start)) continue;
    const ring: Point[] = [];
    for (let edge = start; ;) {
      ring.push(place(edge));
      const next = links.get(edge);
      links.delete(edge);
      if (next === undefined || next === start) break;
      edge = next;
    }
    if (ring.length >= 3) rings.push(ring);
  }
  return rings;
}

/** For each crossed edge of the grid the next one along the ring. Edges: 2 × corner + 0 to the right, + 1 downwards. */
function cellLinks({ width, height }: GridSize, values: Float32Array): Map<number, number> {
  const links = new Map<number, number>();
  // One corner more on each side, so that rings close at the border; corner (x, y) there is pixel (x - 1, y - 1).
  const columns = width + 2;
  const above = (x: number, y: number): boolean =>
    x > 0 && y > 0 && x <= width && y <= height && values[(y - 1) * width + x - 1]! > 0;
  for (let y = 0; y <= height; y++) {
    let left = (above(0, y) ? 1 : 0) + (above(0, y + 1) ? 8 : 0);
    for (let x = 0; x <= width; x++) {
      const right = (above(x + 1, y) ? 2 : 0) + (above(x + 1, y + 1) ? 4 : 0);
      const kind = left + right;
      left = (right & 2 ? 1 : 0) + (right & 4 ? 8 : 0);
      if (kind === 0 || kind === 15) continue;
      const corner = y * columns + x;
      const sides = [2 * corner, 2 * (corner + 1) + 1, 2 * (corner + columns), 2 * corner + 1] as const;
      const middle = kind === 5 || kind === 10 ? middleIsAbove(width, height, values, x, y) : false;
      for (const [from, to] of CELLS[kind === 5 && middle ? 16 : kind === 10 && middle ? 17 : kind]!)
        links.set(sides[from]!, sides[to]!);
    }
  }
  return links;
}

/**
 * For each set of corners above 0 (1 top left, 2 top right, 4 bottom right, 8 bottom left) the lines from side to side
 * (0 top, 1 right, 2 bottom, 3 left), the inside on the right hand; last two: 5 and 10 where the middle joins both corners.
 */
const CELLS: readonly (readonly (readonly [number, number])[])[] = [
  '',
  '03',
  '10',
  '13',
  '21',
  '03 21',
  '20',
  '23',
  '32',
  '02',
  '10 32',
  '12',
  '31',
  '01',
  '30',
  '',
  '01 23',
  '30 12',
].map((lines) => (lines === '' ? [] : lines.split(' ').map((line) => [Number(line[0]), Number(line[1])])));

function middleIsAbove(width: number, height: number, values: Float32Array, x: number, y: number): boolean {
  let sum = 0;
  for (const [dx, dy] of [
    [0, 0],
    [1, 0],
    [0, 1],
    [1, 1],
  ] as const) {
    const column = x + dx - 1;
    const row = y + dy - 1;
    const isIn = column >= 0 && row >= 0 && column < width && row < height;
    sum += isIn ? values[row * width + column]! : -1;
  }
  return sum > 0;
}

function edgePlace({ width, height }: GridSize, values: Float32Array): (edge: number) => Point {
  const columns = width + 2;
  const valueAt = (x: number, y: number): number =>
    x < 0 || y < 0 || x >= width || y >= height ? NaN : values[y * width + x]!;
  return (edge) => {
    const corner = edge >> 1;
    const x = (corner % columns) - 1;
    const y = Math.floor(corner / columns) - 1;
    const down = edge & 1;
    const a = valueAt(x, y);
    const b = down ? valueAt(x, y + 1) : valueAt(x + 1, y);
    // Towards the border the ring ends half a pixel beyond the last middle, where the picture ends.
    const share = Number.isNaN(a) || Number.isNaN(b) ? 0.5 : a / (a - b);
    return down ? { x, y: y + share } : { x: x + share, y };
  };
}
