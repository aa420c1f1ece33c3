import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LeatherError } from '../leather-error.js';
import type { Money } from '../model/marks.js';
import { coinDecimals } from './currency.js';
import {
  exactMoney,
  moneyText,
  overMoney,
  percentOfMoney,
  plusMoney,
  roundMoney,
  shareOfMoney,
  sumPlacedMoney,
  timesMoney,
  toCoins,
} from './exact-money.js';
import { exactNumber } from './exact-number.js';
import { parseMoney } from './money.js';

const sum = (text: string) => exactMoney(parseMoney(text));

/** Amounts with up to four decimals, as hundredths of a hundredth. */
const amount = fc.bigInt({ min: 0n, max: 10n ** 13n });
const amountText = (n: bigint): string => `${n / 10_000n}.${String(n % 10_000n).padStart(4, '0')}`;

/** Reference: schoolbook rounding of top/under hundredths, written from its definition, on whole numbers alone. */
function hundredths(top: bigint, under: bigint): string {
  let whole = (top * 100n) / under;
  if ((top * 100n - whole * under) * 2n >= under) whole += 1n;
  const digits = String(whole).padStart(3, '0');
  return `${digits.slice(0, -2)}.${digits.slice(-2)}`;
}

const SEED = { seed: 20260302, numRuns: 500 } as const;

describe('exact money, against whole-number arithmetic written apart', () => {
  test('when sums are added, multiplied and divided, only the end is rounded', () => {
    fc.assert(
      fc.property(
        fc.array(amount, { minLength: 1, maxLength: 20 }),
        fc.bigInt({ min: 0n, max: 99_999n }),
        fc.bigInt({ min: 1n, max: 9_999n }),
        (amounts, thousandths, under) => {
          const lines = amounts.map((n) => ({ money: sum(`${amountText(n)} EUR`), place: 'a line' }));
          const factor = `${thousandths / 1000n}.${String(thousandths % 1000n).padStart(3, '0')}`;
          const all = overMoney(timesMoney(sumPlacedMoney(lines)!, factor), String(under));
          const top = amounts.reduce((a, b) => a + b, 0n) * thousandths;
          expect(toCoins(all).amount).toBe(hundredths(top, 10_000n * 1000n * under));
        },
      ),
      SEED,
    );
  });

  test('when a sum is shared by areas, the shares add up to it exactly', () => {
    fc.assert(
      fc.property(
        amount,
        fc.array(fc.double({ min: 0.001, max: 5e6, noNaN: true }), { minLength: 1, maxLength: 30 }),
        (n, areas) => {
          const money = sum(`${amountText(n)} EUR`);
          // Areas as files hold them: to a thousandth, so that their own sum is exact, too.
          const inThousandths = areas.map((area) => Math.max(1, Math.round(area * 1000)));
          const whole = inThousandths.reduce((a, b) => a + b, 0);
          const shares = inThousandths.map((part) => ({
            money: shareOfMoney(money, part, whole),
            place: 'a share',
          }));
          expect(sumPlacedMoney(shares)).toEqual(money);
        },
      ),
      SEED,
    );
  });

  test('when a price is rounded up to a step, it is the least multiple that is not below it', () => {
    fc.assert(
      fc.property(amount, fc.bigInt({ min: 1n, max: 5000n }), (n, cents) => {
        const to: Money = {
          amount: `${cents / 100n}.${String(cents % 100n).padStart(2, '0')}`,
          currency: 'EUR',
        };
        const got = roundMoney(sum(`${amountText(n)} EUR`), { to, way: 'up' });
        const gotCents = BigInt(got.amount.replace('.', ''));
        expect(gotCents % cents).toBe(0n);
        expect(gotCents * 100n >= n && (gotCents - cents) * 100n < n).toBe(true);
      }),
      SEED,
    );
  });
});

describe('money', () => {
  test('when a number is no binary fraction, it counts as it is written', () => {
    expect(exactNumber(0.1)).toEqual({ over: 1n, under: 10n });
    expect(exactNumber(1e-7)).toEqual({ over: 1n, under: 10_000_000n });
    expect(exactNumber(2.5e21)).toEqual({ over: 2_500_000_000_000_000_000_000n, under: 1n });
    expect(toCoins(timesMoney(sum('0.10 EUR'), 3)).amount).toBe('0.30');
    // 1.005 is below its half as a binary number: 1.00 would be wrong.
    expect(toCoins(sum('1.005 EUR')).amount).toBe('1.01');
  });

  test('when sums have two currencies, the sentence names both places', () => {
    const lines = [
      { money: sum('1 EUR'), place: 'the price of hide "side-7"' },
      { money: sum('2 EUR'), place: 'the hardware "rivet"' },
      { money: sum('2 USD'), place: 'the thread "linen"' },
    ];
    let thrown: unknown;
    try {
      sumPlacedMoney(lines);
    } catch (error) {
      thrown = error;
    }
    expect(thrown).toBeInstanceOf(LeatherError);
    expect(thrown).toMatchObject({
      code: 'mixed-currencies',
      message: `Sums of two currencies can't be added: the price of hide "side-7" is in EUR, the thread "linen" is in USD; write all prices in one currency.`,
    });
    expect(() => plusMoney(sum('1 EUR'), sum('1 USD'))).toThrow(/"1.00 EUR" is in EUR, "1.00 USD" is in USD/);
    expect(() => roundMoney(sum('1 EUR'), { to: parseMoney('1 USD'), way: 'up' })).toThrow(
      /rounded to is in USD/,
    );
  });

  test('when prices are rounded to a step, up and to the nearest differ, and halves go up', () => {
    const half = parseMoney('0.50 EUR');
    expect(roundMoney(sum('10.01 EUR'), { to: half, way: 'up' })).toEqual(parseMoney('10.50 EUR'));
    expect(roundMoney(sum('10.50 EUR'), { to: half, way: 'up' })).toEqual(parseMoney('10.50 EUR'));
    expect(roundMoney(sum('10.24 EUR'), { to: half, way: 'nearest' })).toEqual(parseMoney('10.00 EUR'));
    expect(roundMoney(sum('10.25 EUR'), { to: half, way: 'nearest' })).toEqual(parseMoney('10.50 EUR'));
    expect(() => roundMoney(sum('1 EUR'), { to: parseMoney('0 EUR'), way: 'up' })).toThrow(/multiples of 0/);
  });

  test('when the currency has no cents, or thousandths, sums are rounded to its own coin', () => {
    expect(toCoins(sum('1234.5 JPY')).amount).toBe('1235');
    expect(toCoins(sum('1.2345 KWD')).amount).toBe('1.235');
    expect(moneyText({ amount: '1234567.50', currency: 'EUR' })).toBe('1,234,567.50 EUR');
  });

  test('when per cents are taken, 20 % of 8.6873 is 1.73746', () => {
    const leather = timesMoney(sum('7.97 USD'), '1.09');
    expect(percentOfMoney(leather, 20).amount).toEqual(exactNumber('1.73746'));
  });

  // Against the currency data of the Unicode CLDR that Node's ICU carries; it says 2 for some that ISO 4217 has with 4.
  test.each(
    'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF BHD JOD KWD OMR TND EUR USD GBP INR'.split(
      ' ',
    ),
  )('when money is in %s, its coin has as many decimals as ICU says', (currency) => {
    const { maximumFractionDigits } = new Intl.NumberFormat('en', {
      style: 'currency',
      currency,
    }).resolvedOptions();
    expect(coinDecimals(currency)).toBe(maximumFractionDigits);
  });
});
