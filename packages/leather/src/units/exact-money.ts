import type { Money } from '../model/marks.js';
import type { PriceRounding } from '../model/workshop-rules.js';
import { leatherError } from '../words/refuse.js';
import { quoteValue } from '../words/sentence.js';
import { coinDecimals } from './currency.js';
import { compareExact, exactNumber, over, plus, times, toNumber, toWhole } from './exact-number.js';
import type { ExactNumber } from './exact-number.js';

/** A sum of money that nobody has rounded yet: an exact number of whole units of the currency. */
export interface ExactMoney {
  readonly currency: string;
  readonly amount: ExactNumber;
}

/** A sum with where it comes from, in words: `the price of hide "side-7"`. */
export interface PlacedMoney {
  readonly money: ExactMoney;
  readonly place: string;
}

export function exactMoney({ amount, currency }: Money): ExactMoney {
  return { currency, amount: exactNumber(amount) };
}

export function noMoney(currency: string): ExactMoney {
  return { currency, amount: exactNumber(0) };
}

/** So many times a sum: the factor is a number as it is written, a decimal text, or a fraction. */
export function timesMoney(
  { currency, amount }: ExactMoney,
  factor: number | string | ExactNumber,
): ExactMoney {
  return { currency, amount: times(amount, asExact(factor)) };
}

/** The sum divided by a number above 0. */
export function overMoney({ currency, amount }: ExactMoney, by: number | string | ExactNumber): ExactMoney {
  return { currency, amount: over(amount, asExact(by)) };
}

/** So many per cent of it. */
export function percentOfMoney(money: ExactMoney, percent: number | string): ExactMoney {
  return overMoney(timesMoney(money, percent), 100);
}

/** The part of a sum that falls to `part` of `whole`, both in the same unit; nothing where there is no whole. */
export function shareOfMoney(money: ExactMoney, part: number, whole: number): ExactMoney {
  return whole === 0 ? noMoney(money.currency) : overMoney(timesMoney(money, part), whole);
}

function asExact(value: number | string | ExactNumber): ExactNumber {
  return typeof value === 'object' ? value : exactNumber(value);
}

/**
 * The sum of all, or of none where there are none.
 * @throws LeatherError `mixed-currencies`, which names the first two places that differ
 */
export function sumPlacedMoney(lines: readonly PlacedMoney[]): ExactMoney | undefined {
  const [first, ...rest] = lines;
  if (first === undefined) return undefined;
  const { currency } = first.money;
  const odd = rest.find(({ money }) => money.currency !== currency);
  if (odd !== undefined) {
    const params = { first: first.place, currency, second: odd.place, other: odd.money.currency };
    throw leatherError('mixed-currencies', params);
  }
  const amount = rest.reduce((sum, { money }) => plus(sum, money.amount), first.money.amount);
  return { currency, amount };
}

/**
 * Two sums together. Where they come from people's files, `sumPlacedMoney` tells where the currencies differ.
 * @throws LeatherError `mixed-currencies`
 */
export function plusMoney(a: ExactMoney, b: ExactMoney): ExactMoney {
  const placed = [a, b].map((money) => ({ money, place: quoteValue(moneyText(toCoins(money))) }));
  return sumPlacedMoney(placed)!;
}

export function compareMoney(a: ExactMoney, b: ExactMoney): -1 | 0 | 1 {
  return compareExact(a.amount, b.amount);
}

/** To the currency's smallest coin, halves away from 0 (how sums are rounded on invoices: common practice, no source). */
export function toCoins({ currency, amount }: ExactMoney): Money {
  const decimals = coinDecimals(currency);
  const coins = toWhole(times(amount, exactNumber(10n ** BigInt(decimals))), 'nearest');
  return { amount: decimalText(coins, decimals), currency };
}

/**
 * To whole multiples of an amount, or to the smallest coin where there is no rule.
 * @throws LeatherError `mixed-currencies`; `rounding-to-nothing` where the amount is 0
 */
export function roundMoney(money: ExactMoney, rounding: PriceRounding | undefined): Money {
  if (rounding === undefined) return toCoins(money);
  const step = exactMoney(rounding.to);
  if (step.amount.over === 0n) throw leatherError('rounding-to-nothing', {});
  sumPlacedMoney([
    { money, place: 'the price' },
    { money: step, place: 'the amount that prices are rounded to' },
  ]);
  const steps = toWhole(over(money.amount, step.amount), rounding.way);
  return toCoins(timesMoney(step, { over: steps, under: 1n }));
}

/** As an ordinary number, for the length of a bar. */
export function moneyNumber({ amount }: ExactMoney): number {
  return toNumber(amount);
}

function decimalText(coins: bigint, decimals: number): string {
  const digits = String(coins < 0n ? -coins : coins).padStart(decimals + 1, '0');
  const whole = digits.slice(0, digits.length - decimals);
  const rest = decimals === 0 ? '' : `.${digits.slice(digits.length - decimals)}`;
  return `${coins < 0n ? '-' : ''}${whole}${rest}`;
}

/** "1,234.50 EUR": for people; files have no thousands marks (`formatMoney`). */
export function moneyText({ amount, currency }: Money): string {
  const [whole = '0', decimals] = amount.split('.');
  const grouped = whole.replace(/\B(?=(?:\d{3})+$)/g, ',');
  return `${decimals === undefined ? grouped : `${grouped}.${decimals}`} ${currency}`;
}
