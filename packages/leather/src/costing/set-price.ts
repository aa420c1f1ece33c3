import type { Workshop } from '../model/workshop.js';
import {
  exactMoney,
  noMoney,
  overMoney,
  percentOfMoney,
  plusMoney,
  roundMoney,
  timesMoney,
} from '../units/exact-money.js';
import { figureOf, middleOf } from '../workshop/figures.js';
import type { CostKind, CostRow, CostUnit, MaterialKind } from './cost-sheet.js';
import { certain, coinSpan, joinSpans, mapSpan, plusSpan, sumSpans } from './cost-span.js';
import type { CostSpan, PlacedSpan, QuantitySpan } from './cost-span.js';

/** Something that goes into one set. */
export interface MaterialLine {
  readonly kind: MaterialKind;
  readonly name: string;
  readonly quantity: QuantitySpan;
  readonly unit: CostUnit;
  /** Exact; absent: no price. */
  readonly cost?: CostSpan;
  /** Where its price comes from, in words. */
  readonly place: string;
}

/** One set: all that goes into it, and the work. */
export interface SetNeeds {
  readonly lines: readonly MaterialLine[];
  readonly hours?: number;
  readonly currency: string;
}

/** One kind of cost of a set, exact. */
export interface ExactPart {
  readonly row: Omit<CostRow, 'cost'>;
  readonly cost?: CostSpan;
}

export interface SetPrice {
  readonly parts: readonly ExactPart[];
  /** Tax included, rounded as the workshop rounds. */
  readonly price: CostSpan;
}

/** What of a workshop makes a price of costs. */
export type PriceRules = Pick<
  Workshop,
  'figures' | 'hourlyRate' | 'overheadPercent' | 'profitPercent' | 'taxPercent' | 'rounding'
>;

/**
 * The price of one set, step by step: materials; supplies as a share of the leather; return on all of these; work;
 * overhead on materials and work; profit on the whole cost; tax; rounding. Nothing is rounded before the end, so that
 * the steps as they are printed may differ from their sum by a cent.
 * @throws LeatherError `mixed-currencies`
 */
export function priceOfSet(needs: SetNeeds, rules: PriceRules): SetPrice {
  const materials = materialSteps(needs, rules);
  const work = workSteps(needs, rules, materials);
  const { net } = work;
  const withTax = mapSpan(net, (money) => percentOfMoney(money, 100 + (rules.taxPercent ?? 0)));
  const price = mapSpan(withTax, (money) => exactMoney(roundMoney(money, rules.rounding)));
  return {
    price,
    parts: [...materials.parts, ...work.parts, ...endSteps(net, price, rules)],
  };
}

/** The tax within a price that has it. */
export function taxWithin(price: CostSpan, { taxPercent = 0 }: PriceRules): CostSpan {
  return mapSpan(price, (money) => overMoney(timesMoney(money, taxPercent), 100 + taxPercent));
}

export function minusSpan(a: CostSpan, b: CostSpan): CostSpan {
  return joinSpans(a, b, (one, other) => plusMoney(one, timesMoney(other, -1)));
}

export function toRow({ row, cost }: ExactPart): CostRow {
  return cost === undefined ? row : { ...row, cost: coinSpan(cost) };
}

interface Materials {
  readonly parts: readonly ExactPart[];
  readonly materials: CostSpan;
  readonly gain: CostSpan;
}

function materialSteps({ lines, currency }: SetNeeds, rules: PriceRules): Materials {
  const none = { cost: certain(noMoney(currency)), place: 'all else' };
  const priced = (kinds: (line: MaterialLine) => boolean): CostSpan => {
    const placed = lines
      .filter(kinds)
      .flatMap(({ cost, place }) => (cost === undefined ? [] : [{ cost, place }]));
    return sumSpans([...placed, none] satisfies PlacedSpan[])!;
  };
  const suppliesShare = percentSpan(rules, 'supplies, share of the leather');
  const returnShare = percentSpan(rules, 'return on materials');
  const supplies = joinSpans(
    priced(({ kind }) => kind === 'leather'),
    suppliesShare,
    percentOfMoney,
  );
  const materials = plusSpan(
    priced(() => true),
    supplies,
  );
  const gain = joinSpans(materials, returnShare, percentOfMoney);
  const parts = [
    ...lines.map(({ kind, name, quantity, unit, cost }): ExactPart => ({
      row: { kind, name, quantity, unit },
      ...(cost === undefined ? {} : { cost }),
    })),
    ...given('supplies', supplies, suppliesShare),
    { row: { kind: 'materials' as const }, cost: materials },
    ...given('return on materials', gain, returnShare),
    ...(returnShare.high > 0
      ? [{ row: { kind: 'materials with return' as const }, cost: plusSpan(materials, gain) }]
      : []),
  ];
  return { parts, materials, gain };
}

function workSteps(
  { hours, currency }: SetNeeds,
  { hourlyRate, overheadPercent, profitPercent }: PriceRules,
  { materials, gain }: Materials,
): { readonly parts: readonly ExactPart[]; readonly net: CostSpan } {
  const rate = hourlyRate && exactMoney(hourlyRate);
  const work = hours === undefined || rate === undefined ? undefined : certain(timesMoney(rate, hours));
  const made = sumSpans([
    { cost: materials, place: 'the price of materials' },
    { cost: work ?? certain(noMoney(currency)), place: 'the price of an hour' },
  ])!;
  const overhead = mapSpan(made, (money) => percentOfMoney(money, overheadPercent ?? 0));
  const cost = plusSpan(plusSpan(made, gain), overhead);
  const profit = mapSpan(cost, (money) => percentOfMoney(money, profitPercent ?? 0));
  const workRow = { kind: 'work' as const, quantity: certain(hours ?? 0), unit: 'h' as const };
  return {
    net: plusSpan(cost, profit),
    parts: [
      ...(hours === undefined ? [] : [work === undefined ? { row: workRow } : { row: workRow, cost: work }]),
      ...given('overhead', overhead, certain(overheadPercent ?? 0)),
      ...given('profit', profit, certain(profitPercent ?? 0)),
    ],
  };
}

/** Tax and rounding: the price is round, the tax is the one within it, and what rounding adds falls to the workshop. */
function endSteps(net: CostSpan, price: CostSpan, rules: PriceRules): ExactPart[] {
  const tax = taxWithin(price, rules);
  const beforeTax = minusSpan(price, tax);
  const { taxPercent, rounding } = rules;
  return [
    ...(rounding === undefined
      ? []
      : [{ row: { kind: 'rounding' as const }, cost: minusSpan(beforeTax, net) }]),
    ...(taxPercent === undefined
      ? []
      : [
          { row: { kind: 'before tax' as const }, cost: beforeTax },
          { row: { kind: 'tax' as const, percent: certain(taxPercent) }, cost: tax },
        ]),
    { row: { kind: 'price' }, cost: price },
  ];
}

/** A share that is 0 has no row. */
function given(kind: CostKind, cost: CostSpan, percent: QuantitySpan): ExactPart[] {
  return percent.high > 0 ? [{ row: { kind, percent }, cost }] : [];
}

function percentSpan(rules: Pick<Workshop, 'figures'>, name: string): QuantitySpan {
  const { value } = figureOf(rules, name);
  return { low: value.min, likely: middleOf(value), high: value.max };
}
