import { regionArea } from '@hidebound/geometry';
import type { ResolvedArticle, ResolvedOrder } from '../model/order.js';
import type { LayablePiece } from '../model/piece.js';
import { copiesPerSet } from '../order/items.js';

/** Leather that an article's pieces take, all sets together. */
export interface PieceArea {
  readonly article: string;
  readonly piece: string;
  readonly leather: string;
  /** In a set. */
  readonly copies: number;
  /** Of one copy, mm². */
  readonly oneMm2: number;
  /** Of all copies of all sets. */
  readonly allMm2: number;
}

/** The area of every piece of an order, for so many sets of each article. */
export function pieceAreas(
  order: ResolvedOrder,
  pieces: readonly LayablePiece[],
  setsOf: (article: ResolvedArticle) => number,
): PieceArea[] {
  return order.articles.flatMap((article) =>
    article.pieces.map((piece): PieceArea => {
      const laid = pieces.find((each) => each.article === article.name && each.piece === piece.name);
      const oneMm2 = laid === undefined ? 0 : regionArea(laid.region);
      const { plain, mirrored } = copiesPerSet(piece);
      const copies = plain + mirrored;
      return {
        article: article.name,
        piece: piece.name,
        leather: piece.leather,
        copies,
        oneMm2,
        allMm2: oneMm2 * copies * setsOf(article),
      };
    }),
  );
}
