import type { Money } from '../model/marks.js';
import { compareMoney, plusMoney, sumPlacedMoney, timesMoney, toCoins } from '../units/exact-money.js';
import type { ExactMoney } from '../units/exact-money.js';

/** From–to with what is likely; all three are the same where nothing is in doubt. */
export interface SpanOf<Value> {
  readonly low: Value;
  readonly likely: Value;
  readonly high: Value;
}
export type QuantitySpan = SpanOf<number>;
export type CostSpan = SpanOf<ExactMoney>;
/** Rounded to coins, as it is told. */
export type CoinSpan = SpanOf<Money>;

export const BOUNDS = ['low', 'likely', 'high'] as const;

/** The same at each bound. */
export function certain<Value>(value: Value): SpanOf<Value> {
  return { low: value, likely: value, high: value };
}

export function mapSpan<From, To>(span: SpanOf<From>, change: (value: From) => To): SpanOf<To> {
  return { low: change(span.low), likely: change(span.likely), high: change(span.high) };
}

/** Bound with bound. */
export function joinSpans<A, B, To>(a: SpanOf<A>, b: SpanOf<B>, join: (a: A, b: B) => To): SpanOf<To> {
  return { low: join(a.low, b.low), likely: join(a.likely, b.likely), high: join(a.high, b.high) };
}

export function plusSpan(a: CostSpan, b: CostSpan): CostSpan {
  return joinSpans(a, b, plusMoney);
}

export function timesSpan(span: CostSpan, factor: number): CostSpan {
  return mapSpan(span, (money) => timesMoney(money, factor));
}

export interface PlacedSpan {
  readonly cost: CostSpan;
  /** Where it comes from, in words. */
  readonly place: string;
}

/**
 * The sum at each bound; none of none.
 * @throws LeatherError `mixed-currencies`
 */
export function sumSpans(lines: readonly PlacedSpan[]): CostSpan | undefined {
  if (lines.length === 0) return undefined;
  const sumAt = (bound: (typeof BOUNDS)[number]): ExactMoney =>
    sumPlacedMoney(lines.map(({ cost, place }) => ({ money: cost[bound], place })))!;
  return { low: sumAt('low'), likely: sumAt('likely'), high: sumAt('high') };
}

export function coinSpan(span: CostSpan): CoinSpan {
  return mapSpan(span, toCoins);
}

/** Whether it says one sum only. */
export function isCertain({ low, high }: CostSpan): boolean {
  return compareMoney(low, high) === 0;
}
