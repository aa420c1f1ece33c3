import { BESIDE_NUMBERS } from './beside-edge.js';
import type { BesideEdge } from './beside-edge.js';
import { COLOUR_NUMBERS } from './colour.js';
import type { EdgeSamples } from './edge-samples.js';
import { SAMPLE_NUMBERS } from './fine-colour.js';

/** Spread that is added to what was seen beside the edge: noise, and colours that change along it. */
const ADDED_SPREAD = [3, 1.5, 1.5] as const;
/** How much of its lightness a shadow can take from the floor (as in colour.ts), and how likely a place lies in one. */
const DEEPEST_SHADOW = 45;
const SHADOW_SHARE = 0.3;
/** One sample says at most this: a single hair or chalk grain is no edge. */
const MOST_SAID = 3;

/**
 * For each sample across the edge the logarithm of the odds that it is leather, by the colours beside the edge there. What
 * is darker than the floor but of its colour may be the floor in the hide's own shadow.
 */
export function edgeGains(samples: EdgeSamples, beside: BesideEdge, points: number): Float32Array {
  const gains = new Float32Array(points * samples.across);
  for (let i = 0; i < points; i++) {
    const hide = i * BESIDE_NUMBERS;
    const floor = hide + 2 * COLOUR_NUMBERS;
    for (let t = 0; t < samples.across; t++) {
      const at = i * samples.across + t;
      if (samples.counts[at] === 0) continue;
      const value = at * SAMPLE_NUMBERS;
      const leather = logBell(samples.values, value, beside.values, hide, 0);
      const lit = logBell(samples.values, value, beside.values, floor, 0);
      const shaded = logShaded(samples.values, value, beside.values, floor);
      const ground =
        lit > shaded ? lit + Math.log1p(Math.exp(shaded - lit)) : shaded + Math.log1p(Math.exp(lit - shaded));
      gains[at] = Math.max(-MOST_SAID, Math.min(MOST_SAID, leather - ground));
    }
  }
  return gains;
}

function logBell(
  values: Float32Array,
  value: number,
  beside: Float64Array,
  side: number,
  firstNumber: number,
): number {
  let log = 0;
  for (let n = firstNumber; n < COLOUR_NUMBERS; n++) {
    const variance = beside[side + COLOUR_NUMBERS + n]! + ADDED_SPREAD[n]! ** 2;
    log -=
      0.5 * ((values[value + n]! - beside[side + n]!) ** 2 / variance + Math.log(2 * Math.PI * variance));
  }
  return log;
}

function logShaded(values: Float32Array, value: number, beside: Float64Array, floor: number): number {
  const darker = beside[floor]! - values[value]!;
  if (darker <= 0 || darker > DEEPEST_SHADOW) return -Infinity;
  return Math.log(SHADOW_SHARE / DEEPEST_SHADOW) + logBell(values, value, beside, floor, 1);
}
