import { quickEstimate } from '../buying/estimate/quick-estimate.js';
import type { LeatherEstimate, QuickEstimateInput } from '../buying/estimate/quick-estimate.js';
import { exactMoney } from '../units/exact-money.js';
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
export function budgetOf({ leather, kinds }: LeatherEstimate): LeatherBudget {
  const [first] = kinds;
  if (first === undefined) return { leather, areaMm2: { low: 0, likely: 0, high: 0 } };
  const { name, areaMm2, cost } = first;
  return {
    leather,
    areaMm2,
    ...(cost === undefined ? {} : { offer: name, cost: mapSpan(cost, exactMoney) }),
  };
}
