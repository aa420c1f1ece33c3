import { LeatherError } from '../leather-error.js';
import type { LeatherErrorCode } from '../leather-error.js';
import type { Order, OrderArticle, OrderPiece } from '../model/order.js';
import type { StitchWish } from '../model/stitch.js';
import { nearestName } from '../words/nearest.js';

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
  needUnique(
    'two articles',
    order.articles.map((article) => article.name),
  );
  needUnique(
    'two leathers',
    order.leathers.map((leather) => leather.name),
  );
  for (const article of order.articles) checkArticle(order, article, stage);
}

function checkArticle(order: Order, article: OrderArticle, stage: OrderStage): void {
  const names = article.pieces.map((piece) => piece.name);
  if (names.length === 0) throw bad('no-pieces', `The article "${article.name}" has no pieces.`);
  needUnique(`two pieces of the article "${article.name}"`, names);
  checkThread(order, article, article.stitch, `The article "${article.name}"`);
  for (const piece of article.pieces) {
    checkThread(order, article, piece.stitch, `The piece ${named(article, piece)}`);
    checkLeather(order, article, piece, stage);
    checkCounts(article, piece);
    for (const seam of piece.seams) {
      needPiece(`The piece ${named(article, piece)} is sewn to`, seam.to.piece, names);
    }
  }
  for (const [first, second] of article.beside) {
    needPiece(`The article "${article.name}" lays side by side`, first, names);
    needPiece(`The article "${article.name}" lays side by side`, second, names);
  }
}

function checkLeather(order: Order, article: OrderArticle, piece: OrderPiece, stage: OrderStage): void {
  const leather = order.leathers.find(({ name }) => name === piece.leather);
  if (leather === undefined) {
    const known = order.leathers.map(({ name }) => name);
    throw bad(
      'unknown-leather',
      `The piece ${named(article, piece)} is to be of the leather "${piece.leather}", which the order does not list` +
        nearestName(piece.leather, known),
    );
  }
  if (leather.hides.length === 0 && stage.hidesLater !== true) {
    throw bad(
      'no-hides',
      `The leather "${leather.name}" has no hides, but the piece ${named(article, piece)} is to be cut from it; list a hide file under it.`,
    );
  }
}

function checkThread(order: Order, article: OrderArticle, stitch: StitchWish | undefined, who: string): void {
  const names = [...article.threads, ...order.threads].map(({ name }) => name);
  if (stitch?.thread === undefined || names.includes(stitch.thread)) return;
  throw bad(
    'unknown-thread',
    `${who} is sewn with the thread "${stitch.thread}", which neither it nor the order lists under "threads"${nearestName(stitch.thread, names)}`,
  );
}

function checkCounts(article: OrderArticle, piece: OrderPiece): void {
  const { count, mirrored, layers } = piece;
  const isCount = (n: number, least: number): boolean =>
    Number.isInteger(n) && n >= least && n <= MOST_COPIES;
  if (!isCount(count, 0)) {
    throw bad(
      'bad-count',
      `The piece ${named(article, piece)} has the count ${count}; it must be a whole number, 0 or more.`,
    );
  }
  if (!isCount(mirrored, 0) || mirrored > count) {
    throw bad(
      'bad-count',
      `The piece ${named(article, piece)} asks for ${mirrored} mirrored of ${count} copies; there can't be more mirrored ones than copies.`,
    );
  }
  if (!isCount(layers, 1)) {
    throw bad(
      'bad-count',
      `The piece ${named(article, piece)} has ${layers} layers; it must be a whole number, 1 or more.`,
    );
  }
}

function needPiece(says: string, name: string, names: readonly string[]): void {
  if (names.includes(name)) return;
  throw bad(
    'unknown-piece',
    `${says} "${name}", but the article has no such piece${nearestName(name, names)}`,
  );
}

function needUnique(what: string, names: readonly string[]): void {
  const twice = names.find((name, i) => names.indexOf(name) !== i);
  if (twice !== undefined)
    throw bad('duplicate', `The order has ${what} named "${twice}"; give each its own name.`);
}

function named(article: OrderArticle, piece: OrderPiece): string {
  return `"${piece.name}" of the article "${article.name}"`;
}

function bad(code: LeatherErrorCode, message: string): LeatherError {
  return new LeatherError(code, message);
}
