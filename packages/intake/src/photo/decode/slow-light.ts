import type { MaskSize } from './leather-mask.js';

/** Three passes of a running mean are near enough to a bell curve. */
const BLUR_PASSES = 3;

/** Cells of the coarse grid within the reach of the blur: enough that nobody sees them, few enough to be quick. */
const CELLS_IN_REACH = 12;

/** What changes slowly over the leather, for each colour. */
export interface SlowLight {
  /** The level of a colour (0 red, 1 green, 2 blue) at a pixel; not a number where no leather is in reach. */
  readonly at: (channel: number, x: number, y: number) => number;
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
  const weights = planes[3]!;
  return {
    at: (channel, x, y) => {
      const sums = planes[channel]!;
      const u = Math.max(0, Math.min(columns - 1, (x + 0.5) / cell - 0.5));
      const v = Math.max(0, Math.min(rows - 1, (y + 0.5) / cell - 0.5));
      const left = Math.floor(u);
      const top = Math.floor(v);
      const right = Math.min(columns - 1, left + 1) - left;
      const below = (Math.min(rows - 1, top + 1) - top) * columns;
      const i = top * columns + left;
      const [fx, fy] = [u - left, v - top];
      const mix = (plane: Float32Array): number =>
        (plane[i]! * (1 - fx) + plane[i + right]! * fx) * (1 - fy) +
        (plane[i + below]! * (1 - fx) + plane[i + below + right]! * fx) * fy;
      return mix(sums) / mix(weights);
    },
  };
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
