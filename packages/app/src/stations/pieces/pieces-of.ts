import { isArticleReference } from '@hidebound/leather';
import type { OrderPiece } from '@hidebound/leather';
import type { App } from '../../app/app.js';
import { articleFile, orderOf } from './bench.js';

/** The pieces of an article, written in the order or in the file that it names. */
export function piecesOfArticle(app: App, index: number): readonly OrderPiece[] {
  const article = orderOf(app)?.articles[index];
  if (article === undefined) return [];
  return isArticleReference(article) ? (articleFile(app, article.file)?.pieces ?? []) : article.pieces;
}
