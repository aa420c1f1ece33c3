import { quickEstimate } from '../buying/estimate/quick-estimate.js';
import type { KindEstimate, LeatherEstimate, QuickEstimateInput } from '../buying/estimate/quick-estimate.js';
import { exactMoney, shareOfMoney, toCoins } from '../units/exact-money.js';
import type { LeatherBudget } from './cost-of-order.js';
import { mapSpan } from './cost-span.js';

/**
 * What each leather of an order is likely to take and to cost, by the kind of hide that is cheapest for it: from low
 * (enough in 10 of 100) to high (enough in 90).
 * @throws LeatherError as `quickEstimate`
 */
export function leatherBudgets(input: QuickEstimateInput): LeatherBudget[] {
  return quickEstimate(input).map(budgetOf);
}

/** By the first kind: the estimate has the cheapest first. */
export function budgetOf({ leather, kinds, piecesMm2 }: LeatherEstimate): LeatherBudget {
  const [first] = kinds;
  if (first === undefined)
    return { leather, areaMm2: { low: piecesMm2, likely: piecesMm2, high: piecesMm2 } };
  const { name, areaMm2, cost } = atLeastPieces(first, piecesMm2);
  return {
    leather,
    areaMm2,
    ...(cost === undefined ? {} : { offer: name, cost: mapSpan(cost, exactMoney) }),
  };
}

/** Nothing is cut from less leather than the pieces themselves: the chances of a formula don't know that. */
export function atLeastPieces(kind: KindEstimate, piecesMm2: number): KindEstimate {
  const { areaMm2, cost } = kind;
  if (areaMm2.low >= piecesMm2 || areaMm2.low <= 0) return kind;
  const low = Math.min(piecesMm2, areaMm2.likely);
  const lowCost = cost && toCoins(shareOfMoney(exactMoney(cost.low), low, areaMm2.low));
  return {
    ...kind,
    areaMm2: { ...areaMm2, low },
    ...(cost === undefined || lowCost === undefined ? {} : { cost: { ...cost, low: lowCost } }),
  };
}
