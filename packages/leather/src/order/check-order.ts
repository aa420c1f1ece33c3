import type { Order, OrderArticle, OrderPiece } from '../model/order.js';
import type { StitchWish } from '../model/stitch.js';
import { nearestParams } from '../words/nearest.js';
import type { OrderPieceParams } from '../words/order.js';
import { leatherErrorAs } from '../words/refuse.js';

/** Copies of one piece that one order may ask for: beyond, a slip of the pen is likelier than the wish. */
const MOST_COPIES = 100_000;

/** What an order need not say yet. */
export interface OrderStage {
  /** It is reckoned before there are hides, so its leathers need not list any. */
  readonly hidesLater?: boolean;
}

/**
 * Throws `LeatherError` at the first thing in the order that contradicts itself: a name used twice, a leather or
 * piece that isn't there, more mirrored copies than copies, a leather to cut from without hides.
 */
export function checkOrder(order: Order, stage: OrderStage = {}): void {
  const article = firstTwice(order.articles.map(({ name }) => name));
  if (article !== undefined) throw leatherErrorAs('duplicate', 'order-article-twice', { name: article });
  const leather = firstTwice(order.leathers.map(({ name }) => name));
  if (leather !== undefined) throw leatherErrorAs('duplicate', 'order-leather-twice', { name: leather });
  for (const each of order.articles) checkArticle(order, each, stage);
}

function checkArticle(order: Order, article: OrderArticle, stage: OrderStage): void {
  const names = article.pieces.map((piece) => piece.name);
  const title = article.name;
  if (names.length === 0) throw leatherErrorAs('no-pieces', 'article-without-pieces', { article: title });
  const twice = firstTwice(names);
  if (twice !== undefined) {
    throw leatherErrorAs('duplicate', 'order-piece-twice', { name: twice, article: title });
  }
  checkArticleThread(order, article);
  for (const piece of article.pieces) {
    checkPieceThread(order, article, piece);
    checkLeather(order, article, piece, stage);
    checkCounts(article, piece);
    for (const { to } of piece.seams) {
      if (names.includes(to.piece)) continue;
      const params = { ...named(article, piece), wanted: to.piece, ...nearestParams(to.piece, names) };
      throw leatherErrorAs('unknown-piece', 'seam-piece-unknown', params);
    }
  }
  const wanted = article.beside.flat().find((name) => !names.includes(name));
  if (wanted === undefined) return;
  const params = { article: title, wanted, ...nearestParams(wanted, names) };
  throw leatherErrorAs('unknown-piece', 'beside-piece-unknown', params);
}

function checkLeather(order: Order, article: OrderArticle, piece: OrderPiece, stage: OrderStage): void {
  const leather = order.leathers.find(({ name }) => name === piece.leather);
  const who = { ...named(article, piece), leather: piece.leather };
  if (leather === undefined) {
    const known = order.leathers.map(({ name }) => name);
    const params = { ...who, ...nearestParams(piece.leather, known) };
    throw leatherErrorAs('unknown-leather', 'piece-leather-unknown', params);
  }
  if (leather.hides.length === 0 && stage.hidesLater !== true) {
    throw leatherErrorAs('no-hides', 'leather-without-hides', who);
  }
}

function checkArticleThread(order: Order, article: OrderArticle): void {
  const asked = unknownThread(order, article, article.stitch);
  if (asked === undefined) return;
  throw leatherErrorAs('unknown-thread', 'article-thread-unknown', { article: article.name, ...asked });
}

function checkPieceThread(order: Order, article: OrderArticle, piece: OrderPiece): void {
  const asked = unknownThread(order, article, piece.stitch);
  if (asked === undefined) return;
  throw leatherErrorAs('unknown-thread', 'piece-thread-unknown', { ...named(article, piece), ...asked });
}

function unknownThread(order: Order, article: OrderArticle, stitch: StitchWish | undefined) {
  const names = [...article.threads, ...order.threads].map(({ name }) => name);
  const thread = stitch?.thread;
  if (thread === undefined || names.includes(thread)) return undefined;
  return { thread, ...nearestParams(thread, names) };
}

function checkCounts(article: OrderArticle, piece: OrderPiece): void {
  const { count, mirrored, layers } = piece;
  const who = named(article, piece);
  const isCount = (n: number, least: number): boolean =>
    Number.isInteger(n) && n >= least && n <= MOST_COPIES;
  if (!isCount(count, 0)) throw leatherErrorAs('bad-count', 'piece-count-bad', { ...who, count });
  if (!isCount(mirrored, 0) || mirrored > count) {
    throw leatherErrorAs('bad-count', 'piece-mirrored-bad', { ...who, mirrored, count });
  }
  if (!isCount(layers, 1)) throw leatherErrorAs('bad-count', 'piece-layers-bad', { ...who, layers });
}

function firstTwice(names: readonly string[]): string | undefined {
  return names.find((name, i) => names.indexOf(name) !== i);
}

function named(article: OrderArticle, piece: OrderPiece): OrderPieceParams {
  return { piece: piece.name, article: article.name };
}
