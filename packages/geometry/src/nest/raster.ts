import type { Soup } from './soup.js';

/**
 * A lattice of sample points over one sheet, in the sheet's search frame. Shapes are told by the points that they
 * cover, so a test by points is quick but may miss an overlap of less than one pitch: places found on it are
 * proposals, which are made exact afterwards.
 */
export interface Lattice {
  readonly minX: number;
  readonly minY: number;
  readonly pitch: number;
  readonly columns: number;
  readonly rows: number;
}

/** What lies on the lattice: how often each point is covered, and where to go on from it. */
export interface Layer {
  readonly lattice: Lattice;
  readonly count: Uint16Array;
  /**
   * For a covered point the next free column to the right; for a free point the nearest covered column to the
   * left, or -1. One look says whether a run of points is free, and how far to jump if it is not.
   */
  readonly jump: Int32Array;
}

/** Runs of lattice points: [row, first column, last column, …]. */
export type Runs = Int32Array;

export function createLayer(lattice: Lattice, covered: 0 | 1): Layer {
  const size = lattice.columns * lattice.rows;
  const layer: Layer = {
    lattice,
    count: new Uint16Array(size).fill(covered),
    jump: new Int32Array(size),
  };
  return layer;
}

export function copyLayer(layer: Layer): Layer {
  return { lattice: layer.lattice, count: layer.count.slice(), jump: layer.jump.slice() };
}

/** Adds `by` to the count of every point of the runs, then brings the jumps of the rows touched up to date. */
export function addRuns(layer: Layer, runs: Runs, by: 1 | -1): void {
  const { columns } = layer.lattice;
  let low = layer.lattice.rows;
  let high = -1;
  for (let i = 0; i < runs.length; i += 3) {
    const row = runs[i]!;
    const base = row * columns;
    const end = base + runs[i + 2]!;
    for (let k = base + runs[i + 1]!; k <= end; k++) layer.count[k]! += by;
    if (row < low) low = row;
    if (row > high) high = row;
  }
  refreshJumps(layer, low, high);
}

/** Makes the points of the runs free, whatever covered them; the jumps are left to the caller. */
export function clearRuns(layer: Layer, runs: Runs): void {
  const { columns } = layer.lattice;
  for (let i = 0; i < runs.length; i += 3) {
    const base = runs[i]! * columns;
    layer.count.fill(0, base + runs[i + 1]!, base + runs[i + 2]! + 1);
  }
}

export function refreshJumps(layer: Layer, lowRow: number, highRow: number): void {
  const { columns } = layer.lattice;
  for (let row = lowRow; row <= highRow; row++) {
    const base = row * columns;
    let covered = -1;
    for (let c = 0; c < columns; c++) {
      if (layer.count[base + c] !== 0) covered = c;
      else layer.jump[base + c] = covered;
    }
    let free = columns;
    for (let c = columns - 1; c >= 0; c--) {
      if (layer.count[base + c] === 0) free = c;
      else layer.jump[base + c] = free;
    }
  }
}

/** The lattice points inside the rings (even-odd), clipped to the lattice. */
export function interiorRuns(soup: Soup, lattice: Lattice): number[] {
  const { minY, pitch, rows } = lattice;
  const first = Math.max(0, Math.ceil((soup.minY - minY) / pitch));
  const last = Math.min(rows - 1, Math.floor((soup.maxY - minY) / pitch));
  if (last < first) return [];
  const crossings = rowCrossings(soup, first, last, lattice);
  const runs: number[] = [];
  for (let row = first; row <= last; row++) {
    const xs = crossings[row - first]!;
    xs.sort((a, b) => a - b);
    for (let i = 0; i + 1 < xs.length; i += 2) pushRun(runs, lattice, row, xs[i]!, xs[i + 1]!);
  }
  return runs;
}

function rowCrossings(soup: Soup, first: number, last: number, lattice: Lattice): number[][] {
  const crossings: number[][] = [];
  for (let row = first; row <= last; row++) crossings.push([]);
  for (let i = 0; i < soup.count; i++) {
    const ay = soup.ay[i]!;
    const by = soup.by[i]!;
    const low = ay < by ? ay : by;
    const high = ay < by ? by : ay;
    const from = Math.max(first, Math.ceil((low - lattice.minY) / lattice.pitch));
    const to = Math.min(last, Math.floor((high - lattice.minY) / lattice.pitch));
    for (let row = from; row <= to; row++) {
      const y = lattice.minY + row * lattice.pitch;
      if (ay > y === by > y) continue;
      crossings[row - first]!.push(soup.ax[i]! + ((y - ay) / (by - ay)) * (soup.bx[i]! - soup.ax[i]!));
    }
  }
  return crossings;
}

/** The lattice points within `radius` of the edges; runs may overlap. */
export function edgeRuns(soup: Soup, radius: number, lattice: Lattice): number[] {
  const runs: number[] = [];
  const { minY, pitch, rows } = lattice;
  for (let i = 0; i < soup.count; i++) {
    const ay = soup.ay[i]!;
    const by = soup.by[i]!;
    const from = Math.max(0, Math.ceil(((ay < by ? ay : by) - radius - minY) / pitch));
    const to = Math.min(rows - 1, Math.floor(((ay < by ? by : ay) + radius - minY) / pitch));
    for (let row = from; row <= to; row++)
      capsuleRun(soup, i, radius, minY + row * pitch, row, lattice, runs);
  }
  return runs;
}

/** The part of one row within the radius of one edge: the span of two discs and a band. */
function capsuleRun(
  soup: Soup,
  i: number,
  radius: number,
  y: number,
  row: number,
  lattice: Lattice,
  runs: number[],
): void {
  const ax = soup.ax[i]!;
  const ay = soup.ay[i]! - y;
  const bx = soup.bx[i]!;
  const by = soup.by[i]! - y;
  let lo = Infinity;
  let hi = -Infinity;
  const wa = radius * radius - ay * ay;
  if (wa >= 0) {
    const w = Math.sqrt(wa);
    lo = ax - w;
    hi = ax + w;
  }
  const wb = radius * radius - by * by;
  if (wb >= 0) {
    const w = Math.sqrt(wb);
    if (bx - w < lo) lo = bx - w;
    if (bx + w > hi) hi = bx + w;
  }
  const dx = bx - ax;
  const dy = by - ay;
  if (dy !== 0) {
    const scale = radius / Math.sqrt(dx * dx + dy * dy);
    for (let side = -1; side <= 1; side += 2) {
      const t = -(ay + side * dx * scale) / dy;
      if (t < 0 || t > 1) continue;
      const x = ax - side * dy * scale + t * dx;
      if (x < lo) lo = x;
      if (x > hi) hi = x;
    }
  }
  if (lo <= hi) pushRun(runs, lattice, row, lo, hi);
}

function pushRun(runs: number[], lattice: Lattice, row: number, lo: number, hi: number): void {
  const first = Math.max(0, Math.ceil((lo - lattice.minX) / lattice.pitch));
  const last = Math.min(lattice.columns - 1, Math.floor((hi - lattice.minX) / lattice.pitch));
  if (first <= last) runs.push(row, first, last);
}

/** Each point once: runs sorted by row and column, those that touch joined. */
export function mergedRuns(runs: readonly number[]): number[] {
  const order: number[] = [];
  for (let i = 0; i < runs.length; i += 3) order.push(i);
  order.sort((a, b) => runs[a]! - runs[b]! || runs[a + 1]! - runs[b + 1]!);
  const merged: number[] = [];
  for (const i of order) {
    const n = merged.length;
    if (n > 0 && merged[n - 3] === runs[i] && runs[i + 1]! <= merged[n - 1]! + 1) {
      if (runs[i + 2]! > merged[n - 1]!) merged[n - 1] = runs[i + 2]!;
    } else merged.push(runs[i]!, runs[i + 1]!, runs[i + 2]!);
  }
  return merged;
}

/** The points of the runs that none of the others covers. */
export function runsWithout(runs: readonly number[], others: readonly number[]): number[] {
  const left: number[] = [];
  const cuts = mergedRuns(others);
  let from = 0;
  for (let i = 0; i < runs.length; i += 3) {
    const row = runs[i]!;
    let first = runs[i + 1]!;
    const last = runs[i + 2]!;
    while (from < cuts.length && cuts[from]! < row) from += 3;
    for (let k = from; k < cuts.length && cuts[k] === row && cuts[k + 1]! <= last; k += 3) {
      if (cuts[k + 2]! < first) continue;
      if (cuts[k + 1]! > first) left.push(row, first, cuts[k + 1]! - 1);
      first = cuts[k + 2]! + 1;
    }
    if (first <= last) left.push(row, first, last);
  }
  return left;
}
