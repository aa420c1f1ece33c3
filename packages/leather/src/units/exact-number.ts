/** An exact number as a fraction of whole numbers; `under` is above 0. */
export interface ExactNumber {
  readonly over: bigint;
  readonly under: bigint;
}

const DECIMAL = /^(-?)(\d+)(?:\.(\d+))?(?:e([+-]?\d+))?$/i;

/**
 * The exact value of a decimal text ("12.50"), of a whole number, or of a number as it is written: 0.1 is a tenth, not
 * the binary number next to it.
 * Fails with a RangeError on what is no finite decimal number: callers read what people write before.
 */
export function exactNumber(value: number | string | bigint): ExactNumber {
  if (typeof value === 'bigint') return { over: value, under: 1n };
  const match = DECIMAL.exec(String(value));
  if (match === null) throw new RangeError(`${String(value)} is no decimal number.`);
  const [, sign = '', whole = '0', decimals = '', exponent = '0'] = match;
  const digits = BigInt(`${sign}${whole}${decimals}`);
  const power = Number(exponent) - decimals.length;
  return power < 0
    ? lowest({ over: digits, under: 10n ** BigInt(-power) })
    : { over: digits * 10n ** BigInt(power), under: 1n };
}

export function plus(a: ExactNumber, b: ExactNumber): ExactNumber {
  return lowest({ over: a.over * b.under + b.over * a.under, under: a.under * b.under });
}

export function times(a: ExactNumber, b: ExactNumber): ExactNumber {
  return lowest({ over: a.over * b.over, under: a.under * b.under });
}

/** Fails with a RangeError where `b` is 0. */
export function over(a: ExactNumber, b: ExactNumber): ExactNumber {
  if (b.over === 0n) throw new RangeError('Nothing can be divided by 0.');
  const sign = b.over < 0n ? -1n : 1n;
  return lowest({ over: sign * a.over * b.under, under: sign * b.over * a.under });
}

/** Whether a is less than b (-1), the same (0) or more (1). */
export function compareExact(a: ExactNumber, b: ExactNumber): -1 | 0 | 1 {
  const difference = a.over * b.under - b.over * a.under;
  if (difference === 0n) return 0;
  return difference < 0n ? -1 : 1;
}

/** The whole number next to it: halves away from 0, as sums of money are rounded, or always up. */
export function toWhole({ over: top, under }: ExactNumber, way: 'nearest' | 'up'): bigint {
  if (way === 'nearest') {
    const size = top < 0n ? -top : top;
    const whole = (2n * size + under) / (2n * under);
    return top < 0n ? -whole : whole;
  }
  const floor = top / under;
  return top > 0n && top % under !== 0n ? floor + 1n : floor;
}

/** As an ordinary number, for drawing and for comparing with areas; the nearest one but for the last digits. */
export function toNumber({ over: top, under }: ExactNumber): number {
  const SCALE = 10n ** 12n;
  return Number((top * SCALE) / under) / Number(SCALE);
}

function lowest({ over: top, under }: ExactNumber): ExactNumber {
  const divisor = commonDivisor(top < 0n ? -top : top, under);
  return divisor === 1n ? { over: top, under } : { over: top / divisor, under: under / divisor };
}

function commonDivisor(a: bigint, b: bigint): bigint {
  let [x, y] = [a, b];
  while (y !== 0n) [x, y] = [y, x % y];
  return x === 0n ? 1n : x;
}
