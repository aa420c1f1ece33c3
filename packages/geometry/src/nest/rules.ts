import { CHECK_FORGIVES_DEG } from '../tolerance.js';
import type { AngleRule, PairRule, Sheet, ThicknessNeed } from '../types/problem.js';
import { turnDeg } from './angle.js';
import { axisDistanceAt, directionDegAt, isDirected, thicknessRangeAt } from './field.js';
import type { FieldCache } from './field-cache.js';
import { cacheIndex } from './field-cache.js';
import type { Frame } from './frame.js';
import { toU, toV } from './frame.js';
import type { PreparedItem } from './prepared-item.js';
import type { Place } from './sheet-state.js';
import type { Variant } from './variant.js';

/** How the partner of a pair lies: what this one must answer. */
export interface PairLimit {
  readonly rule: PairRule;
  /** The partner's angle to its local direction, degrees; NaN if that is unknown. */
  readonly angleDeg: number;
  /** The partner's distance to its axis; NaN without an axis. */
  readonly distance: number;
}

/** What the rules look at: a place, and the item turned there. */
export interface RulePlace {
  readonly x: number;
  readonly y: number;
  readonly variant: Pick<Variant, 'prepared' | 'rotationDeg' | 'proofX' | 'proofY'>;
}

/** Quick looks forgive this much of an angle, because the cached direction is of a place nearby. */
const QUICK_ANGLE_DEG = 4;
/** A piece is turned by no more than this to suit the direction where it lies: another rotation is nearer then. */
const QUICK_TURN_DEG = 6;
/** And this much of a distance and of a thickness. */
const QUICK_DISTANCE_MM = 15;
const QUICK_THICKNESS_MM = 0.2;

/** Room for rounding a rotation to six decimals: a quarter of what the check forgives. */
const ROUNDING_DEG = CHECK_FORGIVES_DEG / 4;

/** How far an angle (of the arrow, against the frame's direction) lies off the nearest target, beyond tolerance. */
export function angleExcessDeg(rule: AngleRule, angleDeg: number): number {
  let least = Infinity;
  for (const target of rule.targetsDeg) {
    least = Math.min(least, Math.abs(turnDeg(angleDeg, target, rule.modulo)));
  }
  return least - rule.toleranceDeg;
}

/** The proof of all rules that depend on the angle and the place but not on neighbours. */
export function rulesHold(place: RulePlace, sheet: Sheet, pair: PairLimit | undefined): boolean {
  const { variant } = place;
  const { item } = variant.prepared;
  if (!angleHolds(item.angleRule, place, sheet)) return false;
  if (item.thickness !== undefined && !thicknessHolds(item.thickness, place, sheet)) return false;
  return pair === undefined || pairHolds(pair, place, sheet);
}

function angleHolds(rule: AngleRule, place: RulePlace, sheet: Sheet): boolean {
  if (rule.frame === 'free') return true;
  const arrow = rule.arrowDeg + place.variant.rotationDeg;
  if (rule.frame === 'sheet') return angleExcessDeg(rule, arrow) <= ROUNDING_DEG;
  if (rule.modulo === 360 && !isDirected(sheet.direction)) return false;
  const { proofX, proofY } = place.variant;
  for (let i = 0; i < proofX.length; i++) {
    const deg = directionDegAt(sheet.direction, place.x + proofX[i]!, place.y + proofY[i]!);
    if (Number.isNaN(deg) || angleExcessDeg(rule, arrow - deg) > ROUNDING_DEG) return false;
  }
  return true;
}

function thicknessHolds(need: ThicknessNeed, place: RulePlace, sheet: Sheet): boolean {
  if (sheet.thickness === undefined) return true;
  const { proofX, proofY } = place.variant;
  const points = sheet.thickness.readings.length === 0 ? 1 : proofX.length;
  for (let i = 0; i < points; i++) {
    const [low, high] = thicknessRangeAt(sheet.thickness, place.x + proofX[i]!, place.y + proofY[i]!);
    if (low < need.minMm || (need.tooThick === 'refuse' && high > need.maxMm)) return false;
  }
  return true;
}

/** What the partner of a piece laid here has to answer. */
export function pairLimitOf(place: RulePlace, sheet: Sheet, rule: PairRule): PairLimit {
  const x = place.x + place.variant.proofX[0]!;
  const y = place.y + place.variant.proofY[0]!;
  const arrow = place.variant.prepared.item.angleRule.arrowDeg + place.variant.rotationDeg;
  return {
    rule,
    angleDeg: arrow - directionDegAt(sheet.direction, x, y),
    distance: axisDistanceAt(sheet.direction, x, y),
  };
}

function pairHolds(limit: PairLimit, place: RulePlace, sheet: Sheet): boolean {
  const own = pairLimitOf(place, sheet, limit.rule);
  if (Number.isNaN(own.angleDeg) || Number.isNaN(limit.angleDeg)) return false;
  const apart = Math.abs(turnDeg(own.angleDeg, -limit.angleDeg, 180));
  if (apart > limit.rule.toleranceDeg + ROUNDING_DEG) return false;
  const noAxis = Number.isNaN(own.distance);
  if (noAxis !== Number.isNaN(limit.distance)) return false;
  return noAxis || Math.abs(own.distance - limit.distance) <= limit.rule.distanceMm;
}

/** A quick look whether the rules can hold at about (u, v); undefined if there is nothing to look at. */
export function quickLook(
  prepared: PreparedItem,
  sheet: Sheet,
  frame: Frame,
  cache: FieldCache,
  pair: PairLimit | undefined,
): ((variant: Variant, u: number, v: number) => boolean) | undefined {
  const { angleRule, thickness } = prepared.item;
  const isLocal = angleRule.frame === 'local';
  const readings = sheet.thickness?.readings.length ?? 0;
  const need = readings > 0 ? thickness : undefined;
  if (!isLocal && need === undefined && pair === undefined) return undefined;
  return (variant, u, v) => {
    const { proofX, proofY } = variant;
    const arrow = angleRule.arrowDeg + variant.rotationDeg;
    let least = -Infinity;
    let most = Infinity;
    for (let i = 0; i < proofX.length; i++) {
      const at = cacheIndex(
        cache,
        u + toU(frame, proofX[i]!, proofY[i]!),
        v + toV(frame, proofX[i]!, proofY[i]!),
      );
      if (need !== undefined && !quickThickness(need, cache, at)) return false;
      if (!isLocal) continue;
      const off = nearestTarget(angleRule, arrow - cache.directionDeg[at]!);
      least = Math.max(least, -off - angleRule.toleranceDeg);
      most = Math.min(most, -off + angleRule.toleranceDeg);
      if (!mayTurnWithin(least, most)) return false;
    }
    if (pair === undefined) return true;
    const at = cacheIndex(
      cache,
      u + toU(frame, proofX[0]!, proofY[0]!),
      v + toV(frame, proofX[0]!, proofY[0]!),
    );
    return quickPair(pair, arrow - cache.directionDeg[at]!, cache.axisDistance[at]!);
  };
}

/** Some small turn lies between the two, or nearly. An unknown direction leaves none. */
function mayTurnWithin(least: number, most: number): boolean {
  if (!(least <= most + 2 * QUICK_ANGLE_DEG)) return false;
  return least <= QUICK_TURN_DEG && most >= -QUICK_TURN_DEG;
}

function quickThickness(need: ThicknessNeed, cache: FieldCache, at: number): boolean {
  if (cache.thinnest[at]! < need.minMm - QUICK_THICKNESS_MM) return false;
  return need.tooThick === 'skive' || cache.thickest[at]! <= need.maxMm + QUICK_THICKNESS_MM;
}

function quickPair(limit: PairLimit, relativeDeg: number, distance: number): boolean {
  const apart = Math.abs(turnDeg(relativeDeg, -limit.angleDeg, 180));
  if (!(apart <= limit.rule.toleranceDeg + QUICK_ANGLE_DEG)) return false;
  if (Number.isNaN(distance)) return true;
  return Math.abs(distance - limit.distance) <= limit.rule.distanceMm + QUICK_DISTANCE_MM;
}

/**
 * The rotation nearest to the present one at which the local rule holds at every proof point; undefined if the
 * direction turns too much within the piece, or is unknown.
 */
export function fittedRotationDeg(place: Place, sheet: Sheet): number | undefined {
  const { variant } = place;
  const rule = variant.prepared.item.angleRule;
  if (rule.frame !== 'local') return undefined;
  const arrow = rule.arrowDeg + variant.rotationDeg;
  let low = -Infinity;
  let high = Infinity;
  for (let i = 0; i < variant.proofX.length; i++) {
    const deg = directionDegAt(sheet.direction, place.x + variant.proofX[i]!, place.y + variant.proofY[i]!);
    if (Number.isNaN(deg)) return undefined;
    const off = nearestTarget(rule, arrow - deg);
    low = Math.max(low, -off - rule.toleranceDeg);
    high = Math.min(high, -off + rule.toleranceDeg);
  }
  if (low > high) return undefined;
  const turn =
    low > 0 ? Math.min((low + high) / 2, low + 1) : high < 0 ? Math.max((low + high) / 2, high - 1) : 0;
  return variant.rotationDeg + turn;
}

/** The signed turn from the nearest target to the angle. */
function nearestTarget(rule: AngleRule, angleDeg: number): number {
  let best = Infinity;
  for (const target of rule.targetsDeg) {
    const turn = turnDeg(angleDeg, target, rule.modulo);
    if (Math.abs(turn) < Math.abs(best)) best = turn;
  }
  return best;
}

/** The sheet's thickness, where no reading tells more, is out of the item's range everywhere. */
export function isUnfitThickness(need: ThicknessNeed, sheet: Sheet): boolean {
  if (sheet.thickness === undefined || sheet.thickness.readings.length > 0) return false;
  const [low, high] = sheet.thickness.rangeMm;
  return low < need.minMm || (need.tooThick === 'refuse' && high > need.maxMm);
}
