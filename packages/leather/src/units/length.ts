import { leatherError } from '../words/refuse.js';
import { quoteValue } from '../words/sentence.js';
import { FARTHEST_MM } from '../files/schema/limits.js';
import { FOOT_MM, INCH_MM, overFactor, timesFactor } from './constants.js';
import type { ExactFactor } from './constants.js';
import { readNumber, unitKey } from './number-text.js';

const MM: ExactFactor = { of: 1, over: 1 };
const LENGTH_UNITS: Readonly<Record<string, ExactFactor>> = {
  mm: MM,
  cm: { of: 10, over: 1 },
  m: { of: 1000, over: 1 },
  in: INCH_MM,
  inch: INCH_MM,
  inches: INCH_MM,
  '"': INCH_MM,
  '″': INCH_MM,
  '”': INCH_MM,
  ft: FOOT_MM,
  foot: FOOT_MM,
  feet: FOOT_MM,
  "'": FOOT_MM,
  '′': FOOT_MM,
  '’': FOOT_MM,
};

/**
 * A length in mm, from 0 to 50 m: a bare number is mm, a text carries its unit (mm, cm, m, in, ft).
 * @throws LeatherError `bad-length`, `out-of-range`, `ambiguous-comma`
 */
export function parseLengthMm(value: string | number): number {
  const mm = typeof value === 'number' ? value : readLength(value);
  if (mm === undefined || !Number.isFinite(mm))
    throw leatherError('bad-length', { found: quoteValue(value) });
  if (mm < 0 || mm > FARTHEST_MM) {
    throw leatherError('out-of-range', { found: quoteValue(value), unit: 'mm', from: '0', to: '50,000' });
  }
  return mm;
}

function readLength(text: string): number | undefined {
  const number = readNumber(text.trim());
  if (number === undefined) return undefined;
  const key = unitKey(number.rest);
  return Object.hasOwn(LENGTH_UNITS, key) ? timesFactor(number.value, LENGTH_UNITS[key]!) : undefined;
}

/** Fractions of an inch that a rule shows. */
const INCH_PARTS = 64;
/** A length this near to a mark of the rule is written as that mark. In mm. */
const NEAR_MARK_MM = 0.001;

/** A length for people: "38.1 mm", "3.81 cm", "1 1/2 in"; what is on no 1/64 in mark is written "1.504 in". */
export function formatLength(mm: number, options: { readonly unit: 'mm' | 'cm' | 'm' | 'in' }): string {
  switch (options.unit) {
    case 'mm':
      return `${trimmed(mm, 2)} mm`;
    case 'cm':
      return `${trimmed(mm / 10, 2)} cm`;
    case 'm':
      return `${trimmed(mm / 1000, 3)} m`;
    case 'in':
      return `${inchWords(mm)} in`;
  }
}

/** A number with at most so many decimals, without trailing zeros. */
export function trimmed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return short === '-0' ? '0' : short;
}

function inchWords(mm: number): string {
  const parts = Math.round(overFactor(mm, INCH_MM) * INCH_PARTS);
  const off = Math.abs(timesFactor(parts / INCH_PARTS, INCH_MM) - mm);
  if (off > NEAR_MARK_MM || mm < 0) return trimmed(overFactor(mm, INCH_MM), 3);
  return withFraction(parts, INCH_PARTS);
}

/** 91 of 4 as "22 3/4". */
export function withFraction(parts: number, perWhole: number): string {
  const whole = Math.floor(parts / perWhole);
  let top = parts - whole * perWhole;
  let bottom = perWhole;
  while (top !== 0 && top % 2 === 0 && bottom % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  if (top === 0) return String(whole);
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`;
}
