import { regionArea } from '@hidebound/geometry';
import type { Diagnostic } from '../model/diagnostic.js';
import type { Hide } from '../model/hide.js';
import type { Layout } from '../model/layout.js';
import type { ResolvedArticle } from '../model/order.js';
import type { Workshop } from '../model/workshop.js';
import { copiesPerSet } from '../order/items.js';
import { overMoney, plusMoney, timesMoney, toCoins } from '../units/exact-money.js';
import type { ExactMoney } from '../units/exact-money.js';
import { setsOfLayout } from '../stitch/sets-of-layout.js';
import { planStitches } from '../stitch/stitch-plan.js';
import { quoteValue } from '../words/sentence.js';
import { buildSheet } from './build-sheet.js';
import type { CostSheet, HideCostLine, PieceCost } from './cost-sheet.js';
import { certain, coinSpan, mapSpan } from './cost-span.js';
import { hideCost } from './hide-cost.js';
import type { HideCost } from './hide-cost.js';
import { costOfShares, leatherShares } from './leather-lines.js';
import type { LeatherShare } from './leather-lines.js';
import { layoutLiquids } from './liquid-lines.js';
import { shareOfLine } from './share-of-line.js';
import type { MaterialLine } from './set-price.js';

export interface LayoutCostInput {
  readonly layout: Layout;
  /** The layout's hides, for their prices. */
  readonly hides: readonly Hide[];
  readonly workshop: Workshop;
}

/**
 * What a layout costs: leather by the area used up, liquids, thread, hardware, work, and the prices that follow.
 * @throws LeatherError `price-without-area`, `mixed-currencies`, `nothing-priced`
 */
export function costOfLayout({ layout, hides, workshop }: LayoutCostInput): CostSheet {
  const { order } = layout;
  const costs = layout.yield.hides.map((areas) => hideCost(hideOf(hides, areas.hide), areas, workshop));
  const shares = leatherShares(layout, costs);
  const setsOf = setsOfLayout(layout);
  const setsFor = (article: ResolvedArticle): number => setsOf(article.name) ?? 0;
  const ownShares = (article: ResolvedArticle) => shares.filter((share) => share.article === article.name);
  const areaOf = (article: ResolvedArticle) => sum(ownShares(article).map(({ piecesMm2 }) => piecesMm2));
  const liquids = layoutLiquids(layout, shares, workshop);
  const { seams } = planStitches({ order, pieces: layout.pieces, setsOf });
  return buildSheet({
    order,
    workshop,
    seams,
    setsOf: setsFor,
    leatherMm2Of: areaOf,
    materialsOf: (article) => [
      ...leatherLines(ownShares(article)),
      ...liquids.flatMap(({ line, leather }) => {
        const of = (each: readonly LeatherShare[]) =>
          sum(each.filter((share) => share.leather === leather).map(({ piecesMm2 }) => piecesMm2));
        const [part, whole] = [of(ownShares(article)), of(shares)];
        return part === 0 ? [] : [shareOfLine(line, part / whole)];
      }),
    ],
    piecesOf: (article) => pieceCosts(article, ownShares(article), layout),
    hides: costs.map(toHideLine),
    leathers: [],
    diagnostics: notLaid(layout),
  });
}

function hideOf(hides: readonly Hide[], id: string): Hide {
  const found = hides.find((hide) => hide.id === id);
  if (found === undefined) throw new Error(`The hide ${id} of the layout is not among those given.`);
  return found;
}

/** A line for each leather; what comes from hides without a price stands apart. */
function leatherLines(shares: readonly LeatherShare[]): MaterialLine[] {
  const leathers = [...new Set(shares.map(({ leather }) => leather))];
  return leathers.flatMap((leather) => {
    const own = shares.filter((share) => share.leather === leather);
    const [priced, without] = [own.filter(({ cost }) => cost), own.filter(({ cost }) => !cost)];
    const area = (of: readonly LeatherShare[]) => certain(sum(of.map(({ usedUpMm2 }) => usedUpMm2)));
    const cost = costOfShares(priced);
    const base = {
      kind: 'leather' as const,
      unit: 'mm²' as const,
      place: `the leather ${quoteValue(leather)}`,
    };
    return [
      ...(cost === undefined ? [] : [{ ...base, name: leather, quantity: area(priced), cost }]),
      ...[...new Set(without.map(({ hide }) => hide))].map((hide): MaterialLine => ({
        ...base,
        name: `${leather}, hide ${hide}`,
        quantity: area(without.filter((share) => share.hide === hide)),
      })),
    ];
  });
}

function pieceCosts(article: ResolvedArticle, shares: readonly LeatherShare[], layout: Layout): PieceCost[] {
  return article.pieces.map((piece): PieceCost => {
    const own = shares.filter((share) => share.piece === piece.name);
    const { plain, mirrored } = copiesPerSet(piece);
    const region = layout.pieces.find(
      (each) => each.article === article.name && each.piece === piece.name,
    )?.region;
    const cost = own.length > 0 && own.every((share) => share.cost) ? costOfShares(own) : undefined;
    const copies = sum(own.map((share) => share.copies));
    return {
      piece: piece.name,
      leather: piece.leather,
      copies: plain + mirrored,
      areaMm2: region === undefined ? 0 : regionArea(region),
      ...(cost === undefined ? {} : { cost: coinSpan(mapSpan(cost, (money) => overMoney(money, copies))) }),
    };
  });
}

function toHideLine(cost: HideCost): HideCostLine {
  const { areas, whole, usedUp, pricedMm2 } = cost;
  const coins = <Key extends keyof HideCostLine>(key: Key, money: ExactMoney | undefined) =>
    money === undefined ? {} : { [key]: toCoins(money) };
  return {
    hide: cost.hide,
    grossMm2: areas.grossMm2,
    usableMm2: areas.usableMm2,
    usedUpMm2: areas.usedUpMm2,
    piecesMm2: areas.piecesMm2,
    leftMm2: areas.offcutMm2,
    ...coins('price', whole),
    ...(pricedMm2 === undefined ? {} : { pricedMm2 }),
    ...coins('usedUp', usedUp),
    ...coins('left', whole && usedUp && plusMoney(whole, timesMoney(usedUp, -1))),
    ...coins('piecesOnly', cost.piecesOnly),
    ...coins('byUsable', cost.byUsable),
    ...coins('perUsableFt2', cost.perUsableFt2),
    ...coins('perUsableDm2', cost.perUsableDm2),
  };
}

function notLaid({ unplaced }: Layout): Diagnostic[] {
  const articles = [...new Set(unplaced.map(({ article }) => article))];
  return articles.map((article) => ({
    code: 'cost-not-all-laid',
    severity: 'warning',
    params: { article, count: unplaced.filter((copy) => copy.article === article).length },
  }));
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
