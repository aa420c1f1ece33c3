import type { Vision } from '../../vision/vision.js';
import { DEVIATION_OF_MEDIAN, nthSmallest } from '../map/noise.js';
import { resized, smoothed } from '../map/planes.js';

/**
 * Width of a block of cells that the noise is told for: wide enough for a few hundred numbers, narrower than a belly is
 * rougher than the back.
 */
const BLOCK = 32;

/** Every second cell of a block is looked at, in both directions; ridges are sampled on the same ones. */
const STRIDE = 2;

/** Least numbers in a block that tell its noise. */
const LEAST_COUNT = 40;

/**
 * The noise of a filter's answers at each place, as the deviation that their median tells; what stands out hardly
 * changes it. Never below `least`: a picture without grain would make marks of nothing.
 */
export function localNoise(
  answers: Float32Array,
  mask: Uint8Array,
  width: number,
  height: number,
  least: number,
  vision: Vision,
): Float32Array {
  const columns = Math.max(1, Math.ceil(width / BLOCK));
  const rows = Math.max(1, Math.ceil(height / BLOCK));
  const sum = new Float32Array(columns * rows);
  const weight = new Float32Array(columns * rows);
  const picked = new Float32Array((BLOCK / STRIDE) ** 2);
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++) {
      const median = blockMedian(answers, mask, width, height, c * BLOCK, r * BLOCK, picked);
      if (median === undefined) continue;
      sum[r * columns + c] = median * DEVIATION_OF_MEDIAN;
      weight[r * columns + c] = 1;
    }
  }
  const size = { width: columns, height: rows };
  const above = smoothed({ ...size, values: sum }, 1, vision).values;
  const below = smoothed({ ...size, values: weight }, 1, vision).values;
  const blocks = above.map((value, i) => Math.max(least, below[i]! > 0.01 ? value / below[i]! : 0));
  return resized({ ...size, values: blocks }, width, height, vision).values;
}

function blockMedian(
  answers: Float32Array,
  mask: Uint8Array,
  width: number,
  height: number,
  x: number,
  y: number,
  picked: Float32Array,
): number | undefined {
  let count = 0;
  for (let j = y; j < Math.min(height, y + BLOCK); j += STRIDE) {
    for (let i = x; i < Math.min(width, x + BLOCK); i += STRIDE) {
      const k = j * width + i;
      if (mask[k] !== 0) picked[count++] = Math.abs(answers[k]!);
    }
  }
  return count < LEAST_COUNT ? undefined : nthSmallest(picked, count, count >> 1);
}

/** Of this share of all cells the answer is larger by chance alone ... */
const TAIL_SHARE = 0.02;
/** ... than so many deviations, were the grain as even as many small causes make it. From tables of the normal law. */
const TAIL_DEVIATIONS = 2.326;

/** Grain has larger outliers than even noise has; marks are measured against those, up to this many times as strictly. */
const MOST_TAIL = 2;

/** Cells looked at for the outliers; below the second number they tell nothing. */
const TAIL_SAMPLES = 60_000;
const LEAST_TAIL_COUNT = 400;

/** How much larger the outliers are than those of even noise, 1 or more. */
export function tailOf(answers: Float32Array, noise: Float32Array, mask: Uint8Array): number {
  const step = Math.max(1, Math.floor(answers.length / TAIL_SAMPLES));
  const picked = new Float32Array(Math.ceil(answers.length / step));
  let count = 0;
  for (let i = 0; i < answers.length; i += step) {
    if (mask[i] !== 0) picked[count++] = Math.abs(answers[i]!) / noise[i]!;
  }
  if (count < LEAST_TAIL_COUNT) return 1;
  const found = nthSmallest(picked, count, Math.floor((1 - TAIL_SHARE) * count));
  return Math.min(MOST_TAIL, Math.max(1, found / TAIL_DEVIATIONS));
}
