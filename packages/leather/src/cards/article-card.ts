import { quickEstimate } from '../buying/estimate/quick-estimate.js';
import type { KindEstimate } from '../buying/estimate/quick-estimate.js';
import { atLeastPieces, budgetOf } from '../costing/budgets.js';
import { costOfOrder } from '../costing/cost-of-order.js';
import type { CostSheet } from '../costing/cost-sheet.js';
import type { QuantitySpan } from '../costing/cost-span.js';
import { pieceAreas } from '../costing/order-pieces.js';
import type { PieceArea } from '../costing/order-pieces.js';
import type { ArticleLeather, Order, ResolvedOrder } from '../model/order.js';
import type { LayablePiece } from '../model/piece.js';
import type { Workshop } from '../model/workshop.js';
import type { NamedHide } from '../order/sheets.js';
import { leatherError } from '../words/refuse.js';
import { quoteValue } from '../words/sentence.js';
import { chooseFromStock } from './stock-choice.js';
import type { StockChoice } from './stock-choice.js';

export interface ArticleCardInput {
  readonly written: Order;
  readonly order: ResolvedOrder;
  readonly pieces: readonly LayablePiece[];
  readonly workshop: Workshop;
  /** Hides on hand. */
  readonly stock: readonly NamedHide[];
  /** By name of the article in the order; an article that was never made has none. */
  readonly lastYields: ReadonlyMap<string, number>;
}

/** All that a repeat order asks: its price, its leather, what is on hand, what else to have ready. */
export interface ArticleCard {
  readonly sheet: CostSheet;
  readonly leathers: readonly CardLeather[];
  readonly hardware: readonly CardNeed[];
  /** Lengths in mm. */
  readonly threads: readonly CardNeed[];
  /** Of all sets; absent: nobody says. */
  readonly hours?: number;
}

export interface CardLeather {
  readonly leather: string;
  readonly wants: Omit<ArticleLeather, 'name'>;
  readonly piecesMm2: number;
  /** Leather that is used up: as it is estimated, … */
  readonly needMm2: QuantitySpan;
  /** … and as it was the last time; absent where an article of it was never made. */
  readonly byLastYieldMm2?: number;
  /** What can be bought for it, the cheapest first. */
  readonly offers: readonly KindEstimate[];
  readonly stock: StockChoice;
}

export interface CardNeed {
  readonly name: string;
  readonly quantity: number;
}

/**
 * The card of an order of articles, in seconds: by formula and by the areas of hides, without laying anything.
 * @throws LeatherError `yield-of-zero`, and whatever `costOfOrder` and `quickEstimate` throw
 */
export function articleCard(input: ArticleCardInput): ArticleCard {
  const { order, pieces, workshop, stock, written, lastYields } = input;
  const estimates = quickEstimate({ order, pieces, workshop });
  const sheet = costOfOrder({ order, pieces, workshop, budgets: estimates.map(budgetOf) });
  const areas = pieceAreas(order, pieces, ({ sets }) => (sets === 'as many as fit' ? 0 : sets));
  const needs = new Map(estimates.map((each) => [each.leather, budgetOf(each).areaMm2]));
  const choices = chooseFromStock({ written, order, pieces, hides: stock, workshop }, needs);
  return {
    sheet,
    leathers: estimates.map(({ leather, piecesMm2, kinds }): CardLeather => {
      const {
        name: _,
        hides: _hides,
        preparation: _preparation,
        ...wants
      } = order.leathers.find(({ name }) => name === leather)!;
      const byLastYield = areaByLastYield(
        areas.filter((area) => area.leather === leather),
        lastYields,
      );
      return {
        leather,
        wants,
        piecesMm2,
        needMm2: needs.get(leather)!,
        ...(byLastYield === undefined ? {} : { byLastYieldMm2: byLastYield }),
        offers: kinds.map((kind) => atLeastPieces(kind, piecesMm2)),
        stock: choices.get(leather)!,
      };
    }),
    hardware: needsOf(sheet, 'hardware'),
    threads: needsOf(sheet, 'thread'),
    ...hoursOf(sheet),
  };
}

function areaByLastYield(
  areas: readonly PieceArea[],
  lastYields: ReadonlyMap<string, number>,
): number | undefined {
  let sum = 0;
  for (const { article, allMm2 } of areas) {
    const last = lastYields.get(article);
    if (last === undefined) return undefined;
    if (last <= 0) throw leatherError('yield-of-zero', { what: `The last yield of ${quoteValue(article)}` });
    sum += allMm2 / last;
  }
  return sum;
}

/** Of all sets, by name. */
function needsOf({ articles }: CostSheet, kind: 'hardware' | 'thread'): CardNeed[] {
  const sums = new Map<string, number>();
  for (const { sets, rows } of articles) {
    for (const row of rows) {
      if (row.kind !== kind || row.name === undefined) continue;
      sums.set(row.name, (sums.get(row.name) ?? 0) + (row.quantity?.likely ?? 0) * sets);
    }
  }
  return [...sums].map(([name, quantity]) => ({ name, quantity }));
}

function hoursOf({ articles }: CostSheet): Pick<ArticleCard, 'hours'> {
  const hours = articles.flatMap(({ sets, rows }) =>
    rows.filter(({ kind }) => kind === 'work').map(({ quantity }) => (quantity?.likely ?? 0) * sets),
  );
  return hours.length === 0 ? {} : { hours: hours.reduce((sum, each) => sum + each, 0) };
}
