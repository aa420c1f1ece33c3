import type { EdgeSamples } from './edge-samples.js';
import { SAMPLE_NUMBERS } from './fine-colour.js';

/** Samples to either side of the split over which leather passes into floor. */
const PASSAGE = 2;
/** Samples beyond them that tell the pure levels. */
const PURE = 2;

/**
 * Where the edge lies across at point i, in samples from the middle one (outwards above 0). Over the few samples around
 * the split each is a mixture of the levels on both sides, in amounts of light; their shares of leather add up to how far
 * the leather reaches, however blurred the edge is. The level outside is taken close by, so within a shadow if there is one.
 */
export function placeBetweenSamples(samples: EdgeSamples, i: number, split: number): number {
  const plain = split - 0.5 - samples.reach;
  const first = split - PASSAGE;
  const last = split + PASSAGE - 1;
  const inside = meanLight(samples, i, first - PURE, first - 1);
  const outside = meanLight(samples, i, last, last + PURE - 1);
  if (inside === undefined || outside === undefined) return plain;
  const way = outside.map((level, n) => level - inside[n]!);
  const sizeSq = way.reduce((sum, d) => sum + d * d, 0);
  if (sizeSq < 1e-5) return plain;
  let leather = 0;
  for (let t = first; t <= last; t++) {
    const at = i * samples.across + t;
    if (samples.counts[at] === 0) return plain;
    let share = 0;
    for (let n = 0; n < 3; n++)
      share += (samples.values[at * SAMPLE_NUMBERS + 3 + n]! - inside[n]!) * way[n]!;
    leather += 1 - Math.max(0, Math.min(1, share / sizeSq));
  }
  return first - 0.5 + leather - samples.reach;
}

function meanLight(samples: EdgeSamples, i: number, first: number, last: number): number[] | undefined {
  const sum = [0, 0, 0];
  let count = 0;
  for (let t = Math.max(0, first); t <= Math.min(samples.across - 1, last); t++) {
    const at = i * samples.across + t;
    if (samples.counts[at] === 0) continue;
    for (let n = 0; n < 3; n++) sum[n]! += samples.values[at * SAMPLE_NUMBERS + 3 + n]!;
    count += 1;
  }
  return count === 0 ? undefined : sum.map((s) => s / count);
}
