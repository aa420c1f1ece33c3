import type { ResolvedArticle, ResolvedOrder } from '../model/order.js';
import type { LayablePiece } from '../model/piece.js';
import type { Workshop } from '../model/workshop.js';
import { overMoney, timesMoney } from '../units/exact-money.js';
import { planStitches } from '../stitch/stitch-plan.js';
import { leatherError } from '../words/refuse.js';
import { quoteValue } from '../words/sentence.js';
import { buildSheet } from './build-sheet.js';
import type { CostSheet, PieceCost } from './cost-sheet.js';
import { coinSpan, mapSpan } from './cost-span.js';
import type { CostSpan, QuantitySpan } from './cost-span.js';
import { liquidsOf } from './liquid-lines.js';
import { pieceAreas } from './order-pieces.js';
import type { PieceArea } from './order-pieces.js';
import { shareOfLine } from './share-of-line.js';
import type { MaterialLine } from './set-price.js';

/** A leather of an order before there is a hide: what it is likely to take, and to cost. */
export interface LeatherBudget {
  readonly leather: string;
  /** Leather that is used up, mm². */
  readonly areaMm2: QuantitySpan;
  /** Name of the offer that it is reckoned with. */
  readonly offer?: string;
  /** Exact; absent: nothing is offered that suits, or not with a price. */
  readonly cost?: CostSpan;
}

export interface OrderCostInput {
  readonly order: ResolvedOrder;
  readonly pieces: readonly LayablePiece[];
  readonly workshop: Workshop;
  readonly budgets: readonly LeatherBudget[];
}

/**
 * What an order will cost, before there is a hide: as `costOfLayout`, with a span for the leather, which is shared by
 * the area of the pieces.
 * @throws LeatherError `sets-not-known`, `mixed-currencies`, `nothing-priced`
 */
export function costOfOrder({ order, pieces, workshop, budgets }: OrderCostInput): CostSheet {
  const areas = pieceAreas(order, pieces, setsOf);
  const { seams } = planStitches({ order, pieces });
  const areaIn = (leather: string, article?: string): number =>
    sum(
      areas
        .filter((each) => each.leather === leather && (article ?? each.article) === each.article)
        .map(({ allMm2 }) => allMm2),
    );
  const linesOf = new Map(budgets.map((budget) => [budget.leather, budgetLines(budget, order, workshop)]));
  return buildSheet({
    order,
    workshop,
    seams,
    setsOf,
    leatherMm2Of: ({ name }) =>
      sum(areas.filter(({ article }) => article === name).map(({ allMm2 }) => allMm2)),
    materialsOf: ({ name }) =>
      [...linesOf].flatMap(([leather, lines]) => {
        const part = areaIn(leather, name);
        return part === 0 ? [] : lines.map((line) => shareOfLine(line, part / areaIn(leather)));
      }),
    piecesOf: ({ name }) =>
      areas
        .filter(({ article }) => article === name)
        .map((area) => pieceCost(area, budgets, areaIn(area.leather))),
    hides: [],
    leathers: budgets.map(({ leather, areaMm2, offer, cost }) => ({
      leather,
      piecesMm2: areaIn(leather),
      areaMm2,
      ...(offer === undefined ? {} : { offer }),
      ...(cost === undefined ? {} : { cost: coinSpan(cost) }),
    })),
    diagnostics: [],
  });
}

function setsOf({ name, sets }: ResolvedArticle): number {
  if (typeof sets === 'number') return sets;
  throw leatherError('sets-not-known', { article: quoteValue(name) });
}

function budgetLines(
  { leather, areaMm2, cost }: LeatherBudget,
  order: ResolvedOrder,
  workshop: Workshop,
): MaterialLine[] {
  const line: MaterialLine = {
    kind: 'leather',
    name: leather,
    quantity: areaMm2,
    unit: 'mm²',
    ...(cost === undefined ? {} : { cost }),
    place: `the leather ${quoteValue(leather)}`,
  };
  const preparation = order.leathers.find(({ name }) => name === leather)?.preparation;
  if (preparation === undefined) return [line];
  return [line, ...liquidsOf(leather, preparation, areaMm2, workshop).map((each) => each.line)];
}

function pieceCost(area: PieceArea, budgets: readonly LeatherBudget[], wholeMm2: number): PieceCost {
  const cost = budgets.find(({ leather }) => leather === area.leather)?.cost;
  const one = cost && mapSpan(cost, (money) => overMoney(timesMoney(money, area.oneMm2), wholeMm2));
  return {
    piece: area.piece,
    leather: area.leather,
    copies: area.copies,
    areaMm2: area.oneMm2,
    ...(one === undefined ? {} : { cost: coinSpan(one) }),
  };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
