import { isArticleReference } from '@hidebound/leather';
import type { OrderFile, OrderLeather, WrittenCutting } from '@hidebound/leather';
import { freeName, patched, replacedAt } from './patch.js';
import type { Patch } from './patch.js';

export function withLeather(order: OrderFile, leather: OrderLeather): OrderFile {
  const names = order.leathers.map(({ name }) => name);
  return {
    ...order,
    leathers: [...order.leathers, { ...leather, name: freeName(leather.name, names) }],
  };
}

/** Pieces that are cut from a leather follow its new name. */
export function changeLeather(order: OrderFile, index: number, patch: Patch<OrderLeather>): OrderFile {
  const before = order.leathers[index];
  if (before === undefined) return order;
  const others = order.leathers.filter((_, i) => i !== index).map(({ name }) => name);
  const after = patched(before, patch);
  const name = freeName(after.name, others);
  const leathers = replacedAt(order.leathers, index, () => ({ ...after, name }));
  return { ...order, leathers, articles: followName(order.articles, before.name, name) };
}

function followName(articles: OrderFile['articles'], from: string, to: string): OrderFile['articles'] {
  if (from === to) return articles;
  return articles.map((article) => {
    if (isArticleReference(article)) return article;
    const pieces = article.pieces.map((piece) =>
      piece.leather === from ? { ...piece, leather: to } : piece,
    );
    return { ...article, pieces };
  });
}

/** A leather that a piece is cut from stays. */
export function withoutLeather(order: OrderFile, index: number): OrderFile {
  const name = order.leathers[index]?.name;
  if (name === undefined || isLeatherUsed(order, name)) return order;
  return { ...order, leathers: order.leathers.filter((_, i) => i !== index) };
}

export function isLeatherUsed({ articles }: OrderFile, name: string): boolean {
  return articles.some(
    (article) => !isArticleReference(article) && article.pieces.some(({ leather }) => leather === name),
  );
}

/** A hide that was there is taken away; one that was not comes last. */
export function toggleHide(order: OrderFile, index: number, hide: string): OrderFile {
  return inLeather(order, index, (leather) => ({
    ...leather,
    hides: leather.hides.includes(hide)
      ? leather.hides.filter((each) => each !== hide)
      : [...leather.hides, hide],
  }));
}

/** To be used sooner: one place forward. */
export function hideForward(order: OrderFile, index: number, hide: string): OrderFile {
  return inLeather(order, index, (leather) => {
    const at = leather.hides.indexOf(hide);
    if (at < 1) return leather;
    const hides = leather.hides.filter((each) => each !== hide);
    return { ...leather, hides: [...hides.slice(0, at - 1), hide, ...hides.slice(at - 1)] };
  });
}

/** Another method brings its own distances; what was set by hand belonged to the one before. */
export function withMethod(order: OrderFile, method: string): OrderFile {
  return order.cutting.method === method ? order : { ...order, cutting: { method } };
}

export function changeCutting(order: OrderFile, patch: Patch<WrittenCutting>): OrderFile {
  return { ...order, cutting: patched(order.cutting, patch) };
}

function inLeather(
  order: OrderFile,
  index: number,
  change: (leather: OrderLeather) => OrderLeather,
): OrderFile {
  return { ...order, leathers: replacedAt(order.leathers, index, change) };
}
