import { moneyText } from '@hidebound/leather';
import type { ArticleCard, CardLeather, CoinSpan, StockChoice } from '@hidebound/leather';
import type { Drawing } from '../drawing/model.js';
import type { Report, ReportBlock, ReportColumn } from '../report/report.js';
import { thicknessWords } from '../sheet/words.js';
import { areaText, shortNumber, spanText } from './cost-words.js';
import { customersTable, priceTable } from './cost-report.js';

export interface CardReportInput {
  readonly card: ArticleCard;
  readonly title: string;
  /** Below the title: "saddlebag, 4 sets, brown". */
  readonly subtitle: string;
  /** The pieces, for the page. */
  readonly picture?: Drawing;
}

/** A card to hang up or to keep: what a repeat order costs, takes, and wants to have ready. */
export function cardReport({ card, title, subtitle, picture }: CardReportInput): Report {
  return {
    title,
    subtitle,
    blocks: [
      { kind: 'text', tone: 'answer', text: answer(card) },
      ...(picture === undefined ? [] : [{ kind: 'picture' as const, drawing: picture, caption: '' }]),
      ...prices(card),
      { kind: 'section', title: 'Leather' },
      leatherTable(card.leathers),
      offersTable(card.leathers),
      ...stockBlocks(card.leathers),
      ...readyBlocks(card),
    ],
  };
}

function answer({ sheet }: ArticleCard): string {
  const tax = sheet.taxPercent === undefined ? '' : ' with tax';
  const without = sheet.withoutPrice.length === 0 ? '' : ', without what has no price';
  const [only] = sheet.articles;
  if (sheet.articles.length > 1 || only === undefined) {
    return `Together they come to ${spanText(sheet.sum)}${tax}${without}${likely(sheet.sum)}.`;
  }
  const each = only.sets === 1 ? '' : `; ${spanText(only.price)} each`;
  return `${only.sets} ${only.sets === 1 ? 'set comes' : 'sets come'} to ${spanText(only.sum)}${tax}${each}${without}${likely(only.sum)}.`;
}

function likely(span: CoinSpan): string {
  return span.low.amount === span.high.amount ? '' : ` (most likely ${moneyText(span.likely)})`;
}

function prices({ sheet }: ArticleCard): ReportBlock[] {
  if (sheet.articles.length < 2) return [];
  return [{ kind: 'section', title: 'Prices' }, priceTable(sheet), ...customersTable(sheet)];
}

const left = (head: string): ReportColumn => ({ head, align: 'left' });
const right = (head: string): ReportColumn => ({ head, align: 'right' });

function leatherTable(leathers: readonly CardLeather[]): ReportBlock {
  const hasLast = leathers.some(({ byLastYieldMm2 }) => byLastYieldMm2 !== undefined);
  return {
    kind: 'table',
    columns: [
      left('leather'),
      left('asked for'),
      right('pieces dm²'),
      right('takes dm²'),
      ...(hasLast ? [right('as last time dm²')] : []),
    ],
    rows: leathers.map(({ leather, wants, piecesMm2, needMm2, byLastYieldMm2 }) => [
      leather,
      wantWords(wants),
      areaText(piecesMm2),
      `${areaText(needMm2.low)}–${areaText(needMm2.high)}`,
      ...(hasLast ? [byLastYieldMm2 === undefined ? 'never made' : areaText(byLastYieldMm2)] : []),
    ]),
  };
}

function wantWords({ tannage, temper, finish, colour, thickness }: CardLeather['wants']): string {
  const words = [tannage, temper, finish, colour, thickness && thicknessWords(thickness, 'mm')];
  return words.filter((word) => word !== undefined).join(', ');
}

function offersTable(leathers: readonly CardLeather[]): ReportBlock {
  return {
    kind: 'table',
    columns: [left('to buy for'), left('offer'), right('hides'), right('takes dm²'), right('cost of that')],
    rows: leathers.flatMap(({ leather, offers }) =>
      offers.map(({ name, hides, areaMm2, cost }) => [
        leather,
        name,
        hidesText(hides),
        `${areaText(areaMm2.low)}–${areaText(areaMm2.high)}`,
        cost === undefined ? 'no price' : spanText(cost),
      ]),
    ),
  };
}

function hidesText({ likely: middle, high }: { readonly likely?: number; readonly high?: number }): string {
  if (middle === undefined) return '-';
  return high === undefined || high === middle ? String(middle) : `${middle}–${high}`;
}

const ENOUGH_WORDS: Readonly<Record<StockChoice['enough'], string>> = {
  yes: 'is enough in stock, by area',
  likely: 'is likely enough in stock, by area',
  perhaps: 'may just be enough in stock, by area',
  no: 'is not enough in stock',
};

function stockBlocks(leathers: readonly CardLeather[]): ReportBlock[] {
  if (leathers.every(({ stock }) => stock.hides.length === 0)) return [];
  const words = leathers.map(({ leather, stock }) => `${leather} ${ENOUGH_WORDS[stock.enough]}`).join('; ');
  return [
    { kind: 'section', title: 'In stock' },
    {
      kind: 'text',
      tone: 'plain',
      text: `Of leather that suits, ${words}. Whether the pieces find room tells "hidebound offcuts --for", or the layout.`,
    },
    {
      kind: 'table',
      columns: [
        left('for'),
        left('hide'),
        right('usable dm²'),
        right('thickness'),
        left('lot'),
        left('lies in'),
        left(''),
      ],
      rows: leathers.flatMap(({ leather, stock }) =>
        stock.hides.map((hide) => [
          leather,
          `${hide.id}, ${hide.cut}`,
          areaText(hide.usableMm2),
          hide.thickness === undefined ? 'not known' : thicknessWords(hide.thickness, 'mm'),
          hide.lot ?? '',
          hide.storedAt ?? '',
          useWords(hide),
        ]),
      ),
    },
  ];
}

function useWords(hide: StockChoice['hides'][number]): string {
  if (hide.isReserved) return 'reserved';
  const use = hide.isTaken ? 'take' : 'spare';
  return hide.mustMeasure ? `${use}, measure first` : use;
}

function readyBlocks({ hardware, threads, hours }: ArticleCard): ReportBlock[] {
  const items = [
    ...hardware.map(({ name, quantity }) => ({ text: name, aside: shortNumber(quantity) })),
    ...threads.map(({ name, quantity }) => ({
      text: name,
      aside: `${Math.ceil(quantity / MM_PER_M)} m`,
    })),
  ];
  return [
    ...(items.length === 0
      ? []
      : [
          { kind: 'section' as const, title: 'To have ready' },
          { kind: 'checklist' as const, items },
        ]),
    ...(hours === undefined
      ? []
      : [{ kind: 'facts' as const, rows: [{ name: 'Work in all', value: `${shortNumber(hours)} h` }] }]),
  ];
}

const MM_PER_M = 1000;
