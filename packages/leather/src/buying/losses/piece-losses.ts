import { minimumWidthBox, regionArea } from '@hidebound/geometry';
import type { Cutting, ResolvedPiece } from '../../model/order.js';
import type { LayablePiece } from '../../model/piece.js';
import { angleRuleOf, laneWidthMm } from '../../order/items.js';
import { areaInLane, areaInRepeat } from './loss-between.js';
import type { LossPiece } from './losses-of.js';

/**
 * A piece of an order as its losses see it: straps in lanes side by side, any other piece in its densest repeat with
 * the gap of the cutting method, turned by half where its direction allows it.
 * @param copies of all sets, layers and mirrored ones counted
 * @param isThorough fits hollow pieces into each other, which takes a second or so each
 */
export function lossPieceOf(
  layable: LayablePiece,
  piece: ResolvedPiece,
  options: {
    readonly copies: number;
    readonly cutting: Pick<Cutting, 'gapMm' | 'kerfMm'>;
    readonly isThorough?: boolean;
  },
): LossPiece {
  const { region, arrowDeg } = layable;
  const { copies, cutting, isThorough = false } = options;
  const rule = angleRuleOf(piece.direction, arrowDeg, false);
  const mayHalfTurn = rule.frame === 'free' || rule.modulo === 180;
  return {
    copies,
    netMm2: regionArea(region),
    inRepeatMm2: piece.inLane
      ? areaInLane(region, laneWidthMm(piece), cutting.kerfMm)
      : areaInRepeat(region, { gapMm: cutting.gapMm, mayHalfTurn, isThorough }),
    widthMm: minimumWidthBox(region.outer).width,
  };
}
