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

/** A kind of piece as the formula sees it. */
export interface QuickPiece extends LossPiece {
  readonly inLane: boolean;
}

/** The pieces of a purchase as their losses see them. */
export function lossPiecesOf({ order }: Purchase, pieces: readonly LayablePiece[]): QuickPiece[] {
  return order.articles.flatMap((article) =>
    article.pieces.flatMap((piece) => {
      const layable = pieces.find((own) => own.article === article.name && own.piece === piece.name);
      const { plain, mirrored } = copiesPerSet(piece);
      const copies = article.sets === 'as many as fit' ? 0 : article.sets * (plain + mirrored);
      if (layable === undefined || copies === 0) return [];
      const lossPiece = lossPieceOf(layable, piece, { copies, cutting: order.cutting });
      return [{ ...lossPiece, inLane: piece.inLane }];
    }),
  );
}

/**
 * The likely need without any layout: the three losses one after the other (`lossesOf`), times what trial layouts take
 * beyond them, figures of the workshop: unlike pieces that stand in each other's way, directions, zones and looks, and
 * for straps the long sound runs that they need.
 */
export function quickNeed(
  purchase: Purchase,
  pieces: readonly QuickPiece[],
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
  const beyond = 1 + beyondShare(pieces, workshop);
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

/** What trial layouts take beyond the three losses: of straps in lanes another share than of all else. */
function beyondShare(pieces: readonly QuickPiece[], workshop: Pick<Workshop, 'figures'>): number {
  const share = (name: string): number => middleOf(figureOf(workshop, name).value) / 100;
  const netMm2 = (own: readonly QuickPiece[]): number =>
    own.reduce((sum, { copies, netMm2: net }) => sum + copies * net, 0);
  const all = netMm2(pieces);
  const ofStraps = all === 0 ? 0 : netMm2(pieces.filter(({ inLane }) => inLane)) / all;
  return (
    (1 - ofStraps) * share('need beyond the three losses') +
    ofStraps * share('need of straps beyond the three losses')
  );
}
