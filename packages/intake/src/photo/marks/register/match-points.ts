import { applyAffine, createRandom, distanceBetween } from '@hidebound/geometry';
import type { Affine, Point } from '@hidebound/geometry';
import { fitMotion, turnOfMotion } from './fit-motion.js';
import type { MatchedPair } from './fit-motion.js';

/** A motion from one set of places onto another one, and which places it brings together. */
export interface PointMatch {
  readonly motion: Affine;
  readonly pairs: readonly MatchedPair[];
  /** The farthest of the pairs; with two pairs, by how much their distances differ. */
  readonly misfitMm: number;
}

/** Two distances that may be that of the same two crosses differ by no more, in mm and as a share. */
const DISTANCE_WITHIN_MM = 6;
const DISTANCE_WITHIN_SHARE = 0.01;

/** Pairs of places that are tried; with more of them (some thirty crosses) they are drawn by lot. */
const MOST_TRIALS = 4000;

/** Two crosses nearer than this fix no turn. */
const LEAST_BASE_MM = 40;

/**
 * Finds the turn and move that brings the most places of `from` onto places of `to`, by their mutual distances; nothing
 * is mirrored. Among equally many, the one with the least misfit; with only two pairs, which may be taken either way
 * round, the one that turns less. Undefined where not even two places can be the same.
 */
export function matchPoints(from: readonly Point[], to: readonly Point[], seed = 1): PointMatch | undefined {
  let best: PointMatch | undefined;
  for (const [i, j, k, l] of trials(from, to, seed)) {
    const start = fitMotion([
      { from: from[i]!, to: to[k]! },
      { from: from[j]!, to: to[l]! },
    ]);
    const found = agreeing(start, from, to);
    if (found !== undefined && (best === undefined || isBetter(found, best))) best = found;
  }
  return best;
}

type Trial = readonly [number, number, number, number];

/** Two places of each set whose distances agree. */
function trials(from: readonly Point[], to: readonly Point[], seed: number): Trial[] {
  const found: Trial[] = [];
  for (let i = 0; i < from.length; i++) {
    for (let j = i + 1; j < from.length; j++) {
      const distance = distanceBetween(from[i]!, from[j]!);
      if (distance < LEAST_BASE_MM) continue;
      for (let k = 0; k < to.length; k++) {
        for (let l = 0; l < to.length; l++) {
          if (k !== l && Math.abs(distance - distanceBetween(to[k]!, to[l]!)) <= within(distance)) {
            found.push([i, j, k, l]);
          }
        }
      }
    }
  }
  if (found.length <= MOST_TRIALS) return found;
  const random = createRandom(seed);
  return Array.from({ length: MOST_TRIALS }, () => found[random.integer(found.length)]!);
}

function within(distanceMm: number): number {
  return Math.max(DISTANCE_WITHIN_MM, DISTANCE_WITHIN_SHARE * distanceMm);
}

/** Takes all pairs that the motion brings together, and fits it to them, until they stay the same. */
function agreeing(start: Affine, from: readonly Point[], to: readonly Point[]): PointMatch | undefined {
  let motion = start;
  let pairs: MatchedPair[] = [];
  for (let round = 0; round < 3; round++) {
    pairs = mutuallyNearest(motion, from, to);
    if (pairs.length < 2) return undefined;
    motion = fitMotion(pairs);
  }
  return { motion, pairs, misfitMm: misfitOf(motion, pairs) };
}

function mutuallyNearest(motion: Affine, from: readonly Point[], to: readonly Point[]): MatchedPair[] {
  const moved = from.map((point) => applyAffine(motion, point));
  const pairs: MatchedPair[] = [];
  moved.forEach((point, i) => {
    const k = nearestOf(point, to);
    const other = to[k]!;
    if (distanceBetween(point, other) > DISTANCE_WITHIN_MM || nearestOf(other, moved) !== i) return;
    pairs.push({ from: from[i]!, to: other });
  });
  return pairs;
}

function nearestOf(point: Point, among: readonly Point[]): number {
  let best = 0;
  for (let i = 1; i < among.length; i++) {
    if (distanceBetween(point, among[i]!) < distanceBetween(point, among[best]!)) best = i;
  }
  return best;
}

/** With two pairs each end is off by half of what their distances differ, and that hides it: so the whole is said. */
function misfitOf(motion: Affine, pairs: readonly MatchedPair[]): number {
  const off = Math.max(...pairs.map(({ from, to }) => distanceBetween(applyAffine(motion, from), to)));
  return pairs.length === 2 ? 2 * off : off;
}

function isBetter(one: PointMatch, other: PointMatch): boolean {
  if (one.pairs.length !== other.pairs.length) return one.pairs.length > other.pairs.length;
  if (one.pairs.length > 2) return one.misfitMm < other.misfitMm;
  const turn = Math.abs(turnOfMotion(one.motion)) - Math.abs(turnOfMotion(other.motion));
  return Math.abs(turn) > TURN_TIE_DEG ? turn < 0 : one.misfitMm < other.misfitMm;
}

const TURN_TIE_DEG = 1;
