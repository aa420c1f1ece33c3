import type { EdgeSamples } from './edge-samples.js';
import { SAMPLE_NUMBERS } from './fine-colour.js';

/** Samples to either side of the split over which leather passes into floor. */
const PASSAGE = 2;
/** Samples beyond them that tell the leather's pure level; on the floor's side it is one, lest more than the shadow is seen. */
const PURE = 2;

/** Times that the few samples are taken anew around the place found. */
const LOOKS = 3;

/**
 * Where the edge lies across at point i, in samples from the middle one (outwards above 0). Over the few samples around
 * the split each is a mixture of the levels on both sides, in amounts of light; their shares of leather add up to how far
 * the leather reaches, however blurred the edge is. The level outside is taken close by, so within a shadow if there is one.
 */
export function placeBetweenSamples(samples: EdgeSamples, i: number, split: number): number {
  let place = split - 0.5;
  for (let look = 0, at = split; look < LOOKS; look++) {
    const found = lookAround(samples, i, at);
    if (found === undefined) break;
    place = found;
    // Splits by odds lie to one side where one ground is dark: halves of light and dark look light.
    const next = Math.max(split - PASSAGE, Math.min(split + PASSAGE, Math.round(place + 0.5)));
    if (next === at) break;
    at = next;
  }
  return place - samples.reach;
}

function lookAround(samples: EdgeSamples, i: number, split: number): number | undefined {
  const first = split - PASSAGE;
  const last = split + PASSAGE - 1;
  const inside = meanLight(samples, i, first - PURE, first - 1);
  const outside = meanLight(samples, i, last + 1, last + 1);
  if (inside === undefined || outside === undefined) return undefined;
  const way = outside.map((level, n) => level - inside[n]!);
  const sizeSq = way.reduce((sum, d) => sum + d * d, 0);
  if (sizeSq < LEAST_STEP_SQ) return undefined;
  let leather = 0;
  for (let t = first; t <= last; t++) {
    const at = i * samples.across + t;
    if (t < 0 || t >= samples.across || samples.counts[at] === 0) return undefined;
    let share = 0;
    for (let n = 0; n < 3; n++)
      share += (samples.values[at * SAMPLE_NUMBERS + 3 + n]! - inside[n]!) * way[n]!;
    leather += 1 - Math.max(0, Math.min(1, share / sizeSq));
  }
  return first - 0.5 + leather;
}

/** Levels that are closer to each other (as squared amounts of light) say nothing of the place between them. */
const LEAST_STEP_SQ = 1e-5;

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

/** A shadow's own edge can be taken for the leather's by about this much, px. */
const SHADOW_DOUBT_PX = 0.8;
/** Samples from the edge to where the floor lies out of the hide's shadow. */
const BEYOND_SHADOW = 6;

/**
 * How doubtful a shadow makes the place, px: the level right outside is compared with the floor further out; where the
 * step out of the shadow is as large as the one from the leather into it, nothing tells which is which.
 */
export function shadowDoubt(samples: EdgeSamples, i: number, split: number): number {
  const inside = meanLight(samples, i, split - PASSAGE - PURE, split - PASSAGE - 1);
  const outside = meanLight(samples, i, split + PASSAGE, split + PASSAGE);
  const floor = meanLight(samples, i, split + BEYOND_SHADOW, split + BEYOND_SHADOW + PURE);
  if (inside === undefined || outside === undefined || floor === undefined) return 0;
  const shadowStep = Math.hypot(...floor.map((level, n) => level - outside[n]!));
  const edgeStep = Math.hypot(...inside.map((level, n) => level - outside[n]!));
  return SHADOW_DOUBT_PX * Math.min(2, shadowStep / Math.max(edgeStep, 1e-3));
}
