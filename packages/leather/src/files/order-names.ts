import type { ArticleBody } from '../model/order.js';
import { nearestWord } from '../words/nearest.js';
import { leatherError } from '../words/refuse.js';
import { quoteValue } from '../words/sentence.js';
import type { KeyPath } from './text/text-tree.js';
import type { WhereOf } from './validate-hide.js';

/**
 * Proves that an article's names lead somewhere: its pieces are told apart, seams and side-by-side pairs name pieces
 * of it, and every leather is among those listed.
 * @param path leads to the article within the file
 * @throws LeatherError with the line of the name
 */
export function validateArticle(
  article: ArticleBody,
  leathers: ReadonlySet<string>,
  path: KeyPath,
  where: WhereOf,
): void {
  const title = quoteValue(article.name);
  const names = new Set<string>();
  article.pieces.forEach((piece, i) => {
    const at: KeyPath = [...path, 'pieces', i];
    const quoted = quoteValue(piece.name);
    if (names.has(piece.name)) {
      throw leatherError('piece-duplicate', { piece: quoted, article: title }, where([...at, 'name']));
    }
    names.add(piece.name);
    if (!leathers.has(piece.leather)) throw noSuchLeather(piece, leathers, where([...at, 'leather']));
  });
  const admit = (piece: string, at: KeyPath) => {
    if (names.has(piece)) return;
    const near = nearestWord(piece, names);
    const params = { piece: quoteValue(piece), article: title, ...(near === undefined ? {} : { near }) };
    throw leatherError('no-such-piece', params, where(at));
  };
  article.pieces.forEach((piece, i) =>
    piece.seams.forEach((seam, j) => admit(seam.to.piece, [...path, 'pieces', i, 'seams', j, 'to'])),
  );
  article.beside.forEach((pair, i) => pair.forEach((piece, j) => admit(piece, [...path, 'beside', i, j])));
}

function noSuchLeather(
  piece: { readonly name: string; readonly leather: string },
  leathers: ReadonlySet<string>,
  place: ReturnType<WhereOf>,
) {
  const near = nearestWord(piece.leather, leathers);
  const known = leathers.size === 0 ? 'none is' : [...leathers].join(', ');
  const params = { leather: quoteValue(piece.leather), piece: quoteValue(piece.name), known };
  return leatherError('no-such-leather', near === undefined ? params : { ...params, near }, place);
}

/** Refuses two articles of one name. */
export function refuseRepeatedArticles(
  articles: readonly ({ readonly name?: string } | undefined)[],
  where: WhereOf,
): void {
  const names = new Set<string>();
  articles.forEach((article, i) => {
    const articleName = article?.name;
    if (articleName === undefined) return;
    if (names.has(articleName)) {
      const place = where(['articles', i, 'name']);
      throw leatherError('article-duplicate', { article: quoteValue(articleName) }, place);
    }
    names.add(articleName);
  });
}
