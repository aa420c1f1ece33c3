import { isArticleReference } from '@hidebound/leather';
import type { OrderArticle, OrderFile, OrderPiece, Part, PieceSource } from '@hidebound/leather';
import { withoutArticle } from './articles.js';
import { freeName, patched, replacedAt, within } from './patch.js';
import type { Patch } from './patch.js';

const MOST_COPIES = 10_000;

/** A piece as it is taken: one copy, and everything else as its part has it. */
export function newPiece(
  name: string,
  from: PieceSource,
  { leather, part, count = 1, mirrored = 0 }: Pick<OrderPiece, 'leather' | 'part'> & Counts,
): OrderPiece {
  const copies = within(count, 1, MOST_COPIES);
  return {
    name,
    leather,
    part,
    from,
    count: copies,
    mirrored: within(mirrored, 0, copies),
    layers: 1,
    allowanceMm: 0,
    seams: [],
    priority: 0,
    inLane: part === 'strap' && from.kind === 'strap',
  };
}

interface Counts {
  readonly count?: number | undefined;
  readonly mirrored?: number | undefined;
}

export function withPieces(order: OrderFile, article: number, pieces: readonly OrderPiece[]): OrderFile {
  return inArticle(order, article, (written) => {
    const all = [...written.pieces];
    for (const piece of pieces) {
      const taken = all.map(({ name }) => name);
      all.push({ ...piece, name: freeName(piece.name, taken) });
    }
    return { ...written, pieces: all };
  });
}

/** A new name is followed by all that names the piece: seams, and what ends up side by side. */
export function changePiece(
  order: OrderFile,
  article: number,
  index: number,
  patch: Patch<OrderPiece>,
): OrderFile {
  return inArticle(order, article, (written) => {
    const before = written.pieces[index];
    if (before === undefined) return written;
    const others = written.pieces.filter((_, i) => i !== index).map(({ name }) => name);
    const after = settled(patched(before, patch));
    const name = freeName(after.name, others);
    const pieces = replacedAt(written.pieces, index, () => ({ ...after, name }));
    return renamed({ ...written, pieces }, before.name, name);
  });
}

/** Undefined where the order has nothing left. The last piece takes its article with it. */
export function withoutPiece(order: OrderFile, article: number, index: number): OrderFile | undefined {
  const written = order.articles[article];
  if (written === undefined || isArticleReference(written)) return order;
  const gone = written.pieces[index];
  if (gone === undefined) return order;
  if (written.pieces.length === 1) return withoutArticle(order, article);
  return inArticle(order, article, (body) => ({
    ...body,
    pieces: body.pieces
      .filter((_, i) => i !== index)
      .map((piece) => ({ ...piece, seams: piece.seams.filter(({ to }) => to.piece !== gone.name) })),
    beside: body.beside.filter((pair) => !pair.includes(gone.name)),
  }));
}

/** Counts that fit each other, and a direction that says all of itself. */
function settled(piece: OrderPiece): OrderPiece {
  const count = within(piece.count, 1, MOST_COPIES);
  return { ...piece, count, mirrored: within(piece.mirrored, 0, count) };
}

function renamed(article: OrderArticle, from: string, to: string): OrderArticle {
  if (from === to) return article;
  const follow = (name: string): string => (name === from ? to : name);
  return {
    ...article,
    pieces: article.pieces.map((piece) => ({
      ...piece,
      seams: piece.seams.map((seam) => ({ ...seam, to: { ...seam.to, piece: follow(seam.to.piece) } })),
    })),
    beside: article.beside.map(([one, other]) => [follow(one), follow(other)] as const),
  };
}

function inArticle(
  order: OrderFile,
  index: number,
  change: (article: OrderArticle) => OrderArticle,
): OrderFile {
  return {
    ...order,
    articles: replacedAt(order.articles, index, (article) =>
      isArticleReference(article) ? article : change(article),
    ),
  };
}

/** Words of English and German names that tell a part; the first that stands in the name counts. */
const PART_WORDS: readonly (readonly [RegExp, Part])[] = [
  [/stra(p|ps)\b|riemen|gurt|belt|\btie\b/i, 'strap'],
  [/lining|futter/i, 'lining'],
  [/stiff|verst(ä|ae)rk|einlage/i, 'stiffener'],
  [/gusset|keil|zwickel|boden|seitenteil/i, 'gusset'],
  [/flap|klappe|(ü|ue)berschlag/i, 'flap'],
  [/pocket|tasche\b|fach/i, 'pocket'],
  [/\btab\b|lasche|keeper|schlaufe|loop/i, 'tab'],
  [/mould|mold|geformt/i, 'moulded'],
  [/\bback\b|r(ü|ue)ck/i, 'back'],
];

/** What a piece is likely to be, from its name. */
export function partOfName(name: string): Part {
  return PART_WORDS.find(([words]) => words.test(name.replace(/[-_]/g, ' ')))?.[1] ?? 'front';
}
