import type { ArticleCost, CostKind, CostSheet, Money, CoinSpan } from '@hidebound/leather';
import type { Report, ReportBlock, ReportColumn } from '../report/report.js';
import {
  amountText,
  areaText,
  bareSpan,
  percentText,
  quantityText,
  rowName,
  spanText,
} from './cost-words.js';

export interface CostReportInput {
  readonly sheet: CostSheet;
  /** Below the title: "Bicycle goods, week 10, version 3, 2026-03-02". */
  readonly subtitle: string;
  /** Reckoned from what is likely to be bought, not from a layout. */
  readonly isEstimate: boolean;
}

/** What an order costs and where the money goes, then article by article. */
export function costReport({ sheet, subtitle, isEstimate }: CostReportInput): Report {
  return {
    title: isEstimate ? 'What it will cost' : 'What it costs',
    subtitle,
    blocks: [
      { kind: 'text', tone: 'answer', text: answer(sheet) },
      ...withoutPrice(sheet),
      { kind: 'section', title: `Prices, ${taxWords(sheet)}` },
      priceTable(sheet),
      ...customersTable(sheet),
      { kind: 'section', title: 'Where the money goes' },
      moneyBars(sheet),
      ...hides(sheet),
      ...leathers(sheet),
      ...sheet.articles.flatMap((article) => articleBlocks(article, sheet)),
      { kind: 'text', tone: 'soft', text: ROUNDED_WORDS },
    ],
  };
}

const ROUNDED_WORDS =
  'Sums are reckoned exactly and rounded where they are shown, so that a sum may differ by a cent from its printed parts.';

function answer(sheet: CostSheet): string {
  const without = sheet.withoutPrice.length === 0 ? '' : ', without what has no price';
  const before = sheet.taxPercent === undefined ? '' : ` with tax, ${spanText(sheet.beforeTax)} before tax`;
  return `The order comes to ${spanText(sheet.sum)}${before}${without}.`;
}

function taxWords({ taxPercent }: CostSheet): string {
  return taxPercent === undefined ? 'no tax reckoned' : `with tax of ${percentText(flat(taxPercent))}`;
}

function flat(value: number) {
  return { low: value, likely: value, high: value };
}

function withoutPrice({ withoutPrice: missing }: CostSheet): ReportBlock[] {
  if (missing.length === 0) return [];
  const names = missing.map(({ name }) => name).join(', ');
  return [
    {
      kind: 'text',
      tone: 'plain',
      text: `No price: ${names}. All sums are without ${missing.length === 1 ? 'it' : 'them'}.`,
    },
  ];
}

const left = (head: string): ReportColumn => ({ head, align: 'left' });
const right = (head: string): ReportColumn => ({ head, align: 'right' });

/** What each article costs. */
export function priceTable(sheet: CostSheet): ReportBlock {
  const { currency } = sheet;
  return {
    kind: 'table',
    columns: [
      left('article'),
      left('for'),
      right('sets'),
      right(`one set ${currency}`),
      right(`all sets ${currency}`),
    ],
    rows: sheet.articles.map((article) => [
      article.article,
      article.for ?? '',
      String(article.sets),
      bareSpan(article.price),
      bareSpan(article.sum),
    ]),
    totals: ['together', '', '', '', bareSpan(sheet.sum)],
  };
}

/** What each customer pays; only where there are several: for one it would say the same again. */
export function customersTable({ customers: all, currency, taxPercent }: CostSheet): ReportBlock[] {
  if (all.length < 2) return [];
  const hasTax = taxPercent !== undefined;
  return [
    { kind: 'section', title: 'What each customer pays' },
    {
      kind: 'table',
      columns: [
        left('for'),
        left('articles'),
        ...(hasTax ? [right(`before tax ${currency}`), right(`tax ${currency}`)] : []),
        right(`price ${currency}`),
      ],
      rows: all.map(({ for: who, articles, sum, taxInSum, beforeTax }) => [
        who ?? 'nobody named',
        articles.join(', '),
        ...(hasTax ? [bareSpan(beforeTax), bareSpan(taxInSum)] : []),
        bareSpan(sum),
      ]),
    },
  ];
}

const KIND_WORDS: Readonly<Partial<Record<CostKind, string>>> = { liquid: 'liquids' };

function moneyBars({ kinds }: CostSheet): ReportBlock {
  return {
    kind: 'bars',
    rows: kinds.map(({ kind, cost }) => ({
      name: KIND_WORDS[kind] ?? kind,
      value: Math.max(0, Number(cost.likely.amount)),
      text: spanText(cost),
    })),
  };
}

function hides({ hides: lines, currency }: CostSheet): ReportBlock[] {
  if (lines.length === 0) return [];
  const money = (value: Money | undefined): string => (value === undefined ? 'no price' : amountText(value));
  return [
    { kind: 'section', title: 'Leather, by the area used up' },
    {
      kind: 'table',
      columns: [
        left('hide'),
        right('usable dm²'),
        right('used up dm²'),
        right(`price ${currency}`),
        right(`used up ${currency}`),
        right(`stays with the rest ${currency}`),
      ],
      rows: lines.map((line) => [
        line.hide,
        areaText(line.usableMm2),
        areaText(line.usedUpMm2),
        money(line.price),
        money(line.usedUp),
        money(line.left),
      ]),
    },
    {
      kind: 'text',
      tone: 'plain',
      text: 'True price of what can be used, and what the pieces would cost in other ways of reckoning:',
    },
    {
      kind: 'table',
      columns: [
        left('hide'),
        right(`one usable ft² ${currency}`),
        right(`one usable dm² ${currency}`),
        right('pieces dm²'),
        right(`pieces alone ${currency}`),
        right(`pieces, as usable leather ${currency}`),
      ],
      rows: lines.map((line) => [
        line.hide,
        money(line.perUsableFt2),
        money(line.perUsableDm2),
        areaText(line.piecesMm2),
        money(line.piecesOnly),
        money(line.byUsable),
      ]),
    },
    {
      kind: 'text',
      tone: 'soft',
      text: 'Used up is what lies up to the straight cut that frees the rest, and leftovers too small to keep. Each piece bears its share of it by its own area, whoever it is for.',
    },
  ];
}

function leathers({ leathers: lines, currency }: CostSheet): ReportBlock[] {
  if (lines.length === 0) return [];
  return [
    { kind: 'section', title: 'Leather, as it is likely to be used up' },
    {
      kind: 'table',
      columns: [
        left('leather'),
        left('reckoned with'),
        right('pieces dm²'),
        right('used up dm²'),
        right(`cost ${currency}`),
      ],
      rows: lines.map(({ leather, offer, piecesMm2, areaMm2, cost }) => [
        leather,
        offer ?? 'no offer',
        areaText(piecesMm2),
        `${areaText(areaMm2.low)}–${areaText(areaMm2.high)}`,
        cost === undefined ? 'no price' : bareSpan(cost),
      ]),
    },
  ];
}

function articleBlocks(article: ArticleCost, { currency }: CostSheet): ReportBlock[] {
  const { goods, sets, rows } = article;
  const what = goods === article.article ? article.article : `${article.article} (${goods})`;
  const whom = article.for === undefined ? '' : `, for ${article.for}`;
  const hasSpan = rows.some(({ cost }) => cost !== undefined && cost.low.amount !== cost.high.amount);
  const cells = (cost: CoinSpan | undefined): string[] => {
    if (cost === undefined) return hasSpan ? ['no price', '', ''] : ['no price'];
    return hasSpan
      ? [amountText(cost.likely), amountText(cost.low), amountText(cost.high)]
      : [amountText(cost.likely)];
  };
  const last = rows[rows.length - 1]!;
  return [
    { kind: 'section', title: `${what}${whom}: one of ${sets} ${sets === 1 ? 'set' : 'sets'}` },
    {
      kind: 'table',
      columns: [
        left('what'),
        right('how much'),
        ...(hasSpan ? [right(`likely ${currency}`), right('from'), right('to')] : [right(currency)]),
      ],
      rows: rows
        .slice(0, -1)
        .map((row) => [
          rowName(row),
          row.quantity === undefined || row.unit === undefined ? '' : quantityText(row.quantity, row.unit),
          ...cells(row.cost),
        ]),
      totals: [rowName(last), '', ...cells(last.cost)],
    },
    piecesTable(article, currency),
  ];
}

function piecesTable({ pieces }: ArticleCost, currency: string): ReportBlock {
  return {
    kind: 'table',
    columns: [left('piece'), left('leather'), right('copies'), right('dm² each'), right(`${currency} each`)],
    rows: pieces.map(({ piece, leather, copies, areaMm2, cost }) => [
      piece,
      leather,
      String(copies),
      areaText(areaMm2),
      cost === undefined ? 'no price' : bareSpan(cost),
    ]),
  };
}
