import { describe, expect, test } from 'vitest';
import { DEFAULT_WORKSHOP } from '../workshop/default-workshop.js';
import { exactMoney, timesMoney, toCoins } from '../units/exact-money.js';
import { parseMoney } from '../units/money.js';
import { certain } from './cost-span.js';
import { pricePerUsable } from './hide-cost.js';
import { priceOfSet, toRow } from './set-price.js';
import type { MaterialLine, PriceRules } from './set-price.js';

const money = (text: string) => exactMoney(parseMoney(text));
const figure = (name: string, percent: number): PriceRules['figures'] =>
  DEFAULT_WORKSHOP.figures.map((each) =>
    each.name === name ? { ...each, value: { min: percent, max: percent } } : each,
  );

describe('the cost sheet of a saddle trade association', () => {
  // 1.09 sq ft at 7.97; a tie at 0.36; supplies 20 % of the leather; a return on materials of 0.57; 0.34 h at 40. The
  // sheet prints 8.69, 0.36, 1.74, 10.78, 0.57, 11.35, 13.60 and 24.95. It prints no share for the return: 5.25 % is
  // the round one that gives every figure.
  const line = (
    kind: 'leather' | 'hardware',
    name: string,
    cost: ReturnType<typeof money>,
  ): MaterialLine => ({
    kind,
    name,
    quantity: certain(1),
    unit: 'each',
    cost: certain(cost),
    place: name,
  });
  const lines = [
    line('leather', 'leather', timesMoney(money('7.97 USD'), '1.09')),
    line('hardware', 'tie', money('0.36 USD')),
  ];
  const rules: PriceRules = {
    figures: DEFAULT_WORKSHOP.figures.map((each) => {
      const share = { 'supplies, share of the leather': 20, 'return on materials': 5.25 }[each.name];
      return share === undefined ? each : { ...each, value: { min: share, max: share } };
    }),
    hourlyRate: parseMoney('40 USD'),
  };
  const { parts } = priceOfSet({ lines, hours: 0.34, currency: 'USD' }, rules);
  const printed = parts.map(toRow).map(({ kind, cost }) => [kind, cost?.likely.amount]);

  test('when it is reckoned anew, every printed figure comes out to the cent', () => {
    expect(printed).toEqual([
      ['leather', '8.69'],
      ['hardware', '0.36'],
      ['supplies', '1.74'],
      ['materials', '10.78'],
      ['return on materials', '0.57'],
      ['materials with return', '11.35'],
      ['work', '13.60'],
      ['price', '24.95'],
    ]);
  });

  test('when its lines are rounded before they are added, the materials are a cent more than it prints', () => {
    const cents = [8.69, 0.36, 1.74].reduce((sum, value) => sum + Math.round(value * 100), 0);
    expect(cents).toBe(1079);
    expect(printed).toContainEqual(['materials', '10.78']);
  });
});

describe('true price of leather', () => {
  test('when a side of 22 ft² at 280 loses 15 %, a usable ft² costs 14.97 (a supplier’s guide to pricing)', () => {
    expect(toCoins(pricePerUsable(money('280 USD'), 22, 0.85)).amount).toBe('14.97');
  });

  test('when nothing of it is usable, that is said', () => {
    expect(() => pricePerUsable(money('280 USD'), 22, 0)).toThrow(/is 0.*write a share above 0/);
  });
});

describe('the steps from cost to price', () => {
  const rules: PriceRules = {
    figures: figure('supplies, share of the leather', 10),
    hourlyRate: parseMoney('28 EUR'),
    overheadPercent: 18,
    profitPercent: 12,
    taxPercent: 19,
    rounding: { to: parseMoney('0.50 EUR'), way: 'up' },
  };
  const lines: MaterialLine[] = [
    {
      kind: 'leather',
      name: 'body',
      quantity: certain(1),
      unit: 'mm²',
      cost: certain(money('30 EUR')),
      place: 'body',
    },
    {
      kind: 'liquid',
      name: 'oil',
      quantity: certain(1),
      unit: 'mL',
      cost: { low: money('1 EUR'), likely: money('2 EUR'), high: money('4 EUR') },
      place: 'oil',
    },
    { kind: 'hardware', name: 'ring', quantity: certain(2), unit: 'each', place: 'ring' },
  ];
  const rows = priceOfSet({ lines, hours: 2, currency: 'EUR' }, rules).parts.map(toRow);
  const likely = new Map(rows.map(({ kind, cost }) => [kind, cost?.likely.amount]));

  // By hand: materials 30 + 2 + 3 = 35; work 56; overhead 18 % of 91 = 16.38; profit 12 % of 107.38 = 12.8856; with
  // tax (107.38 + 12.8856) × 1.19 = 143.116064, up to 143.50; of it tax 143.50 × 19 / 119 = 22.9118.
  test('when each share is taken of its own base, the price is what the hand says', () => {
    expect(Object.fromEntries(likely)).toMatchObject({
      supplies: '3.00',
      materials: '35.00',
      work: '56.00',
      overhead: '16.38',
      profit: '12.89',
      rounding: '0.32',
      'before tax': '120.59',
      tax: '22.91',
      price: '143.50',
    });
  });

  test('when a liquid takes more or less, the price has a span', () => {
    const price = rows.find(({ kind }) => kind === 'price')?.cost;
    expect([price?.low.amount, price?.high.amount]).toEqual(['142.00', '146.50']);
  });

  test('when something has no price, it stands there without one, and is never 0', () => {
    expect(rows.find(({ name }) => name === 'ring')).toEqual({
      kind: 'hardware',
      name: 'ring',
      quantity: certain(2),
      unit: 'each',
    });
  });
});
