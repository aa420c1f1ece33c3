import type { Diagnostic } from '../model/diagnostic.js';
import type { ResolvedArticle, ResolvedOrder } from '../model/order.js';
import type { StitchSeam } from '../model/stitch.js';
import type { Workshop } from '../model/workshop.js';
import { noMoney } from '../units/exact-money.js';
import { leatherError } from '../words/refuse.js';
import type {
  ArticleCost,
  CostSheet,
  CustomerCost,
  HideCostLine,
  KindTotal,
  LeatherCostLine,
  MissingPrice,
  PieceCost,
} from './cost-sheet.js';
import { certain, coinSpan, sumSpans, timesSpan } from './cost-span.js';
import type { CostSpan } from './cost-span.js';
import { SUM_KINDS } from './cost-sheet.js';
import { shareOfLine } from './share-of-line.js';
import { minusSpan, priceOfSet, taxWithin, toRow } from './set-price.js';
import type { MaterialLine, SetPrice } from './set-price.js';
import { hardwareLines, orderHardware, orderThread, threadLines } from './thread-and-hardware.js';

/** All that is known of an order's costs before they are added up. */
export interface SheetInput {
  readonly order: ResolvedOrder;
  readonly workshop: Workshop;
  readonly seams: readonly StitchSeam[];
  readonly setsOf: (article: ResolvedArticle) => number;
  /** Leather and liquids of all sets of an article. */
  readonly materialsOf: (article: ResolvedArticle) => readonly MaterialLine[];
  /** Leather that an article takes, mm²: what is for the whole order is shared by it. */
  readonly leatherMm2Of: (article: ResolvedArticle) => number;
  readonly piecesOf: (article: ResolvedArticle) => readonly PieceCost[];
  readonly hides: readonly HideCostLine[];
  readonly leathers: readonly LeatherCostLine[];
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * Puts the cost sheet of an order together: a price for each article, what each customer pays, where the money goes.
 * @throws LeatherError `mixed-currencies`, `nothing-priced`
 */
export function buildSheet(input: SheetInput): CostSheet {
  const { order, workshop } = input;
  const articles = order.articles.filter((article) => input.setsOf(article) > 0);
  const needs = articles.map((article) => ({
    article,
    lines: linesOfSet(article, input),
    hours: hoursOfSet(article, input),
  }));
  const currency = currencyOf(
    needs.flatMap(({ lines }) => lines),
    workshop,
  );
  const priced = needs.map(({ article, lines, hours }): PricedArticle => {
    const setNeeds = { lines, currency, ...(hours === undefined ? {} : { hours }) };
    return { article, sets: input.setsOf(article), set: priceOfSet(setNeeds, workshop), lines };
  });
  const total = totalOf(priced, currency);
  return {
    currency,
    articles: priced.map((each) => articleCost(each, input)),
    customers: customersOf(priced, workshop, currency),
    kinds: kindTotals(priced),
    ...sumFields(total, workshop),
    ...(workshop.taxPercent === undefined ? {} : { taxPercent: workshop.taxPercent }),
    hides: input.hides,
    leathers: input.leathers,
    ...findingsOf(priced, input),
  };
}

interface PricedArticle {
  readonly article: ResolvedArticle;
  readonly sets: number;
  readonly set: SetPrice;
  readonly lines: readonly MaterialLine[];
}

function linesOfSet(article: ResolvedArticle, input: SheetInput): MaterialLine[] {
  const { order, workshop, seams } = input;
  const own = [...threadLines(article, order, seams, workshop), ...hardwareLines(article, workshop)];
  const all = order.articles.flatMap((each) => threadLines(each, order, seams, workshop));
  const used = new Set(all.map(({ name }) => name));
  const shared = [...orderThread(order, used, workshop), ...orderHardware(order, workshop)];
  const share = shareOfOrder(article, input);
  const inSet = 1 / input.setsOf(article);
  const materials = input.materialsOf(article).map((line) => shareOfLine(line, inSet));
  const kind =
    (...kinds: readonly MaterialLine['kind'][]) =>
    (line: MaterialLine) =>
      kinds.includes(line.kind);
  return [
    ...materials.filter(kind('leather')),
    ...own.filter(kind('thread')),
    ...own.filter(kind('hardware')),
    ...shared.map((line) => shareOfLine(line, share)),
    ...materials.filter(kind('liquid')),
  ];
}

/** Hours of one set, with its share of those that are for the whole order; none where nobody says any. */
function hoursOfSet(article: ResolvedArticle, input: SheetInput): number | undefined {
  const { hours: shared } = input.order;
  if (article.hours === undefined && shared === undefined) return undefined;
  return (article.hours ?? 0) + (shared ?? 0) * shareOfOrder(article, input);
}

/** What of the order as a whole falls to one set of an article: by the leather that it takes. */
function shareOfOrder(article: ResolvedArticle, { order, leatherMm2Of, setsOf }: SheetInput): number {
  const whole = order.articles.reduce((sum, each) => sum + leatherMm2Of(each), 0);
  return whole === 0 ? 0 : leatherMm2Of(article) / whole / setsOf(article);
}

function currencyOf(lines: readonly MaterialLine[], { hourlyRate }: Workshop): string {
  const currency =
    lines.find(({ cost }) => cost !== undefined)?.cost?.likely.currency ?? hourlyRate?.currency;
  if (currency === undefined) throw leatherError('nothing-priced', {});
  return currency;
}

function sumOf({ set, sets }: PricedArticle): CostSpan {
  return timesSpan(set.price, sets);
}

function totalOf(priced: readonly PricedArticle[], currency: string): CostSpan {
  const lines = priced.map((each) => ({ cost: sumOf(each), place: each.article.name }));
  return sumSpans([...lines, { cost: certain(noMoney(currency)), place: 'all else' }])!;
}

function sumFields(total: CostSpan, workshop: Workshop): Pick<CostSheet, 'sum' | 'taxInSum' | 'beforeTax'> {
  const tax = taxWithin(total, workshop);
  return { sum: coinSpan(total), taxInSum: coinSpan(tax), beforeTax: coinSpan(minusSpan(total, tax)) };
}

function articleCost(priced: PricedArticle, { workshop, piecesOf }: SheetInput): ArticleCost {
  const { article, sets, set } = priced;
  return {
    article: article.name,
    goods: article.goods,
    ...(article.for === undefined ? {} : { for: article.for }),
    sets,
    rows: set.parts.map(toRow),
    price: coinSpan(set.price),
    ...sumFields(sumOf(priced), workshop),
    pieces: piecesOf(article),
  };
}

/** Customers in the order in which they are first named. */
function customersOf(priced: readonly PricedArticle[], workshop: Workshop, currency: string): CustomerCost[] {
  const names = [...new Set(priced.map(({ article }) => article.for))];
  return names.map((name) => {
    const own = priced.filter(({ article }) => article.for === name);
    return {
      ...(name === undefined ? {} : { for: name }),
      articles: own.map(({ article }) => article.name),
      ...sumFields(totalOf(own, currency), workshop),
    };
  });
}

function kindTotals(priced: readonly PricedArticle[]): KindTotal[] {
  const parts = priced.flatMap(({ set, sets }) =>
    set.parts.map(({ row, cost }) => ({ kind: row.kind, cost: cost && timesSpan(cost, sets) })),
  );
  const kinds = [...new Set(parts.map(({ kind }) => kind))].filter((kind) => !SUM_KINDS.has(kind));
  return KIND_ORDER.filter((kind) => kinds.includes(kind)).flatMap((kind): KindTotal[] => {
    const own = parts.flatMap((part) =>
      part.kind === kind && part.cost !== undefined ? [{ cost: part.cost, place: kind }] : [],
    );
    const sum = sumSpans(own);
    return sum === undefined ? [] : [{ kind, cost: coinSpan(sum) }];
  });
}

const KIND_ORDER: readonly KindTotal['kind'][] = [
  'leather',
  'thread',
  'hardware',
  'liquid',
  'supplies',
  'return on materials',
  'work',
  'overhead',
  'profit',
  'rounding',
  'tax',
];

function findingsOf(
  priced: readonly PricedArticle[],
  { workshop, diagnostics }: SheetInput,
): Pick<CostSheet, 'withoutPrice' | 'diagnostics'> {
  const missing = new Map<string, MissingPrice>();
  for (const { lines, set } of priced) {
    for (const { kind, name, unit, cost } of lines) {
      if (cost === undefined) missing.set(JSON.stringify([kind, name]), { kind, name, unit });
    }
    const hasWork = set.parts.some(({ row }) => row.kind === 'work');
    if (hasWork && workshop.hourlyRate === undefined) {
      missing.set('work', { kind: 'work', name: 'an hour of work', unit: 'h' });
    }
  }
  const withoutPrice = [...missing.values()];
  return {
    withoutPrice,
    diagnostics: [
      ...diagnostics,
      ...withoutPrice.map(noPrice),
      ...priced.filter(({ set }) => !set.parts.some(({ row }) => row.kind === 'work')).map(noHours),
    ],
  };
}

function noPrice({ kind, name }: MissingPrice): Diagnostic {
  return { code: `no-price-${kind}`, severity: 'warning', params: { name } };
}

function noHours({ article }: PricedArticle): Diagnostic {
  return { code: 'no-hours', severity: 'note', params: { article: article.name } };
}
