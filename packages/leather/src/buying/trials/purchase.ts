import { regionArea } from '@hidebound/geometry';
import type { Diagnostic } from '../../model/diagnostic.js';
import type { ArticleLeather, OrderLeather, ResolvedArticle, ResolvedOrder } from '../../model/order.js';
import type { LayablePiece } from '../../model/piece.js';
import { copiesPerSet } from '../../order/items.js';
import { leatherError } from '../../words/refuse.js';

/** Leather that is bought as one: leathers of an order that ask for the same hides, however they are prepared. */
export interface Purchase {
  /** Names of the leathers, in the order's order. */
  readonly leathers: readonly string[];
  readonly wants: Omit<ArticleLeather, 'name'>;
  /** The order with the pieces of these leathers alone, all of them to be laid. */
  readonly order: ResolvedOrder;
  /** Copies of pieces, and their area together, mm². */
  readonly copies: number;
  readonly piecesMm2: number;
}

/**
 * What is to be bought for an order, purchase by purchase. A leather without pieces is told and left out.
 * @throws LeatherError `buy-needs-sets` for sets "as many as fit", `nothing-to-buy` where there is no piece at all
 */
export function purchasesOf(
  order: ResolvedOrder,
  pieces: readonly LayablePiece[],
): { readonly purchases: readonly Purchase[]; readonly diagnostics: readonly Diagnostic[] } {
  const endless = order.articles.find(({ sets }) => sets === 'as many as fit');
  if (endless !== undefined) throw leatherError('buy-needs-sets', { article: endless.name });
  const diagnostics: Diagnostic[] = [];
  const groups = new Map<string, string[]>();
  for (const leather of order.leathers) {
    if (!hasPieces(order, leather.name)) {
      const params = { leather: leather.name };
      diagnostics.push({ code: 'leather-without-pieces', severity: 'note', params });
      continue;
    }
    const key = JSON.stringify(Object.entries(wantsOf(leather)).sort());
    groups.set(key, [...(groups.get(key) ?? []), leather.name]);
  }
  if (groups.size === 0) throw leatherError('nothing-to-buy', {});
  const purchases = [...groups.values()].map((leathers) => purchaseOf(order, pieces, leathers));
  return { purchases, diagnostics };
}

function hasPieces({ articles }: ResolvedOrder, leather: string): boolean {
  return articles.some(({ sets, pieces }) =>
    pieces.some((piece) => piece.leather === leather && piece.count > 0 && sets !== 0),
  );
}

function wantsOf({ tannage, temper, finish, colour, thickness }: OrderLeather): Purchase['wants'] {
  return {
    ...(tannage === undefined ? {} : { tannage }),
    ...(temper === undefined ? {} : { temper }),
    ...(finish === undefined ? {} : { finish }),
    ...(colour === undefined ? {} : { colour }),
    ...(thickness === undefined ? {} : { thickness }),
  };
}

function purchaseOf(
  order: ResolvedOrder,
  pieces: readonly LayablePiece[],
  leathers: readonly string[],
): Purchase {
  const own = ordersPart(order, leathers);
  let copies = 0;
  let piecesMm2 = 0;
  for (const { article, piece, count } of countsOf(own)) {
    const layable = pieces.find((each) => each.article === article && each.piece === piece);
    copies += count;
    if (layable !== undefined) piecesMm2 += count * regionArea(layable.region);
  }
  const first = order.leathers.find(({ name }) => name === leathers[0])!;
  return { leathers, wants: wantsOf(first), order: own, copies, piecesMm2 };
}

/** How often a piece is wanted. */
export interface PieceCount {
  readonly article: string;
  readonly piece: string;
  readonly count: number;
  readonly inLane: boolean;
}

/** Copies of every piece of an order, all sets together. */
export function countsOf(order: ResolvedOrder): PieceCount[] {
  return order.articles.flatMap((article) =>
    article.pieces.map((piece) => {
      const { plain, mirrored } = copiesPerSet(piece);
      const sets = article.sets === 'as many as fit' ? 0 : article.sets;
      return {
        article: article.name,
        piece: piece.name,
        count: sets * (plain + mirrored),
        inLane: piece.inLane,
      };
    }),
  );
}

/** The order with the pieces of some leathers alone. */
export function ordersPart(order: ResolvedOrder, leathers: readonly string[]): ResolvedOrder {
  const articles = order.articles.flatMap((article): ResolvedArticle[] => {
    const own = article.pieces.filter((piece) => leathers.includes(piece.leather));
    const names = own.map(({ name }) => name);
    const beside = article.beside.filter((pair) => pair.every((name) => names.includes(name)));
    return own.length === 0 ? [] : [{ ...article, pieces: own, beside }];
  });
  return {
    ...order,
    articles,
    leathers: order.leathers.filter(({ name }) => leathers.includes(name)),
    mode: 'place all',
  };
}
