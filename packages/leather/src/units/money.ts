import type { Money } from '../model/marks.js';
import { leatherError } from '../words/refuse.js';
import { quoteValue } from '../words/sentence.js';

const MONEY = /^(\d{1,12})(?:[.,](\d{1,4}))?\s+([A-Z]{3})$/;

/**
 * A price as people write it, "12.50 EUR", kept as exact decimal text.
 * @throws LeatherError `bad-money`, `ambiguous-comma`
 */
export function parseMoney(text: string): Money {
  const match = MONEY.exec(text.trim());
  if (match === null) throw leatherError('bad-money', { found: quoteValue(text) });
  const [, whole = '0', decimals, currency = ''] = match;
  if (text.includes(',') && decimals?.length === 3) {
    const params = { found: quoteValue(text), decimal: `${whole}.${decimals}`, thousands: whole + decimals };
    throw leatherError('ambiguous-comma', params);
  }
  return { amount: decimals === undefined ? whole : `${whole}.${decimals}`, currency };
}

/** "12.50 EUR". */
export function formatMoney(money: Money): string {
  return `${money.amount} ${money.currency}`;
}
