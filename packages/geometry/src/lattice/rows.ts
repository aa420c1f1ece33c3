import type { Point } from '../types/shape.js';
import type { MovedParts } from './contacts.js';
import { OVERLAP_MM } from './constants.js';
import { stretchWithin } from './forbidden.js';

/** Rows of pieces along one lattice vector: what the next row may not run into, ready for many questions. */
export interface RowFrame {
  readonly layers: readonly MovedParts[];
  readonly gap: number;
  readonly lengthMm: number;
  /** Along the row, and across it to the side of the next row: unit vectors. */
  readonly along: Point;
  readonly across: Point;
  /** Of each part, layer after layer: its extent along the row. */
  readonly from: Float64Array;
  readonly to: Float64Array;
  readonly scratch: {
    readonly starts: number[];
    readonly ends: number[];
    readonly out: Float64Array;
    readonly line: { ox: number; oy: number; wx: number; wy: number };
  };
}

export function rowFrame(layers: readonly MovedParts[], u: Point, gap: number): RowFrame {
  const lengthMm = Math.sqrt(u.x * u.x + u.y * u.y);
  const along = { x: u.x / lengthMm, y: u.y / lengthMm };
  const count = layers.reduce((sum, { parts }) => sum + parts.count, 0);
  const from = new Float64Array(count).fill(Infinity);
  const to = new Float64Array(count).fill(-Infinity);
  let n = 0;
  for (const { parts, dx, dy } of layers) {
    for (let k = 0; k < parts.count; k++, n++) {
      for (let e = parts.firstEdge[k]!; e < parts.firstEdge[k + 1]!; e++) {
        const s = (parts.x[e]! + dx) * along.x + (parts.y[e]! + dy) * along.y;
        from[n] = Math.min(from[n]!, s - gap);
        to[n] = Math.max(to[n]!, s + gap);
      }
    }
  }
  const scratch = { starts: [], ends: [], out: new Float64Array(2), line: { ox: 0, oy: 0, wx: 0, wy: 0 } };
  return { layers, gap, lengthMm, along, across: { x: -along.y, y: along.x }, from, to, scratch };
}

/**
 * The distances at which the next row, shifted by `shiftMm` along, is free of this one: the lowest not below `least`,
 * then further ones up to `limit`, `most` of them in all. Each touches, so it is exact.
 */
export function rowDistances(
  frame: RowFrame,
  shiftMm: number,
  range: { readonly least: number; readonly limit: number; readonly most: number },
): number[] {
  const { least, limit, most } = range;
  const count = collectStretches(frame, shiftMm, least, limit);
  const { starts, ends } = frame.scratch;
  const distances: number[] = [];
  let h = least;
  for (let k = 0; k < count; k++) {
    if (ends[k]! <= h) continue;
    if (starts[k]! >= h - OVERLAP_MM && h > least) distances.push(h);
    if (distances.length >= most) return distances;
    h = ends[k]!;
    if (h > limit) return distances;
  }
  distances.push(h);
  return distances;
}

/**
 * The next row seen from one of its pieces: all pieces of this row lie at whole multiples of the row's vector. Fills
 * the frame's scratch, sorted by their starts, and returns how many; this runs so often that new arrays would cost most.
 */
function collectStretches(frame: RowFrame, shiftMm: number, least: number, limit: number): number {
  const { layers, gap, lengthMm, along, across, scratch } = frame;
  const { out, line } = scratch;
  line.wx = across.x;
  line.wy = across.y;
  let count = 0;
  let n = 0;
  for (const { parts, dx, dy } of layers) {
    for (let k = 0; k < parts.count; k++, n++) {
      for (let m = Math.ceil((frame.from[n]! - shiftMm) / lengthMm); ; m++) {
        const s = shiftMm + m * lengthMm;
        if (s > frame.to[n]!) break;
        line.ox = s * along.x - dx;
        line.oy = s * along.y - dy;
        if (!stretchWithin(parts, k, line, gap, out)) continue;
        if (out[1]! > least && out[0]! < limit) count = insert(scratch, count, out[0]!, out[1]!);
      }
    }
  }
  return count;
}

function insert({ starts, ends }: RowFrame['scratch'], count: number, start: number, end: number): number {
  let at = count;
  while (at > 0 && (starts[at - 1]! > start || (starts[at - 1] === start && ends[at - 1]! > end))) {
    starts[at] = starts[at - 1]!;
    ends[at] = ends[at - 1]!;
    at--;
  }
  starts[at] = start;
  ends[at] = end;
  return count + 1;
}
