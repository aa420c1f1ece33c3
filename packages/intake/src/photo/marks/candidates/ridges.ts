import type { Vision } from '../../vision/vision.js';
import { smoothed } from '../map/planes.js';
import type { Level } from './level.js';
import { localNoise, tailOf } from './local-noise.js';

/** Where narrow lines run, at one coarseness. */
export interface Ridges {
  /** How far a line stands out, in deviations of the same filter's answers to the leather around; above 0 pale. */
  readonly strength: Float32Array;
  /** 1 for the middle of a line that stands out at all, 0 elsewhere. */
  readonly crest: Uint8Array;
}

/** Cells by which the level is smoothed first. */
const SMOOTH_CELLS = 1.1;

/** Cells looked at on both sides along a line: long enough to raise a scar above the grain, short enough to bend. */
const ALONG_CELLS = 4;

/** Answers below this are noise of the photo even on leather without grain; L* per cell squared. */
const LEAST_NOISE = 0.1;

/** Only where the curvature across is this much of the noise, the line along it is followed. */
const FOLLOWED_FROM = 1;

/** Where the curvature is less, every so many cells are followed too, to tell the noise of what is followed. */
const SAMPLE_EVERY = 2;

/** Weaker crests are no part of any line. */
const LEAST_STRENGTH = 2.6;

/**
 * Curvature across a line (the larger eigenvalue of the second derivatives; C. Steger 1998), averaged along it. Hysteresis
 * and joining come after.
 */
export function findRidges(level: Level, vision: Vision): Ridges {
  const { grid, mask, inner, off } = level;
  const { width, height } = grid;
  const soft = smoothed({ width, height, values: off }, SMOOTH_CELLS, vision).values;
  const { curvature, wayX, wayY } = curvatures(soft, mask, width, height);
  const rawNoise = localNoise(curvature, mask, width, height, LEAST_NOISE, vision);
  const { answers, sampled } = followed(curvature, rawNoise, wayX, wayY, mask, width, height);
  const noise = localNoise(answers, sampled, width, height, LEAST_NOISE / 2, vision);
  const tail = tailOf(answers, noise, sampled);
  const strength = new Float32Array(answers.length);
  for (let i = 0; i < strength.length; i++) {
    if (answers[i] !== 0 && mask[i] !== 0) strength[i] = answers[i]! / noise[i]! / tail;
  }
  return { strength, crest: crestOf(strength, inner, wayX, wayY, width, height) };
}

interface Curvatures {
  readonly curvature: Float32Array;
  /** The way along the line, of length 1. */
  readonly wayX: Float32Array;
  readonly wayY: Float32Array;
}

/** Above 0 where the middle is paler than both sides. */
function curvatures(soft: Float32Array, mask: Uint8Array, width: number, height: number): Curvatures {
  const curvature = new Float32Array(soft.length);
  const wayX = new Float32Array(soft.length);
  const wayY = new Float32Array(soft.length);
  for (let j = 1; j < height - 1; j++) {
    for (let i = 1; i < width - 1; i++) {
      const k = j * width + i;
      if (mask[k] === 0) continue;
      const xx = soft[k + 1]! + soft[k - 1]! - 2 * soft[k]!;
      const yy = soft[k + width]! + soft[k - width]! - 2 * soft[k]!;
      const xy =
        (soft[k + width + 1]! + soft[k - width - 1]! - soft[k + width - 1]! - soft[k - width + 1]!) / 4;
      const mean = (xx + yy) / 2;
      const half = (xx - yy) / 2;
      const reach = Math.sqrt(half * half + xy * xy);
      const large = mean >= 0 ? mean + reach : mean - reach;
      const small = mean >= 0 ? mean - reach : mean + reach;
      // A spot curves both ways alike, and a saddle against itself.
      const across = Math.abs(large) - Math.abs(small);
      curvature[k] = -Math.sign(large) * Math.max(0, across);
      // The eigenvector of the other value runs along the line.
      const vx = small - yy;
      const length = Math.sqrt(vx * vx + xy * xy);
      wayX[k] = length > 1e-9 ? vx / length : Math.abs(xx) < Math.abs(yy) ? 1 : 0;
      wayY[k] = length > 1e-9 ? xy / length : Math.abs(xx) < Math.abs(yy) ? 0 : 1;
    }
  }
  return { curvature, wayX, wayY };
}

function followed(
  curvature: Float32Array,
  noise: Float32Array,
  wayX: Float32Array,
  wayY: Float32Array,
  mask: Uint8Array,
  width: number,
  height: number,
): { readonly answers: Float32Array; readonly sampled: Uint8Array } {
  const answers = new Float32Array(curvature.length);
  const sampled = new Uint8Array(curvature.length);
  for (let j = ALONG_CELLS; j < height - ALONG_CELLS; j++) {
    for (let i = ALONG_CELLS; i < width - ALONG_CELLS; i++) {
      const k = j * width + i;
      if (mask[k] === 0) continue;
      const isSample = i % SAMPLE_EVERY === 0 && j % SAMPLE_EVERY === 0;
      if (isSample) sampled[k] = 255;
      else if (Math.abs(curvature[k]!) < FOLLOWED_FROM * noise[k]!) continue;
      let sum = curvature[k]!;
      for (let step = 1; step <= ALONG_CELLS; step++) {
        const dx = Math.round(step * wayX[k]!);
        const dy = Math.round(step * wayY[k]!);
        sum += curvature[k + dy * width + dx]! + curvature[k - dy * width - dx]!;
      }
      answers[k] = sum / (2 * ALONG_CELLS + 1);
    }
  }
  return { answers, sampled };
}

/** The cells that stand out no less than their neighbours across the line. */
function crestOf(
  strength: Float32Array,
  inner: Uint8Array,
  wayX: Float32Array,
  wayY: Float32Array,
  width: number,
  height: number,
): Uint8Array {
  const crest = new Uint8Array(strength.length);
  for (let j = 1; j < height - 1; j++) {
    for (let i = 1; i < width - 1; i++) {
      const k = j * width + i;
      const here = Math.abs(strength[k]!);
      if (inner[k] === 0 || here < LEAST_STRENGTH) continue;
      const across = Math.round(wayX[k]!) * width - Math.round(wayY[k]!);
      if (here >= Math.abs(strength[k + across]!) && here >= Math.abs(strength[k - across]!)) crest[k] = 1;
    }
  }
  return crest;
}
