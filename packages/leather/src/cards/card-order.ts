import type { OrderFile } from '../files/order-in-writing.js';
import type { Article, ArticleLeather, OrderArticle, OrderLeather } from '../model/order.js';
import { leatherError } from '../words/refuse.js';
import { quoteValue } from '../words/sentence.js';

/** So many sets of one article, for somebody. */
export interface CardLine {
  readonly article: Article;
  readonly sets: number;
  readonly for?: string;
  /** Where the order can name the article's file; absent: it is written out in the order. */
  readonly file?: string;
}

export interface CardOrderOptions {
  readonly name: string;
  /** ISO 8601 day. */
  readonly date: string;
  /** A cutting method of the workshop. */
  readonly cutting: string;
  /** Colours that are asked for now, by leather; "" stands for all others. */
  readonly colours: ReadonlyMap<string, string>;
}

/** Every leather, where no leather is named. */
export const ALL_LEATHERS = '';

/**
 * An order of article cards, its leathers without hides yet. An article that is ordered by several customers stands in
 * it once for each, under a name that says for whom, so that their orders share hides.
 * @throws LeatherError `card-leathers-differ` where two articles ask different things of a leather of one name
 */
export function cardOrder(lines: readonly CardLine[], options: CardOrderOptions): OrderFile {
  const { name, date, cutting, colours } = options;
  const leathers = lines.reduce<readonly ArticleLeather[]>(
    (known, { article }) =>
      article.leathers.reduce((all, leather) => join(all, leather, article.name), known),
    [],
  );
  return {
    name,
    version: '1',
    date,
    articles: lines.map((line, i) => orderArticle(line, lines.slice(0, i))),
    leathers: leathers.map((leather) => withColour({ ...leather, hides: [] }, colours)),
    patterns: [],
    useFrom: 'tail',
    mode: 'place all',
    cutting: { method: cutting },
    threads: [],
    hardware: [],
  };
}

const DEMAND = { value: 1, priority: 0, keepTogether: 'faces on one lot' } as const;

function orderArticle(line: CardLine, before: readonly CardLine[]): OrderFile['articles'][number] {
  const { article, sets, file } = line;
  const demand = { ...DEMAND, sets, ...(line.for === undefined ? {} : { for: line.for }) };
  const isAgain = before.some((each) => each.article.name === article.name);
  if (file !== undefined && !isAgain) return { file, ...demand };
  const { leathers: _leathers, lastYield: _lastYield, notes: _notes, ...body } = article;
  return {
    ...body,
    ...demand,
    name: isAgain ? nameAgain(line, before) : article.name,
  } satisfies OrderArticle;
}

/** "saddlebag, a touring club"; with a number where that is not enough. */
function nameAgain(line: CardLine, before: readonly CardLine[]): string {
  const { article, for: who } = line;
  const same = before.filter((each) => each.article.name === article.name && each.for === who).length;
  const name = who === undefined ? article.name : `${article.name}, ${who}`;
  return who !== undefined && same === 0 ? name : `${name} (${same + 1})`;
}

const QUALITIES = ['tannage', 'temper', 'finish', 'colour', 'thickness'] as const;

function join(
  all: readonly ArticleLeather[],
  leather: ArticleLeather,
  article: string,
): readonly ArticleLeather[] {
  const known = all.find(({ name }) => name === leather.name);
  if (known === undefined) return [...all, leather];
  const differs = QUALITIES.find(
    (key) =>
      known[key] !== undefined &&
      leather[key] !== undefined &&
      JSON.stringify(known[key]) !== JSON.stringify(leather[key]),
  );
  if (differs !== undefined) {
    const params = { leather: quoteValue(leather.name), article: quoteValue(article), what: differs };
    throw leatherError('card-leathers-differ', params);
  }
  return all.map((each) => (each === known ? { ...leather, ...known } : each));
}

function withColour(leather: OrderLeather, colours: ReadonlyMap<string, string>): OrderLeather {
  const colour = colours.get(leather.name) ?? colours.get(ALL_LEATHERS);
  return colour === undefined ? leather : { ...leather, colour };
}
