import type { LayablePiece } from '../../model/piece.js';
import type { CutSizeRule, Span } from '../../model/workshop-rules.js';
import type { Workshop } from '../../model/workshop.js';
import { copiesPerSet } from '../../order/items.js';
import { figureOf, middleOf } from '../../workshop/figures.js';
import { outlineOfCut } from '../losses/loss-at-edge.js';
import { lossesOf } from '../losses/losses-of.js';
import type { LossPiece } from '../losses/losses-of.js';
import { lossPieceOf } from '../losses/piece-losses.js';
import type { Purchase } from '../trials/purchase.js';

/** What an order is likely to take of hides of one kind, by formula: the likely need, and what becomes of it. mm². */
export interface QuickNeed {
  readonly likelyMm2: number;
  readonly losses: NeedLosses;
}

/** What the pieces take, and what is lost beside them, mm². */
export interface NeedLosses {
  readonly piecesMm2: number;
  readonly betweenMm2: number;
  readonly edgeMm2: number;
  readonly flawsMm2: number;
}

/** What of the hides the formula looks at. */
export interface QuickHides {
  readonly rule: CutSizeRule;
  readonly areaMm2: Span;
  readonly usableShare: Span;
}

/** The pieces of a purchase as their losses see them. */
export function lossPiecesOf({ order }: Purchase, pieces: readonly LayablePiece[]): LossPiece[] {
  return order.articles.flatMap((article) =>
    article.pieces.flatMap((piece) => {
      const layable = pieces.find((own) => own.article === article.name && own.piece === piece.name);
      const { plain, mirrored } = copiesPerSet(piece);
      const copies = article.sets === 'as many as fit' ? 0 : article.sets * (plain + mirrored);
      if (layable === undefined || copies === 0) return [];
      return [lossPieceOf(layable, piece, { copies, cutting: order.cutting })];
    }),
  );
}

/**
 * The likely need without any layout: the three losses one after the other (`lossesOf`), times what trial layouts take
 * beyond them, a figure of the workshop: unlike pieces that stand in each other's way, directions, zones and looks.
 */
export function quickNeed(
  purchase: Purchase,
  pieces: readonly LossPiece[],
  { rule, areaMm2, usableShare }: QuickHides,
  workshop: Pick<Workshop, 'figures'>,
): QuickNeed {
  const { cutting } = purchase.order;
  const hideMm2 = middleOf(areaMm2);
  const { likely } = lossesOf({
    pieces,
    hide: { areaMm2: hideMm2, outlineMm: outlineOfCut(rule, hideMm2) },
    usableShare,
    edgeMm: cutting.edgeMm,
    workshop,
  });
  const beyond = 1 + middleOf(figureOf(workshop, 'need beyond the three losses').value) / 100;
  const betweenMm2 = likely.interlockedMm2 - likely.netMm2;
  return {
    likelyMm2: likely.buyMm2 * beyond,
    losses: {
      piecesMm2: likely.netMm2,
      betweenMm2: betweenMm2 + likely.buyMm2 * (beyond - 1),
      edgeMm2: likely.soundMm2 - likely.interlockedMm2,
      flawsMm2: likely.buyMm2 - likely.soundMm2,
    },
  };
}
