import type { Money } from '../../model/marks.js';
import type { ResolvedOrder } from '../../model/order.js';
import type { LayablePiece } from '../../model/piece.js';
import type { Span } from '../../model/workshop-rules.js';
import type { Workshop } from '../../model/workshop.js';
import { compareMoney, timesMoney, toCoins } from '../../units/exact-money.js';
import { HIDES_FIGURES } from '../hides/hides-figures.js';
import { buyablesFor } from '../trials/buyable.js';
import type { Buyable } from '../trials/buyable.js';
import { needBeliefs, pricePerMm2 } from '../trials/buying-answer.js';
import { countFor } from '../trials/chances.js';
import { areaForChance, needAfter } from '../trials/need.js';
import type { Need } from '../trials/need.js';
import { purchasesOf } from '../trials/purchase.js';
import { lossPiecesOf, quickNeed } from './quick-need.js';
import type { NeedLosses } from './quick-need.js';

/** Low, likely and high: enough in 10, 50 and 90 of 100. */
export interface Thirds<Value> {
  readonly low: Value;
  readonly likely: Value;
  readonly high: Value;
}

/** What one leather of an order takes, reckoned without a layout. */
export interface LeatherEstimate {
  readonly leather: string;
  readonly copies: number;
  readonly piecesMm2: number;
  /** Each kind of hide that can be bought for it, the cheapest first; without prices, the least leather first. */
  readonly kinds: readonly KindEstimate[];
}

export interface KindEstimate {
  readonly name: string;
  readonly cut: string;
  /** Area that is used up, mm². */
  readonly areaMm2: Thirds<number>;
  readonly losses: NeedLosses;
  /** Whole hides that are enough in 50, 50 and 90 of 100; absent beyond any number. */
  readonly hides: Partial<Thirds<number>>;
  /** Of the area that is used up, at the price of its hides; absent without a price. */
  readonly cost?: Thirds<Money>;
}

export interface QuickEstimateInput {
  readonly order: ResolvedOrder;
  readonly pieces: readonly LayablePiece[];
  readonly workshop: Workshop;
}

/**
 * What each leather of an order takes, in a few milliseconds and without trial layouts, leather by leather. See
 * docs/buying.md for how far off it is.
 * @throws LeatherError as `purchasesOf` and `buyablesFor`
 */
export function quickEstimate({ order, pieces, workshop }: QuickEstimateInput): LeatherEstimate[] {
  return order.leathers.flatMap(({ name }): LeatherEstimate[] => {
    const alone: ResolvedOrder = {
      ...order,
      leathers: order.leathers.filter((leather) => leather.name === name),
      articles: order.articles.flatMap((article) => {
        const own = article.pieces.filter(({ leather }) => leather === name);
        return own.length === 0 ? [] : [{ ...article, pieces: own, beside: [] }];
      }),
    };
    if (
      alone.articles.every(({ sets, pieces: own }) => sets === 0 || own.every(({ count }) => count === 0))
    ) {
      return [];
    }
    const [purchase] = purchasesOf(alone, pieces).purchases;
    const { buyables } = buyablesFor(purchase!, workshop);
    const lossPieces = lossPiecesOf(purchase!, pieces);
    const kinds = buyables.map((buyable) => {
      const { rule, areaMm2 } = buyable;
      const hides = { rule, areaMm2, usableShare: usableShareOf(buyable, workshop) };
      const quick = quickNeed(purchase!, lossPieces, hides, workshop);
      return { buyable, estimate: kindEstimate(buyable, quick, workshop) };
    });
    return [
      {
        leather: name,
        copies: purchase!.copies,
        piecesMm2: purchase!.piecesMm2,
        kinds: kinds.sort(byCost).map(({ estimate }) => estimate),
      },
    ];
  });
}

/** As its grade says, or as is usual where it has none. */
export function usableShareOf({ usableShare }: Buyable, { figures }: Pick<Workshop, 'figures'>): Span {
  if (usableShare !== undefined) return usableShare;
  const usual = HIDES_FIGURES[0]!;
  const { value } = figures.find(({ name }) => name === usual.name) ?? usual;
  return { min: value.min / 100, max: value.max / 100 };
}

function kindEstimate(
  buyable: Buyable,
  { likelyMm2, losses }: ReturnType<typeof quickNeed>,
  workshop: Workshop,
): KindEstimate {
  // The formula was fitted to trial layouts, so that what a longer search gains comes off, as it does there.
  const need = needAfter([], likelyMm2, needBeliefs(workshop));
  const areaMm2 = thirds(need);
  const price = pricePerMm2(buyable);
  const cost = (mm2: number): Money => toCoins(timesMoney(price!, Math.round(mm2)));
  const likelyHides = countFor(need, 50, buyable.areaMm2);
  const highHides = countFor(need, 90, buyable.areaMm2);
  return {
    name: buyable.name,
    cut: buyable.rule.name,
    areaMm2,
    losses,
    hides: {
      ...(likelyHides === undefined ? {} : { low: likelyHides, likely: likelyHides }),
      ...(highHides === undefined ? {} : { high: highHides }),
    },
    ...(price === undefined
      ? {}
      : { cost: { low: cost(areaMm2.low), likely: cost(areaMm2.likely), high: cost(areaMm2.high) } }),
  };
}

function thirds(need: Need): Thirds<number> {
  return { low: areaForChance(need, 0.1), likely: areaForChance(need, 0.5), high: areaForChance(need, 0.9) };
}

interface Compared {
  readonly buyable: Buyable;
  readonly estimate: KindEstimate;
}

function byCost(a: Compared, b: Compared): number {
  const [first, second] = [a, b].map(({ buyable, estimate }) => {
    const price = pricePerMm2(buyable);
    return price === undefined ? undefined : timesMoney(price, Math.round(estimate.areaMm2.likely));
  });
  if (first !== undefined && second !== undefined && first.currency === second.currency) {
    return compareMoney(first, second);
  }
  return a.estimate.areaMm2.likely - b.estimate.areaMm2.likely;
}
