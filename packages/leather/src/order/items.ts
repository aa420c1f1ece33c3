import { MIRROR_X, transformRegion } from '@hidebound/geometry';
import type { AngleRule, Item, LaneNeed, Region } from '@hidebound/geometry';
import type { DirectionWish, ResolvedArticle, ResolvedPiece } from '../model/order.js';
import type { LayablePiece } from '../model/piece.js';
import { gradeOfLooks } from '../parts/effects.js';
import { mirroredArrowDeg } from '../pieces/arrow.js';
import { itemId } from './item-id.js';
import { leatherErrorAs } from '../words/refuse.js';

/** Name of the part of an item that is seen. */
export const FACE_PART = 'face';

interface PieceItemsInput {
  readonly article: ResolvedArticle;
  readonly orderPiece: ResolvedPiece;
  readonly piece: LayablePiece;
  /** Ids of the hides of its leather. */
  readonly sheets: readonly string[];
}

/** Copies per set, doubled layers counted; plain and mirrored ones apart. */
export function copiesPerSet(piece: ResolvedPiece): { readonly plain: number; readonly mirrored: number } {
  return { plain: (piece.count - piece.mirrored) * piece.layers, mirrored: piece.mirrored * piece.layers };
}

/** The items of one piece: the plain one and the mirrored one, as far as copies of them are asked for. */
export function itemsOfPiece(input: PieceItemsInput): Item[] {
  const { article, orderPiece } = input;
  const { plain, mirrored } = copiesPerSet(orderPiece);
  const items: Item[] = [];
  if (plain > 0) items.push(plainItem(input));
  if (mirrored > 0) {
    const { pair } = orderPiece;
    items.push({
      ...mirroredItem(input),
      ...(plain === 0 ? {} : { mirrorOf: itemId(article.name, orderPiece.name, false) }),
      ...(plain === 0 || pair === undefined ? {} : { pair }),
    });
  }
  return items;
}

function plainItem(input: PieceItemsInput): Item {
  const { article, orderPiece, piece } = input;
  return buildItem(input, {
    id: itemId(article.name, orderPiece.name, false),
    region: piece.region,
    face: piece.face,
    arrowDeg: piece.arrowDeg,
    isMirrored: false,
  });
}

function mirroredItem(input: PieceItemsInput): Item {
  const { article, orderPiece, piece } = input;
  return buildItem(input, {
    id: itemId(article.name, orderPiece.name, true),
    region: transformRegion(MIRROR_X, piece.region),
    face: piece.face.map((region) => transformRegion(MIRROR_X, region)),
    arrowDeg: mirroredArrowDeg(piece.arrowDeg),
    isMirrored: true,
  });
}

interface ItemShape {
  readonly id: string;
  readonly region: Region;
  readonly face: readonly Region[];
  readonly arrowDeg: number;
  readonly isMirrored: boolean;
}

function buildItem(input: PieceItemsInput, shape: ItemShape): Item {
  const { orderPiece, article } = input;
  const { looks, bearsLoad, zones, thickness, marginMm } = orderPiece;
  // The drawing shows the seen side; the stored shape the grain side. A mirror image turns angles the other way.
  const isTurnedOver = shape.isMirrored !== (orderPiece.side === 'flesh');
  return {
    id: shape.id,
    region: shape.region,
    need: {
      maxGrade: gradeOfLooks(looks.rest),
      strong: bearsLoad,
      ...(zones === undefined ? {} : { zones }),
    },
    parts: [
      { name: FACE_PART, areas: shape.face, need: { maxGrade: gradeOfLooks(looks.face), strong: false } },
    ],
    angleRule: angleRuleOf(orderPiece.direction, shape.arrowDeg, isTurnedOver),
    ...(thickness === undefined ? {} : { thickness: { ...thickness, tooThick: orderPiece.tooThick } }),
    // A finished article has a worth, its single pieces have none.
    value: 0,
    priority: orderPiece.priority,
    sheets: input.sheets,
    group: orderPiece.leather,
    ...(orderPiece.inLane ? { lane: laneNeedOf(article, orderPiece, isTurnedOver) } : {}),
    ...(marginMm === undefined ? {} : { roughMargin: marginMm }),
    isFace: isSeen(orderPiece),
  };
}

/** Parts that end up within the finished thing have no shade to match. */
function isSeen(piece: ResolvedPiece): boolean {
  return piece.part !== 'lining' && piece.part !== 'stiffener';
}

/**
 * Along and across hold either way where a half turn is as good; across holds on either side of the backbone always,
 * because left and right of it stretch alike.
 */
export function angleRuleOf(wish: DirectionWish, arrowDeg: number, isTurnedOver: boolean): AngleRule {
  const { toleranceDeg } = wish;
  const modulo = wish.halfTurn ? 180 : 360;
  switch (wish.rule) {
    case 'free':
      return { frame: 'free', arrowDeg, targetsDeg: [], toleranceDeg: 180, modulo: 360 };
    case 'along':
      return { frame: 'local', arrowDeg, targetsDeg: [0], toleranceDeg, modulo };
    case 'across':
      return { frame: 'local', arrowDeg, targetsDeg: [90], toleranceDeg, modulo: 180 };
    case 'fixed': {
      const targetDeg = isTurnedOver ? -wish.angleDeg + 0 : wish.angleDeg;
      return { frame: 'local', arrowDeg, targetsDeg: [targetDeg], toleranceDeg, modulo };
    }
  }
}

function laneNeedOf(article: ResolvedArticle, piece: ResolvedPiece, isTurnedOver: boolean): LaneNeed {
  const { from } = piece;
  if (from.kind !== 'strap' && from.kind !== 'rectangle') {
    const who = { piece: piece.name, article: article.name };
    throw leatherErrorAs('bad-value', 'lane-not-straight', who);
  }
  const hasHoles = from.kind === 'strap' && (from.strap.holes?.count ?? 0) > 0;
  return { widthMm: laneWidthMm(piece), firmEnd: hasHoles ? (isTurnedOver ? -1 : 1) : 0 };
}

/** Distance between the straight sides of a strap or rectangle, allowance included; 0 for anything else. */
export function laneWidthMm({ from, allowanceMm }: Pick<ResolvedPiece, 'from' | 'allowanceMm'>): number {
  if (from.kind === 'strap') return from.strap.widthMm + 2 * allowanceMm;
  return from.kind === 'rectangle' ? from.widthMm + 2 * allowanceMm : 0;
}
