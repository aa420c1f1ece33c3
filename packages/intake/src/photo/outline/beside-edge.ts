import { COLOUR_NUMBERS } from './colour.js';
import type { EdgeSamples } from './edge-samples.js';
import { SAMPLE_NUMBERS } from './fine-colour.js';

/** What either side looks like near a point of the edge: mean and variance of three numbers, for leather then floor. */
export interface BesideEdge {
  /** For each point: 3 means and 3 variances of the leather, then of the floor. */
  readonly values: Float64Array;
}

export const BESIDE_NUMBERS = 4 * COLOUR_NUMBERS;

/** Fewer samples than this say little; then what is beside the whole edge is taken in. */
const FEW = 60;

const SUMS = 1 + 2 * COLOUR_NUMBERS;

/** Pools what lies at least `clear` pixels from the edge, over `window` points to either side. */
export function lookBesideEdge(
  samples: EdgeSamples,
  points: number,
  clear: number,
  window: number,
): BesideEdge {
  const values = new Float64Array(points * BESIDE_NUMBERS);
  for (const side of [0, 1]) {
    const sums = sideSums(samples, points, clear, side === 0 ? -1 : 1);
    const all = new Float64Array(SUMS);
    for (let i = 0; i < points; i++) for (let n = 0; n < SUMS; n++) all[n]! += sums[i * SUMS + n]!;
    const pooled = new Float64Array(SUMS);
    const add = (i: number, sign: number): void => {
      const from = (((i % points) + points) % points) * SUMS;
      for (let n = 0; n < SUMS; n++) pooled[n]! += sign * sums[from + n]!;
    };
    const half = Math.min(window, (points - 1) >> 1);
    for (let i = -half; i < half; i++) add(i, 1);
    for (let i = 0; i < points; i++) {
      add(i + half, 1);
      writeMoments(pooled, all, values, i * BESIDE_NUMBERS + side * 2 * COLOUR_NUMBERS);
      add(i - half, -1);
    }
  }
  return { values };
}

/** For each point the count, sums and sums of squares of one side. */
function sideSums(samples: EdgeSamples, points: number, clear: number, way: number): Float64Array {
  const sums = new Float64Array(points * SUMS);
  for (let i = 0; i < points; i++)
    for (let away = clear; away <= samples.reach; away++) {
      const at = i * samples.across + samples.reach + way * away;
      if (samples.counts[at] === 0) break;
      sums[i * SUMS]! += 1;
      for (let n = 0; n < COLOUR_NUMBERS; n++) {
        const value = samples.values[at * SAMPLE_NUMBERS + n]!;
        sums[i * SUMS + 1 + n]! += value;
        sums[i * SUMS + 1 + COLOUR_NUMBERS + n]! += value * value;
      }
    }
  return sums;
}

function writeMoments(pooled: Float64Array, all: Float64Array, to: Float64Array, offset: number): void {
  const ownShare = Math.min(1, pooled[0]! / FEW);
  for (let n = 0; n < COLOUR_NUMBERS; n++) {
    const own = moments(pooled, n);
    const general = moments(all, n);
    const mean = ownShare * own.mean + (1 - ownShare) * general.mean;
    to[offset + n] = mean;
    to[offset + COLOUR_NUMBERS + n] =
      ownShare * (own.variance + (own.mean - mean) ** 2) +
      (1 - ownShare) * (general.variance + (general.mean - mean) ** 2);
  }
}

function moments(sums: Float64Array, n: number): { mean: number; variance: number } {
  const count = sums[0]!;
  if (count < 1) return { mean: 0, variance: 0 };
  const mean = sums[1 + n]! / count;
  return { mean, variance: Math.max(0, sums[1 + COLOUR_NUMBERS + n]! / count - mean * mean) };
}
