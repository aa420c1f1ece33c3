import type { Lattice } from '../nest/raster.js';
import type { Soup } from '../nest/soup.js';

/** Lattice points this near an edge, in pitches, stand for it: every point of an edge has one within 0.71. */
const NEAR_PITCHES = 0.75;

/**
 * Distance from each point of a lattice to the nearest edge, positive inside: exact within three quarters of a pitch of
 * an edge; farther away it is measured to the nearest lattice point that is so near one, and is right to three
 * quarters of a pitch. Edges count however small their ring is: a flaw between the lattice points is seen too. By two
 * passes of lower envelopes of parabolas (Felzenszwalb & Huttenlocher 2012). `runs` are the lattice points inside:
 * row, first column, last column.
 */
export function distanceGrid(
  runs: readonly number[] | Int32Array,
  soup: Pick<Soup, 'count' | 'ax' | 'ay' | 'bx' | 'by'>,
  lattice: Lattice,
): Float64Array {
  const { columns, rows, pitch } = lattice;
  const near = nearEdges(soup, lattice);
  const far = squaredDistances(near, columns, rows);
  const depth = new Float64Array(columns * rows);
  for (let i = 0; i < depth.length; i++) {
    depth[i] = -(near[i]! < Infinity ? near[i]! : Math.sqrt(far[i]!)) * pitch;
  }
  for (let i = 0; i < runs.length; i += 3) {
    const row = runs[i]! * columns;
    for (let c = runs[i + 1]!; c <= runs[i + 2]!; c++) depth[row + c] = -depth[row + c]!;
  }
  return depth;
}

/** Distance to the nearest edge, in pitches, at the points near one; Infinity at the others. */
function nearEdges(soup: Pick<Soup, 'count' | 'ax' | 'ay' | 'bx' | 'by'>, lattice: Lattice): Float64Array {
  const { minX, minY, pitch, columns, rows } = lattice;
  const near = new Float64Array(columns * rows).fill(Infinity);
  for (let e = 0; e < soup.count; e++) {
    const ax = (soup.ax[e]! - minX) / pitch;
    const ay = (soup.ay[e]! - minY) / pitch;
    const bx = (soup.bx[e]! - minX) / pitch;
    const by = (soup.by[e]! - minY) / pitch;
    const r0 = Math.max(0, Math.ceil(Math.min(ay, by) - NEAR_PITCHES));
    const r1 = Math.min(rows - 1, Math.floor(Math.max(ay, by) + NEAR_PITCHES));
    for (let row = r0; row <= r1; row++) {
      const [low, high] = spanNearRow(ax, ay, bx, by, row);
      const c0 = Math.max(0, Math.ceil(low - NEAR_PITCHES));
      const c1 = Math.min(columns - 1, Math.floor(high + NEAR_PITCHES));
      for (let c = c0; c <= c1; c++) {
        const distance = toSegment(c, row, ax, ay, bx, by);
        const at = row * columns + c;
        if (distance <= NEAR_PITCHES && distance < near[at]!) near[at] = distance;
      }
    }
  }
  return near;
}

/** The part of the segment's extent in x that can be near a row. */
function spanNearRow(ax: number, ay: number, bx: number, by: number, row: number): [number, number] {
  if (Math.abs(by - ay) < 1) return ax < bx ? [ax, bx] : [bx, ax];
  const at = (y: number): number => ax + (bx - ax) * Math.min(1, Math.max(0, (y - ay) / (by - ay)));
  const one = at(row - NEAR_PITCHES);
  const other = at(row + NEAR_PITCHES);
  return one < other ? [one, other] : [other, one];
}

function toSegment(x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
  const ex = bx - ax;
  const ey = by - ay;
  const length2 = ex * ex + ey * ey;
  const along = length2 > 0 ? ((x - ax) * ex + (y - ay) * ey) / length2 : 0;
  const t = along < 0 ? 0 : along > 1 ? 1 : along;
  const dx = x - ax - t * ex;
  const dy = y - ay - t * ey;
  return Math.sqrt(dx * dx + dy * dy);
}

/** Squared distances, in pitches, to the nearest point near an edge. */
function squaredDistances(near: Float64Array, columns: number, rows: number): Float64Array {
  const far = columns * columns + rows * rows;
  const grid = near.map((distance) => (distance < Infinity ? 0 : far));
  const line = new Float64Array(Math.max(columns, rows));
  const result = new Float64Array(line.length);
  const sites = new Int32Array(line.length);
  const bounds = new Float64Array(line.length + 1);
  const pass = (start: number, stride: number, count: number): void => {
    for (let i = 0; i < count; i++) line[i] = grid[start + i * stride]!;
    lowerEnvelope(line, count, result, sites, bounds);
    for (let i = 0; i < count; i++) grid[start + i * stride] = result[i]!;
  };
  for (let c = 0; c < columns; c++) pass(c, columns, rows);
  for (let r = 0; r < rows; r++) pass(r * columns, 1, columns);
  return grid;
}

/** result[q] = least over p of (q - p)² + line[p]. */
function lowerEnvelope(
  line: Float64Array,
  count: number,
  result: Float64Array,
  sites: Int32Array,
  bounds: Float64Array,
): void {
  let k = 0;
  sites[0] = 0;
  bounds[0] = -Infinity;
  bounds[1] = Infinity;
  for (let q = 1; q < count; q++) {
    let s = meet(line, q, sites[k]!);
    while (s <= bounds[k]!) {
      k--;
      s = meet(line, q, sites[k]!);
    }
    k++;
    sites[k] = q;
    bounds[k] = s;
    bounds[k + 1] = Infinity;
  }
  k = 0;
  for (let q = 0; q < count; q++) {
    while (bounds[k + 1]! < q) k++;
    const off = q - sites[k]!;
    result[q] = off * off + line[sites[k]!]!;
  }
}

function meet(line: Float64Array, q: number, p: number): number {
  return (line[q]! + q * q - line[p]! - p * p) / (2 * q - 2 * p);
}
