import type { Lattice } from '../nest/raster.js';

/**
 * Distance from each point of a lattice to the edge of an area, positive inside: exact distances between lattice
 * points, by two passes of lower envelopes of parabolas (Felzenszwalb & Huttenlocher 2012), less half a pitch.
 * `runs` are the lattice points inside: row, first column, last column.
 */
export function distanceGrid(runs: readonly number[] | Int32Array, lattice: Lattice): Float64Array {
  const { columns, rows, pitch } = lattice;
  const inside = new Uint8Array(columns * rows);
  for (let i = 0; i < runs.length; i += 3) {
    for (let c = runs[i + 1]!; c <= runs[i + 2]!; c++) inside[runs[i]! * columns + c] = 1;
  }
  const toOutside = squaredDistances(inside, 0, columns, rows);
  const toInside = squaredDistances(inside, 1, columns, rows);
  const depth = new Float64Array(columns * rows);
  for (let i = 0; i < depth.length; i++) {
    const cells = inside[i] === 1 ? Math.sqrt(toOutside[i]!) - 0.5 : 0.5 - Math.sqrt(toInside[i]!);
    depth[i] = cells * pitch;
  }
  return depth;
}

/** Squared distances, in pitches, to the nearest point whose mark is `target`. */
function squaredDistances(marks: Uint8Array, target: number, columns: number, rows: number): Float64Array {
  const far = columns * columns + rows * rows;
  const grid = Float64Array.from(marks, (mark) => (mark === target ? 0 : far));
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
