import { applyAffine, ringArea, ringCentroid } from '@hidebound/geometry';
import type { Affine, Point, Ring } from '@hidebound/geometry';
import { nearestOnRings, pointsEvery } from './nearest-on-rings.js';
import type { NearestOnRings } from './nearest-on-rings.js';

/** Turned so by a photo taken askew. */
const START_TURNS_DEG = [0, -12, 12, -24, 24, 180] as const;
const SAMPLE_MM = 10;
const ROUGH_ROUNDS = 12;
const FINE_ROUNDS = 60;
/** The farther beyond this distance a place lies, the less it counts: a leg that was missed must not drag all of the fit. */
const NEAR_MM = 3;
/** At first everything counts. */
const FAR_MM = 60;

export interface OutlineFit {
  /** From the found outline onto the true one, without change of size. */
  readonly motion: Affine;
  /** Found size over true size, less 1. */
  readonly scaleError: number;
}

/** Lays the found outline onto the true one, as well as turning and moving can, then tells by how much it is too large. */
export function fitOutline(found: Ring, truth: Ring): OutlineFit {
  const nearest = nearestOnRings([truth]);
  const samples = pointsEvery(found, SAMPLE_MM);
  const from = ringCentroid(found);
  const to = ringCentroid(truth);
  const starts = START_TURNS_DEG.map((deg) => {
    const turn = (deg * Math.PI) / 180;
    return settle(startAt(from, to, turn), samples, nearest, ROUGH_ROUNDS, FAR_MM);
  });
  const best = starts.reduce((a, b) => (misfit(a, samples, nearest) <= misfit(b, samples, nearest) ? a : b));
  const motion = settle(best, samples, nearest, FINE_ROUNDS, NEAR_MM);
  // The two fits take turns a few times, so that nearest places follow the change of size.
  let similar = { motion, scale: 1 };
  for (let round = 0; round < FINE_ROUNDS; round++)
    similar = bestMotion(similar.motion, samples, nearest, true, NEAR_MM);
  return { motion, scaleError: 1 / similar.scale - 1 };
}

function startAt(from: Point, to: Point, turn: number): Affine {
  const [sin, cos] = [Math.sin(turn), Math.cos(turn)];
  return {
    a: cos,
    b: sin,
    c: -sin,
    d: cos,
    e: to.x - cos * from.x + sin * from.y,
    f: to.y - sin * from.x - cos * from.y,
  };
}

function settle(
  start: Affine,
  samples: readonly Point[],
  nearest: NearestOnRings,
  rounds: number,
  nearMm: number,
): Affine {
  let motion = start;
  for (let round = 0; round < rounds; round++)
    motion = bestMotion(motion, samples, nearest, false, nearMm).motion;
  return motion;
}

function misfit(motion: Affine, samples: readonly Point[], nearest: NearestOnRings): number {
  return samples.reduce((sum, point) => sum + Math.min(50, nearest(applyAffine(motion, point)).distance), 0);
}

/** One round of closest points: least squares with Cauchy's weights, in closed form by complex numbers. */
function bestMotion(
  motion: Affine,
  samples: readonly Point[],
  nearest: NearestOnRings,
  mayScale: boolean,
  nearMm: number,
): { readonly motion: Affine; readonly scale: number } {
  const pairs = samples.map((from) => {
    const { at, distance } = nearest(applyAffine(motion, from));
    return { from, to: at, weight: 1 / (1 + (distance / nearMm) ** 2) };
  });
  const total = pairs.reduce((sum, { weight }) => sum + weight, 0);
  const mean = (of: (pair: (typeof pairs)[number]) => number) =>
    pairs.reduce((sum, pair) => sum + pair.weight * of(pair), 0) / total;
  const [fx, fy] = [mean(({ from }) => from.x), mean(({ from }) => from.y)];
  const [tx, ty] = [mean(({ to }) => to.x), mean(({ to }) => to.y)];
  let [re, im, size] = [0, 0, 0];
  for (const { from, to, weight } of pairs) {
    const [ux, uy, vx, vy] = [from.x - fx, from.y - fy, to.x - tx, to.y - ty];
    re += weight * (ux * vx + uy * vy);
    im += weight * (ux * vy - uy * vx);
    size += weight * (ux * ux + uy * uy);
  }
  const length = Math.hypot(re, im);
  const scale = mayScale ? length / size : 1;
  const [cos, sin] = [(scale * re) / length, (scale * im) / length];
  return {
    scale,
    motion: { a: cos, b: sin, c: -sin, d: cos, e: tx - cos * fx + sin * fy, f: ty - sin * fx - cos * fy },
  };
}

/** Found area over true area, less 1. */
export function areaError(found: Ring, truth: Ring): number {
  return Math.abs(ringArea(found)) / Math.abs(ringArea(truth)) - 1;
}
