import type { MaskSize } from './leather-mask.js';

/** Three passes of a running mean are near enough to a bell curve. */
const BLUR_PASSES = 3;

/** Cells of the coarse grid within the reach of the blur: enough that nobody sees them, few enough to be quick. */
const CELLS_IN_REACH = 12;

/** What changes slowly over the leather, for each colour. */
export interface SlowLight {
  /**
   * Writes the levels of red, green and blue along a row, three numbers a pixel, for pixels that are 1 in the mask `of`; not
   * a number where no leather is in reach.
   */
  readonly readRow: (y: number, of: Uint8Array, levels: Float64Array) => void;
}

/**
 * The mean level around each place of the leather, of leather alone: the floor beside it does not count.
 * @param rgb width × height × 3 bytes
 * @param mask width × height, 1 where leather is
 * @param reachPx how far around, about
 */
export function slowLight(rgb: Uint8Array, mask: Uint8Array, size: MaskSize, reachPx: number): SlowLight {
  const cell = Math.max(1, Math.round(reachPx / CELLS_IN_REACH));
  const columns = Math.ceil(size.width / cell);
  const rows = Math.ceil(size.height / cell);
  const planes = cellSums(rgb, mask, size, cell);
  const radius = Math.max(1, Math.round(reachPx / cell / BLUR_PASSES));
  for (const plane of planes) blur(plane, columns, rows, radius);
  const { width } = size;
  // Where each column lies between cells is the same for all rows.
  const lefts = Array.from({ length: width }, (_, x) => between(x, cell, columns));
  const left = Int32Array.from(lefts, ({ first }) => first);
  const right = Int32Array.from(lefts, ({ next }) => next);
  const shares = Float64Array.from(lefts, ({ share }) => share);
  const mixed = planes.map(() => new Float64Array(columns));
  const [red, green, blue, count] = mixed as [Float64Array, Float64Array, Float64Array, Float64Array];
  return {
    readRow: (y, of, levels) => {
      const { first, next, share } = between(y, cell, rows);
      mixed.forEach((row, n) => mixRows(planes[n]!, first, next, share, row));
      for (let x = 0; x < width; x++) {
        if (of[y * width + x] === 0) continue;
        const a = left[x]!;
        const b = right[x]!;
        const fx = shares[x]!;
        const weight = count[a]! * (1 - fx) + count[b]! * fx;
        levels[3 * x] = (red[a]! * (1 - fx) + red[b]! * fx) / weight;
        levels[3 * x + 1] = (green[a]! * (1 - fx) + green[b]! * fx) / weight;
        levels[3 * x + 2] = (blue[a]! * (1 - fx) + blue[b]! * fx) / weight;
      }
    },
  };
}

/** The row that lies so far on from one row of cells to the next one. */
function mixRows(plane: Float32Array, first: number, next: number, share: number, row: Float64Array): void {
  const columns = row.length;
  for (let x = 0; x < columns; x++)
    row[x] = plane[first * columns + x]! * (1 - share) + plane[next * columns + x]! * share;
}

/** Between which of so many cells the middle of a pixel lies, and how far towards the second one. */
function between(
  pixel: number,
  cell: number,
  cells: number,
): { readonly first: number; readonly next: number; readonly share: number } {
  const place = Math.max(0, Math.min(cells - 1, (pixel + 0.5) / cell - 0.5));
  const first = Math.floor(place);
  return { first, next: Math.min(cells - 1, first + 1), share: place - first };
}

/** Sums of red, green, blue and count of the leather's pixels in each cell. */
function cellSums(
  rgb: Uint8Array,
  mask: Uint8Array,
  { width, height }: MaskSize,
  cell: number,
): Float32Array[] {
  const columns = Math.ceil(width / cell);
  const planes = Array.from({ length: 4 }, () => new Float32Array(columns * Math.ceil(height / cell)));
  const [red, green, blue, count] = planes as [Float32Array, Float32Array, Float32Array, Float32Array];
  for (let y = 0, i = 0; y < height; y++) {
    const row = Math.floor(y / cell) * columns;
    for (let x = 0; x < width; x++, i++) {
      if (mask[i] === 0) continue;
      const at = row + Math.floor(x / cell);
      red[at]! += rgb[3 * i]!;
      green[at]! += rgb[3 * i + 1]!;
      blue[at]! += rgb[3 * i + 2]!;
      count[at]! += 1;
    }
  }
  return planes;
}

/** A bell-shaped blur, in place; beyond the edges is 0. */
function blur(values: Float32Array, width: number, height: number, radius: number): void {
  for (let pass = 0; pass < BLUR_PASSES; pass++) {
    for (let y = 0; y < height; y++) runningMean(values, { start: y * width, step: 1, count: width }, radius);
    for (let x = 0; x < width; x++) runningMean(values, { start: x, step: width, count: height }, radius);
  }
}

interface Run {
  readonly start: number;
  readonly step: number;
  readonly count: number;
}

function runningMean(values: Float32Array, { start, step, count }: Run, radius: number): void {
  const line = new Float32Array(count);
  for (let i = 0; i < count; i++) line[i] = values[start + i * step]!;
  const share = 1 / (2 * radius + 1);
  let sum = 0;
  for (let i = 0; i < Math.min(radius, count); i++) sum += line[i]!;
  for (let i = 0; i < count; i++) {
    if (i + radius < count) sum += line[i + radius]!;
    if (i - radius - 1 >= 0) sum -= line[i - radius - 1]!;
    values[start + i * step] = sum * share;
  }
}
