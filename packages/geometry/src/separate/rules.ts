import { turnDeg } from '../nest/angle.js';
import type { FieldCache } from '../nest/field-cache.js';
import { cacheIndex } from '../nest/field-cache.js';
import { roundedPlace } from '../nest/frame.js';
import type { Layout } from '../nest/layout.js';
import type { PreparedItem } from '../nest/prepared-item.js';
import type { PairLimit, RulePlace } from '../nest/rules.js';
import { angleExcessDeg, pairLimitOf, rulesHold } from '../nest/rules.js';
import { sinCosDeg } from '../number/trigonometry.js';
import { EXCESS_DEG, LOOK_MARGIN_APART_MM, LOOK_MARGIN_DEG, LOOK_MARGIN_MM } from './constants.js';
import { originOf } from './places.js';
import type { Turned } from './turned.js';
import type { Rules, World } from './world.js';

/** A piece's copy and the piece that it forms a pair with, if both lie in the world. */
export interface Mate {
  readonly piece: number;
  /** The item that the pair's rule stands on. */
  readonly mirrored: PreparedItem;
}

/**
 * Rules about direction, thickness and pairs. Undefined if no piece has any. `world` is asked for late: it is made
 * with these rules.
 */
export function placeRules(
  layout: Layout,
  prepared: readonly PreparedItem[],
  mates: readonly (Mate | undefined)[],
  world: () => World,
): Rules | undefined {
  const isBound = prepared.map(
    ({ item }, i) =>
      mates[i] !== undefined || item.angleRule.frame === 'local' || item.thickness !== undefined,
  );
  if (!isBound.includes(true)) return undefined;
  return {
    look: (piece, sheet, turned, x, y) =>
      isBound[piece] === true
        ? look(layout, prepared[piece]!, mates[piece], world(), sheet, turned, x, y)
        : 0,
    prove: (piece, sheet, turned, x, y) =>
      isBound[piece] === true && !proven(layout, prepared[piece]!, mates[piece], world(), sheet, turned, x, y)
        ? 1
        : 0,
  };
}

function look(
  layout: Layout,
  prepared: PreparedItem,
  mate: Mate | undefined,
  world: World,
  sheet: number,
  turned: Turned,
  x: number,
  y: number,
): number {
  const cache = layout.fields[sheet]!;
  const { angleRule, thickness } = prepared.item;
  const isLocal = angleRule.frame === 'local';
  const need = (layout.problem.sheets[sheet]!.thickness?.readings.length ?? 0) > 0 ? thickness : undefined;
  let excess = 0;
  if (isLocal || need !== undefined) {
    const { proofPoints } = prepared;
    const { cos, sin } = turned;
    const arrow = angleRule.arrowDeg + turned.deg;
    const margin = Math.min(LOOK_MARGIN_DEG, angleRule.toleranceDeg / 4);
    for (let k = 0; k < proofPoints.length; k += 2) {
      const px = proofPoints[k]! - turned.shape.centreX;
      const py = proofPoints[k + 1]! - turned.shape.centreY;
      const at = cacheIndex(cache, x + px * cos - py * sin, y + px * sin + py * cos);
      if (need !== undefined) {
        const isThin = cache.thinnest[at]! < need.minMm + LOOK_MARGIN_MM;
        const isThick = need.tooThick === 'refuse' && cache.thickest[at]! > need.maxMm - LOOK_MARGIN_MM;
        if (isThin || isThick) excess = Math.max(excess, 1);
      }
      if (!isLocal) continue;
      const direction = cache.directionDeg[at]!;
      const off = Number.isNaN(direction)
        ? EXCESS_DEG
        : angleExcessDeg(angleRule, arrow - direction) + margin;
      if (off > 0) excess = Math.max(excess, off / EXCESS_DEG);
    }
  }
  return mate === undefined
    ? excess
    : excess + lookAtMate(cache, layout, prepared, mate, world, turned, x, y);
}

function lookAtMate(
  cache: FieldCache,
  layout: Layout,
  prepared: PreparedItem,
  mate: Mate,
  world: World,
  turned: Turned,
  x: number,
  y: number,
): number {
  const sheet = world.sheetOf[mate.piece]!;
  if (sheet < 0) return 0;
  const rule = mate.mirrored.item.pair!;
  const other = world.turned[mate.piece]!;
  const theirs = layout.fields[sheet]!;
  const own = fieldAt(cache, turned, prepared, x, y);
  const its = fieldAt(
    theirs,
    other,
    preparedOf(layout, world, mate.piece),
    world.x[mate.piece]!,
    world.y[mate.piece]!,
  );
  const apart = Math.abs(turnDeg(own.relativeDeg, -its.relativeDeg, 180));
  if (Number.isNaN(apart)) return 1;
  const off = apart - rule.toleranceDeg + Math.min(LOOK_MARGIN_DEG, rule.toleranceDeg / 4);
  const far = Math.abs(own.axis - its.axis) - rule.distanceMm + LOOK_MARGIN_APART_MM;
  return Math.max(0, off / EXCESS_DEG) + (far > 0 ? Math.min(1, far / rule.distanceMm) : 0);
}

function preparedOf(layout: Layout, world: World, piece: number): PreparedItem {
  return layout.prepared.items[world.kindOf[piece]!]!;
}

function fieldAt(
  cache: FieldCache,
  turned: Turned,
  prepared: PreparedItem,
  x: number,
  y: number,
): { relativeDeg: number; axis: number } {
  const px = prepared.proofPoints[0]! - turned.shape.centreX;
  const py = prepared.proofPoints[1]! - turned.shape.centreY;
  const at = cacheIndex(cache, x + px * turned.cos - py * turned.sin, y + px * turned.sin + py * turned.cos);
  return {
    relativeDeg: prepared.item.angleRule.arrowDeg + turned.deg - cache.directionDeg[at]!,
    axis: cache.axisDistance[at]!,
  };
}

function proven(
  layout: Layout,
  prepared: PreparedItem,
  mate: Mate | undefined,
  world: World,
  sheet: number,
  turned: Turned,
  x: number,
  y: number,
): boolean {
  const place = rulePlaceOf(world, prepared, sheet, turned, x, y);
  return rulesHold(place, layout.problem.sheets[sheet]!, mateLimit(layout, mate, world));
}

function rulePlaceOf(
  world: World,
  prepared: PreparedItem,
  sheet: number,
  turned: Turned,
  x: number,
  y: number,
): RulePlace {
  const { proofPoints } = prepared;
  const { sin, cos } = sinCosDeg(turned.deg);
  const proofX = new Float64Array(proofPoints.length / 2);
  const proofY = new Float64Array(proofPoints.length / 2);
  for (let k = 0; k < proofX.length; k++) {
    const px = proofPoints[2 * k]!;
    const py = proofPoints[2 * k + 1]!;
    proofX[k] = px * cos - py * sin;
    proofY[k] = px * sin + py * cos;
  }
  const origin = originOf(turned, x, y);
  const place = roundedPlace(world.sheets[sheet]!.frame, origin.u, origin.v);
  return { ...place, variant: { prepared, rotationDeg: turned.deg, proofX, proofY } };
}

function mateLimit(layout: Layout, mate: Mate | undefined, world: World): PairLimit | undefined {
  if (mate === undefined || world.sheetOf[mate.piece]! < 0) return undefined;
  const { piece, mirrored } = mate;
  const sheet = world.sheetOf[piece]!;
  const own = preparedOf(layout, world, piece);
  const place = rulePlaceOf(world, own, sheet, world.turned[piece]!, world.x[piece]!, world.y[piece]!);
  return pairLimitOf(place, layout.problem.sheets[sheet]!, mirrored.item.pair!);
}
