import type { Point } from '@hidebound/geometry';
import type { Vision } from '../../vision/vision.js';
import { gridToFloor } from '../map/grid.js';
import { smoothed } from '../map/planes.js';
import type { Level } from './level.js';
import { localNoise, tailOf } from './local-noise.js';

/** A small round mark; mm. */
export interface Spot {
  readonly at: Point;
  readonly radiusMm: number;
  /** L* above (pale) or below (dark) what lies around. */
  readonly contrast: number;
  /** How far it stands out, in deviations of the same filter's answers to the leather around. */
  readonly strength: number;
}

/** The spot itself and what lies around it, smoothed by bells of so many cells. */
const INNER_CELLS = 1.1;
const OUTER_CELLS = 2.8;

/** Weaker ones are hardly ever marks, and there are very many. */
const LEAST_STRENGTH = 5;

/** Answers below this, in L*, are noise of the photo even on leather without grain. */
const LEAST_NOISE = 0.15;

/** Of a spot, both curvatures are alike; of a line, one is nearly 0. */
const LEAST_ROUNDNESS = 0.4;

export function findSpots(level: Level, vision: Vision): Spot[] {
  const { grid, mask, inner: within, off } = level;
  const size = { width: grid.width, height: grid.height };
  const inner = smoothed({ ...size, values: off }, INNER_CELLS, vision).values;
  const outer = smoothed({ ...size, values: off }, OUTER_CELLS, vision).values;
  const answers = new Float32Array(inner.length);
  for (let i = 0; i < answers.length; i++) answers[i] = inner[i]! - outer[i]!;
  const noise = localNoise(answers, mask, grid.width, grid.height, LEAST_NOISE, vision);
  const tail = tailOf(answers, noise, mask);
  const spots: Spot[] = [];
  for (let j = 2; j < grid.height - 2; j++) {
    for (let i = 2; i < grid.width - 2; i++) {
      const k = j * grid.width + i;
      if (within[k] === 0) continue;
      const strength = Math.abs(answers[k]!) / noise[k]! / tail;
      if (strength < LEAST_STRENGTH) continue;
      if (!isPeak(answers, k, grid.width) || roundness(inner, k, grid.width) < LEAST_ROUNDNESS) continue;
      spots.push(spotAt(level, outer, i, j, strength));
    }
  }
  return spots;
}

function isPeak(answers: Float32Array, k: number, width: number): boolean {
  const here = answers[k]!;
  const sign = Math.sign(here);
  for (let j = -1; j <= 1; j++) {
    for (let i = -1; i <= 1; i++) {
      const other = answers[k + j * width + i]!;
      const isEarlier = j < 0 || (j === 0 && i < 0);
      if (sign * other > sign * here || (isEarlier && other === here)) return false;
    }
  }
  return true;
}

function roundness(values: Float32Array, k: number, width: number): number {
  const here = values[k]!;
  const xx = values[k + 2]! + values[k - 2]! - 2 * here;
  const yy = values[k + 2 * width]! + values[k - 2 * width]! - 2 * here;
  const across = 2 * width;
  const xy =
    (values[k + across + 2]! + values[k - across - 2]! - values[k + across - 2]! - values[k - across + 2]!) /
    4;
  const mean = (xx + yy) / 2;
  const reach = Math.hypot((xx - yy) / 2, xy);
  const [one, other] = [mean + reach, mean - reach];
  if (one * other <= 0) return 0;
  return Math.min(Math.abs(one), Math.abs(other)) / Math.max(Math.abs(one), Math.abs(other));
}

/** Cells out to which a spot's extent is followed. */
const REACH_CELLS = 5;

/** Its radius from the area that departs by more than half of its peak. */
function spotAt({ grid, off }: Level, outer: Float32Array, i: number, j: number, strength: number): Spot {
  const ground = outer[j * grid.width + i]!;
  let peak = 0;
  for (let y = -1; y <= 1; y++) {
    for (let x = -1; x <= 1; x++) {
      const value = off[(j + y) * grid.width + i + x]! - ground;
      if (Math.abs(value) > Math.abs(peak)) peak = value;
    }
  }
  let cells = 0;
  let sumX = 0;
  let sumY = 0;
  for (let y = Math.max(0, j - REACH_CELLS); y <= Math.min(grid.height - 1, j + REACH_CELLS); y++) {
    for (let x = Math.max(0, i - REACH_CELLS); x <= Math.min(grid.width - 1, i + REACH_CELLS); x++) {
      const isNear = (x - i) ** 2 + (y - j) ** 2 <= REACH_CELLS * REACH_CELLS;
      if (!isNear || (off[y * grid.width + x]! - ground) / peak < 0.5) continue;
      cells++;
      sumX += x;
      sumY += y;
    }
  }
  const n = Math.max(1, cells);
  return {
    at: cells === 0 ? gridToFloor(grid, i, j) : gridToFloor(grid, sumX / n, sumY / n),
    radiusMm: Math.sqrt(n / Math.PI) * grid.stepX,
    contrast: peak,
    strength,
  };
}
