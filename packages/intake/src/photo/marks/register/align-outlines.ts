import {
  applyAffine,
  composeAffine,
  distanceBetween,
  regionCentroid,
  ringCentroid,
  ringPerimeter,
  rotationDeg,
  transformRegion,
  translation,
} from '@hidebound/geometry';
import type { Affine, Point, Region } from '@hidebound/geometry';
import { fitMotion } from './fit-motion.js';
import type { MatchedPair } from './fit-motion.js';
import { edgeGrid, evenPoints } from './outline-points.js';
import type { EdgeGrid } from './outline-points.js';

/** How one outline comes to lie on another one. */
export interface Alignment {
  readonly motion: Affine;
  /** Nine tenths of both outlines lie within this many mm of the other one. */
  readonly misfitMm: number;
}

/** An outline to be laid on, with its edges made ready. */
interface Ground {
  readonly grid: EdgeGrid;
}

/** Of a leg that was teased out otherwise, and of what only one outline shows, nothing is to be drawn along. */
const KEPT_SHARE = 0.9;

const COARSE_POINTS = 120;
const COARSE_ROUNDS = 12;
const FINE_POINTS = 600;
const FINE_ROUNDS = 40;
/** A part of an edge may run nearly straight, and along it points creep to their places. */
const PART_ROUNDS = 600;

/** A round that moves things by less than this is the last one. */
const STILL_MM = 0.005;

/** Starts further apart than this in turn are other ways of lying, not the same one. */
const START_EVERY_DEG = 15;

/** How many of the starts are followed to their end. */
const FOLLOWED = 5;

/** Two alignments whose turns differ by less are one. */
const SAME_TURN_DEG = 8;

/**
 * Lays `from` onto `onto` by turn and move alone, from starts all around, each going to the nearest place of the edges
 * (iterated closest points, Besl & McKay 1992, without the worst tenth). The best first; those that follow lie otherwise.
 */
export function alignOutlines(from: Region, onto: Region): Alignment[] {
  const ground = groundOf(onto);
  const coarse = pointsOf(from, COARSE_POINTS);
  const starts = startsAround(from, onto).map((start) => {
    const motion = walk(coarse, ground, start, COARSE_ROUNDS);
    return { motion, off: oneWay(coarse, ground, motion) };
  });
  starts.sort((one, other) => one.off - other.off);
  const ends = starts.slice(0, FOLLOWED).map(({ motion }) => refineAlignment(from, onto, motion));
  ends.sort((one, other) => one.misfitMm - other.misfitMm);
  return ends.filter((end, i) => ends.findIndex((earlier) => isSameTurn(earlier.motion, end.motion)) === i);
}

/** Follows one start to its end. */
export function refineAlignment(from: Region, onto: Region, start: Affine, scaled = false): Alignment {
  const ground = groundOf(onto);
  const motion = walk(pointsOf(from, FINE_POINTS), ground, start, FINE_ROUNDS, scaled);
  return { motion, misfitMm: alignmentMisfit(from, onto, motion) };
}

/** Lays points alone onto edges, from one start: for edges of which only a part is to count. */
export function refinePoints(points: readonly Point[], grid: EdgeGrid, start: Affine): Affine {
  return walk(points, { grid }, start, PART_ROUNDS);
}

/** Nine tenths of the points lie within this many mm of the edges, under the motion. */
export function pointsMisfit(points: readonly Point[], grid: EdgeGrid, motion: Affine): number {
  return oneWay(points, { grid }, motion);
}

/** Nine tenths of each outline lie within this many mm of the other one, under the motion. */
export function alignmentMisfit(from: Region, onto: Region, motion: Affine): number {
  const moved = transformRegion(motion, from);
  const there = offsOf(pointsOf(moved, FINE_POINTS), edgeGrid(onto));
  const back = offsOf(pointsOf(onto, FINE_POINTS), edgeGrid(moved));
  return Math.max(quantile(there, KEPT_SHARE), quantile(back, KEPT_SHARE));
}

/**
 * How far openings come to lie from openings, under the motion; 0 where one of the outlines has none. The misfit leaves
 * out the worst tenth, and small openings are less than that, so they are asked by themselves.
 */
export function openingsOff(from: Region, onto: Region, motion: Affine): number {
  const moved = transformRegion(motion, from).openings.map(ringCentroid);
  const there = onto.openings.map(ringCentroid);
  const [few, many] = moved.length <= there.length ? [moved, there] : [there, moved];
  if (few.length === 0) return 0;
  const offs = few.map((one) => Math.min(...many.map((other) => distanceBetween(one, other))));
  return quantile(offs, 0.5);
}

function groundOf(region: Region): Ground {
  return { grid: edgeGrid(region) };
}

/** Points along all edges, as dense on openings as on the outline, but never fewer than eight each. */
function pointsOf(region: Region, count: number): Point[] {
  const perimeter = ringPerimeter(region.outer);
  return [region.outer, ...region.openings].flatMap((ring) =>
    evenPoints(ring, Math.max(8, Math.round((count * ringPerimeter(ring)) / perimeter))),
  );
}

function startsAround(from: Region, onto: Region): Affine[] {
  const here = regionCentroid(from);
  const there = regionCentroid(onto);
  const starts: Affine[] = [];
  for (let deg = 0; deg < 360; deg += START_EVERY_DEG) {
    const turned = composeAffine(rotationDeg(deg), translation(-here.x, -here.y));
    starts.push(composeAffine(translation(there.x, there.y), turned));
  }
  return starts;
}

function walk(
  points: readonly Point[],
  ground: Ground,
  start: Affine,
  rounds: number,
  scaled = false,
): Affine {
  let motion = start;
  for (let round = 0; round < rounds; round++) {
    const pairs = nearestPairs(points, ground, motion);
    const next = fitMotion(pairs, scaled);
    const step = Math.max(
      ...pairs.map(({ from }) => distanceBetween(applyAffine(next, from), applyAffine(motion, from))),
    );
    motion = next;
    if (step < STILL_MM) break;
  }
  return motion;
}

/** Each point with the nearest place of the edges; the worst tenth is left out. */
function nearestPairs(points: readonly Point[], { grid }: Ground, motion: Affine): MatchedPair[] {
  const pairs = points.map((from) => {
    const at = applyAffine(motion, from);
    const to = grid.nearest(at);
    return { from, to, off: distanceBetween(at, to) };
  });
  pairs.sort((one, other) => one.off - other.off);
  return pairs.slice(0, Math.ceil(KEPT_SHARE * pairs.length));
}

function oneWay(points: readonly Point[], { grid }: Ground, motion: Affine): number {
  return quantile(
    offsOf(
      points.map((point) => applyAffine(motion, point)),
      grid,
    ),
    KEPT_SHARE,
  );
}

function offsOf(points: readonly Point[], grid: EdgeGrid): number[] {
  return points.map((point) => distanceBetween(point, grid.nearest(point)));
}

function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((one, other) => one - other);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
}

function isSameTurn(one: Affine, other: Affine): boolean {
  const cos = (one.a * other.a + one.b * other.b) / (Math.hypot(one.a, one.b) * Math.hypot(other.a, other.b));
  return cos > Math.cos((SAME_TURN_DEG * Math.PI) / 180);
}
