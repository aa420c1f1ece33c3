import { isArticleReference } from '@hidebound/leather';
import type {
  Article,
  ArticleReference,
  OrderArticle,
  OrderFile,
  OrderLeather,
  OrderPiece,
} from '@hidebound/leather';
import { freeName, patched, replacedAt, within } from './patch.js';
import type { Patch } from './patch.js';

/** What an order asks of an article, wherever the article comes from. */
export type Demand = Pick<OrderArticle, 'sets' | 'for' | 'value' | 'priority' | 'keepTogether'>;

const USUAL_DEMAND = { value: 1, priority: 0, keepTogether: 'faces on one lot' } as const;
const MOST_SETS = 10_000;

export interface NewArticle {
  readonly name: string;
  readonly goods: string;
  readonly sets: number;
}

export interface NewOrder {
  readonly name: string;
  /** ISO 8601 day. */
  readonly date: string;
  readonly method: string;
  readonly leathers: readonly OrderLeather[];
}

/** An order that nothing is in yet. It can't be kept so: a file holds one article with one piece at least. */
export function emptyOrder({ name, date, method, leathers }: NewOrder): OrderFile {
  return {
    name,
    version: '1',
    date,
    articles: [],
    leathers,
    patterns: [],
    useFrom: 'tail',
    mode: 'place all',
    cutting: { method },
    threads: [],
    hardware: [],
  };
}

export function withArticle(
  order: OrderFile,
  { name, goods, sets }: NewArticle,
  pieces: readonly OrderPiece[],
): OrderFile {
  const article: OrderArticle = {
    ...USUAL_DEMAND,
    name: freeName(name, articleNames(order)),
    goods,
    sets: within(sets, 1, MOST_SETS),
    pieces,
    beside: [],
    hardware: [],
    threads: [],
  };
  return { ...order, articles: [...order.articles, article] };
}

/** An article from a file, with the leathers that it asks for and the order does not have. */
export function withArticleFile(order: OrderFile, file: string, article: Article, sets = 1): OrderFile {
  const reference: ArticleReference = { ...USUAL_DEMAND, file, sets };
  return { ...order, articles: [...order.articles, reference], leathers: leathersFor(order, article) };
}

/** What the article asks of a leather fills in what the order leaves unsaid of it. */
function leathersFor({ leathers }: OrderFile, article: Article): readonly OrderLeather[] {
  const missing = article.leathers.filter(({ name }) => !leathers.some((each) => each.name === name));
  return [
    ...leathers.map((leather) => ({
      ...article.leathers.find(({ name }) => name === leather.name),
      ...leather,
    })),
    ...missing.map((leather): OrderLeather => ({ ...leather, hides: [] })),
  ];
}

export function withSets(order: OrderFile, index: number, sets: Demand['sets']): OrderFile {
  const count = typeof sets === 'number' ? within(sets, 1, MOST_SETS) : sets;
  return {
    ...order,
    articles: replacedAt(order.articles, index, (article) => ({ ...article, sets: count })),
  };
}

/** Only of an article that is written in the order; others keep what their file says. */
export function changeArticle(
  order: OrderFile,
  index: number,
  patch: Patch<Pick<OrderArticle, 'name' | 'goods' | 'hours'> & Demand>,
): OrderFile {
  const others = articleNames({ articles: order.articles.filter((_, i) => i !== index) });
  const named = patch.name === undefined ? patch : { ...patch, name: freeName(patch.name, others) };
  return {
    ...order,
    articles: replacedAt(order.articles, index, (article) =>
      isArticleReference(article) ? article : patched<OrderArticle>(article, named),
    ),
  };
}

/** Undefined where nothing is left to be made: an order of nothing is none. */
export function withoutArticle(order: OrderFile, index: number): OrderFile | undefined {
  const articles = order.articles.filter((_, i) => i !== index);
  return articles.length === 0 ? undefined : { ...order, articles };
}

/** The article of a file written into the order, so that it can be changed for this order alone. */
export function withArticleWritten(order: OrderFile, index: number, article: Article): OrderFile {
  const { leathers: _leathers, lastYield: _lastYield, notes: _notes, ...body } = article;
  const others = articleNames({ articles: order.articles.filter((_, i) => i !== index) });
  return {
    ...order,
    leathers: leathersFor(order, article),
    articles: replacedAt(order.articles, index, (written): OrderFile['articles'][number] => {
      if (!isArticleReference(written)) return written;
      const { file: _file, ...demand } = written;
      return { ...body, ...demand, name: freeName(body.name, others) };
    }),
  };
}

/** What an article is, without what this order asks of it: a file for later orders. */
export function articleForLater(order: OrderFile, index: number): Article | undefined {
  const written = order.articles[index];
  if (written === undefined || isArticleReference(written)) return undefined;
  const {
    sets: _sets,
    for: _for,
    value: _value,
    priority: _priority,
    keepTogether: _keep,
    ...body
  } = written;
  const names = new Set(body.pieces.map(({ leather }) => leather));
  const leathers = order.leathers
    .filter(({ name }) => names.has(name))
    .map(({ hides: _hides, preparation: _preparation, ...asked }) => asked);
  return { ...body, leathers };
}

function articleNames({ articles }: Pick<OrderFile, 'articles'>): string[] {
  return articles.flatMap((article) => (isArticleReference(article) ? [] : [article.name]));
}
