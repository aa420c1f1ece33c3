import type { Vision } from '../../vision/vision.js';
import { resized, smoothed } from './planes.js';
import type { Plane } from './planes.js';

/** The ground is worked out in blocks of so many cells a side: it changes slowly, and this saves 63 of 64 parts. */
const BLOCK = 8;

/** What departs from the ground by more than so many deviations is a mark, and drawn no ground from. */
const CLIP_DEVIATIONS = 2;

/**
 * The slowly changing ground below what is seen: light, and the drift of the leather's own colour, smoothed by a bell of
 * `sigma` cells over the cells of the mask alone. A second round leaves marks out of it.
 */
export function groundOf(plane: Plane, mask: Uint8Array, sigma: number, vision: Vision): Plane {
  const width = Math.ceil(plane.width / BLOCK);
  const height = Math.ceil(plane.height / BLOCK);
  const blocks = blockSums(plane, mask, width, height);
  const first = weightedSmooth(blocks, width, height, sigma / BLOCK, vision);
  const second = weightedSmooth(clipped(blocks, first), width, height, sigma / BLOCK, vision);
  return resized({ width, height, values: second }, plane.width, plane.height, vision);
}

/** Sums and weights of blocks; a block's mean is sum over weight. */
interface Blocks {
  readonly sum: Float32Array;
  readonly weight: Float32Array;
}

/** Sums over the cells of the mask, both as shares of a whole block. */
function blockSums(plane: Plane, mask: Uint8Array, width: number, height: number): Blocks {
  const sum = new Float32Array(width * height);
  const weight = new Float32Array(width * height);
  const share = 1 / (BLOCK * BLOCK);
  for (let j = 0; j < plane.height; j++) {
    const row = Math.floor(j / BLOCK) * width;
    for (let i = 0; i < plane.width; i++) {
      const k = j * plane.width + i;
      if (mask[k] === 0) continue;
      const block = row + ((i / BLOCK) | 0);
      sum[block] = sum[block]! + share * plane.values[k]!;
      weight[block] = weight[block]! + share;
    }
  }
  return { sum, weight };
}

function weightedSmooth(
  { sum, weight }: Blocks,
  width: number,
  height: number,
  sigma: number,
  vision: Vision,
): Float32Array {
  const above = smoothed({ width, height, values: sum }, sigma, vision).values;
  const below = smoothed({ width, height, values: weight }, sigma, vision).values;
  return above.map((value, i) => (below[i]! > 1e-4 ? value / below[i]! : 0));
}

function clipped({ sum, weight }: Blocks, ground: Float32Array): Blocks {
  let squares = 0;
  let weights = 0;
  for (let i = 0; i < sum.length; i++) {
    if (weight[i]! < 0.5) continue;
    const off = sum[i]! / weight[i]! - ground[i]!;
    squares += off * off;
    weights++;
  }
  const most = CLIP_DEVIATIONS * Math.sqrt(squares / Math.max(1, weights));
  const kept = weight.map((w, i) => (w > 0.05 && Math.abs(sum[i]! / w - ground[i]!) <= most ? w : 0.02 * w));
  return { sum: sum.map((value, i) => (weight[i]! > 0 ? (value / weight[i]!) * kept[i]! : 0)), weight: kept };
}
