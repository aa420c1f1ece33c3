import type { Article, ArticleLeather, Cutting, Order, OrderArticle, OrderLeather } from '../model/order.js';
import type { DiagnosticPlace } from '../model/diagnostic.js';
import type { Workshop } from '../model/workshop.js';
import { nearestWord } from '../words/nearest.js';
import { leatherError } from '../words/refuse.js';
import { quoteValue } from '../words/sentence.js';
import { isArticleReference } from './order-in-writing.js';
import type { ArticleReference, OrderFile, WrittenCutting } from './order-in-writing.js';
import { refuseRepeatedArticles } from './order-names.js';

/** An order whose articles are all there. */
export type OrderWithArticles = Omit<OrderFile, 'articles'> & { readonly articles: readonly OrderArticle[] };

/** Gives the article for the file name that an order writes. */
export type ReadArticle = (file: string) => Article;

/**
 * Puts the articles that an order takes from files in their places. What an article says of a leather fills in what
 * the order leaves unsaid of it; the order's own words win.
 * @throws LeatherError `article-leather-not-in-order`, `article-duplicate`, and whatever `readArticle` throws
 */
export function resolveArticles(
  order: OrderFile,
  readArticle: ReadArticle,
  options: { readonly file?: string } = {},
): OrderWithArticles {
  let { leathers } = order;
  const articles = order.articles.map((article, i) => {
    if (!isArticleReference(article)) return article;
    const read = readArticle(article.file);
    leathers = mergeLeathers(leathers, read, placeIn(options.file, `articles[${i}]`));
    return placeArticle(article, read);
  });
  refuseRepeatedArticles(articles, (path) => placeIn(options.file, `articles[${path[1]}]`));
  return { ...order, articles, leathers };
}

function placeIn(file: string | undefined, at: string): DiagnosticPlace {
  return file === undefined ? { at } : { file, at };
}

function placeArticle(reference: ArticleReference, article: Article): OrderArticle {
  const { file: _file, ...demand } = reference;
  const { leathers: _leathers, lastYield: _lastYield, notes: _notes, ...body } = article;
  return { ...body, ...demand };
}

function mergeLeathers(
  leathers: readonly OrderLeather[],
  article: Article,
  place: DiagnosticPlace,
): readonly OrderLeather[] {
  const asked = new Map(article.leathers.map((leather) => [leather.name, leather]));
  for (const name of asked.keys()) {
    if (leathers.some((leather) => leather.name === name)) continue;
    const params = { leather: quoteValue(name), article: quoteValue(article.name) };
    throw leatherError('article-leather-not-in-order', params, place);
  }
  return leathers.map((leather) => fillIn(leather, asked.get(leather.name)));
}

/** Keys that are absent come from what the article asks for. */
function fillIn(leather: OrderLeather, asked: ArticleLeather | undefined): OrderLeather {
  return { ...asked, ...leather };
}

/**
 * The whole order: articles read, cutting distances and the smallest offcut filled in from the workshop. After this
 * only what follows from a piece's part is open.
 * @throws LeatherError as `resolveArticles` does, and `no-such-method`
 */
export function completeOrder(
  order: OrderFile,
  workshop: Workshop,
  readArticle: ReadArticle,
  options: { readonly file?: string } = {},
): Order {
  const { keepMm, cutting, ...rest } = resolveArticles(order, readArticle, options);
  return {
    ...rest,
    cutting: completeCutting(cutting, workshop, placeIn(options.file, 'cutting')),
    keepMm: keepMm ?? workshop.keepMm,
  };
}

function completeCutting(written: WrittenCutting, workshop: Workshop, place: DiagnosticPlace): Cutting {
  const { method, gapMm, edgeMm, voidMm, kerfMm } = written;
  if (gapMm !== undefined && edgeMm !== undefined && voidMm !== undefined && kerfMm !== undefined) {
    return { method, gapMm, edgeMm, voidMm, kerfMm };
  }
  const usual = workshop.cuttingMethods.find((line) => line.method === method);
  if (usual === undefined) {
    const names = workshop.cuttingMethods.map((line) => line.method);
    const near = nearestWord(method, names);
    const params = { method: quoteValue(method), known: names.join(', ') };
    throw leatherError('no-such-method', near === undefined ? params : { ...params, near }, place);
  }
  return {
    method,
    gapMm: gapMm ?? usual.gapMm,
    edgeMm: edgeMm ?? usual.edgeMm,
    voidMm: voidMm ?? usual.voidMm,
    kerfMm: kerfMm ?? usual.kerfMm,
  };
}
