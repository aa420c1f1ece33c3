import type { Workshop } from '../model/workshop.js';
import { exactMoney, overMoney } from '../units/exact-money.js';
import type { ExactMoney } from '../units/exact-money.js';
import { priceUnit } from '../units/price-unit.js';
import type { PricedIn } from '../units/price-unit.js';

/** The price of one unit that is reckoned with; nothing where the list has no such line. */
export function listedPrice(
  { prices }: Pick<Workshop, 'prices'>,
  name: string,
  of: PricedIn,
): ExactMoney | undefined {
  const line = prices.find((each) => each.name === name && priceUnit(each.per).of === of);
  return line && overMoney(exactMoney(line.price), priceUnit(line.per).times);
}
