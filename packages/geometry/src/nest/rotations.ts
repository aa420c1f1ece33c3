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
