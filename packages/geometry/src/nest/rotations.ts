import type { Random } from '../number/random.js';
import { atan2Deg } from '../number/trigonometry.js';
import { roundDeg, turnDeg } from './angle.js';
import type { FieldCache } from './field-cache.js';
import type { Frame } from './frame.js';
import type { PreparedItem } from './prepared-item.js';
import type { PairLimit } from './rules.js';
import { angleExcessDeg } from './rules.js';

/** What the choice of rotations looks at. */
export interface RotationContext {
  readonly prepared: PreparedItem;
  readonly frame: Frame;
  readonly cache: FieldCache;
  readonly pair: PairLimit | undefined;
  /** Directions of edges nearby, degrees on the sheet; may be empty. */
  readonly nearbyDeg: readonly number[];
}

const SLANTS_DEG: readonly number[] = [45, 30, 60, 15, 75];

/** The rotations to try first, the same every time; at most `most`. */
export function firstRotations(context: RotationContext, most: number): number[] {
  const { prepared, frame } = context;
  const all: number[] = [];
  if (prepared.item.angleRule.frame === 'free') {
    const ahead = atan2Deg(frame.fy, frame.fx);
    const edges = prepared.edgeAnglesDeg.length > 0 ? prepared.edgeAnglesDeg : [0];
    for (const edge of edges) for (let q = 0; q < 4; q++) all.push(ahead - edge + 90 * q);
    // After those, slanting ones: a long piece may fit corner to corner.
    for (let q = 0; q < 4; q++) for (const slant of SLANTS_DEG) all.push(ahead - edges[0]! + slant + 90 * q);
    return distinct(paired(context, all), most);
  }
  for (const base of baseRotations(context)) {
    all.push(base, ...alignedWithin(context, base));
  }
  return distinct(paired(context, all), most);
}

/** Rotations for one step of the improvement: some of the first ones, some by chance. */
export function randomRotations(
  context: RotationContext,
  random: Random,
  most: number,
  presentDeg: number | undefined,
): number[] {
  const all: number[] = [];
  if (presentDeg !== undefined) all.push(presentDeg);
  const free = context.prepared.item.angleRule.frame === 'free';
  const bases = free ? [] : baseRotations(context);
  while (all.length < most + 1) {
    const rotation = free ? randomFree(context, random) : randomWithin(context, random, bases);
    if (rotation === undefined) break;
    all.push(rotation);
  }
  return distinct(paired(context, all), most);
}

/**
 * Rotations at which the arrow points right at a target, for each direction that the sheet has: first those that
 * reach, with the tolerance, places that none before them reaches.
 */
function baseRotations({ prepared, cache }: RotationContext): number[] {
  const { frame, targetsDeg, arrowDeg, modulo, toleranceDeg } = prepared.item.angleRule;
  const ahead: number[] = [];
  const later: number[] = [];
  for (const direction of frame === 'local' ? spread(cache.directions, toleranceDeg) : [0]) {
    for (const target of targetsDeg) {
      ahead.push(direction + target - arrowDeg);
      if (modulo === 180) later.push(direction + target - arrowDeg + 180);
    }
  }
  return [...ahead, ...later];
}

/** The same directions, those first that lie farther than the tolerance from all before them. */
function spread(directions: readonly number[], toleranceDeg: number): number[] {
  const apart: number[] = [];
  const near: number[] = [];
  for (const deg of directions) {
    const isNear = apart.some((other) => Math.abs(turnDeg(deg, other, 360)) <= toleranceDeg);
    (isNear ? near : apart).push(deg);
  }
  return [...apart, ...near];
}

/** Rotations within the tolerance of a base at which a long edge lies along or across the search direction. */
function alignedWithin({ prepared, frame }: RotationContext, base: number): number[] {
  const { toleranceDeg } = prepared.item.angleRule;
  const ahead = atan2Deg(frame.fy, frame.fx);
  const aligned: number[] = [];
  for (const edge of prepared.edgeAnglesDeg.slice(0, 2)) {
    const off = turnDeg(ahead, edge + base, 90);
    if (off !== 0 && Math.abs(off) <= toleranceDeg) aligned.push(base + off);
  }
  return aligned;
}

/** Shares of the ways in which a free rotation is drawn; the rest is uniform. */
const ALIGNED_SHARE = 0.4;
const NEIGHBOUR_SHARE = 0.35;

function randomFree({ prepared, frame, nearbyDeg }: RotationContext, random: Random): number {
  const edges = prepared.edgeAnglesDeg;
  const draw = random.next();
  const edge = edges.length > 0 ? edges[random.integer(edges.length)]! : 0;
  if (draw < ALIGNED_SHARE) return atan2Deg(frame.fy, frame.fx) - edge + 90 * random.integer(4);
  if (draw < ALIGNED_SHARE + NEIGHBOUR_SHARE && nearbyDeg.length > 0) {
    return nearbyDeg[random.integer(nearbyDeg.length)]! - edge + 90 * random.integer(4);
  }
  return 360 * random.next();
}

function randomWithin(
  { prepared, nearbyDeg }: RotationContext,
  random: Random,
  bases: readonly number[],
): number | undefined {
  if (bases.length === 0) return undefined;
  const base = bases[random.integer(bases.length)]!;
  const { toleranceDeg } = prepared.item.angleRule;
  if (toleranceDeg === 0) return base;
  const draw = random.next();
  if (draw < ALIGNED_SHARE) return base;
  const edges = prepared.edgeAnglesDeg;
  if (draw < ALIGNED_SHARE + NEIGHBOUR_SHARE && nearbyDeg.length > 0 && edges.length > 0) {
    const along = nearbyDeg[random.integer(nearbyDeg.length)]!;
    const off = turnDeg(along, edges[random.integer(edges.length)]! + base, 90);
    if (Math.abs(off) <= toleranceDeg) return base + off;
  }
  return base + toleranceDeg * (2 * random.next() - 1);
}

/** A piece of a pair lies at the opposite angle to its partner's, if that one lies already. */
function paired({ prepared, cache, pair }: RotationContext, rotations: readonly number[]): number[] {
  if (pair === undefined || Number.isNaN(pair.angleDeg)) return [...rotations];
  const { angleRule } = prepared.item;
  const opposite: number[] = [];
  for (const direction of cache.directions) {
    for (const half of [0, 180]) opposite.push(direction - pair.angleDeg - angleRule.arrowDeg + half);
  }
  if (angleRule.frame === 'sheet')
    return opposite.filter((deg) => angleExcessDeg(angleRule, deg + angleRule.arrowDeg) <= 0);
  const close = rotations.filter((deg) =>
    opposite.some((other) => Math.abs(turnDeg(deg, other, 180)) <= pair.rule.toleranceDeg),
  );
  return [...close, ...opposite];
}

function distinct(rotations: readonly number[], most: number): number[] {
  const kept: number[] = [];
  for (const rotation of rotations) {
    const deg = roundDeg(rotation);
    if (kept.length < most && !kept.includes(deg)) kept.push(deg);
  }
  return kept;
}
