import { leatherError } from '../words/refuse.js';
import { quoteValue } from '../words/sentence.js';

/** A number as people write it, with what is left of the text behind it. */
export interface NumberText {
  readonly value: number;
  /** Digits after the decimal mark as written; undefined for whole numbers and fractions. */
  readonly decimals?: string;
  /** The whole part as written. */
  readonly whole: string;
  readonly rest: string;
}

const VULGAR: Readonly<Record<string, readonly [number, number]>> = {
  '¼': [1, 4],
  '½': [1, 2],
  '¾': [3, 4],
  '⅓': [1, 3],
  '⅔': [2, 3],
  '⅛': [1, 8],
  '⅜': [3, 8],
  '⅝': [5, 8],
  '⅞': [7, 8],
};

const SPACED_FRACTION = /^(\d+)(?:\s+|\s*-\s*)(\d+)\s*[/⁄]\s*(\d+)(?!\d)/;
const PLAIN_FRACTION = /^(\d+)\s*[/⁄]\s*(\d+)(?!\d)/;
const VULGAR_FRACTION = /^(\d+)?\s*([¼½¾⅓⅔⅛⅜⅝⅞])/;
const POINTED_THOUSANDS = /^\d{1,3}(?:,\d{3})+(\.\d+)/;
const COMMA_THOUSANDS = /^\d{1,3}(?:\.\d{3})+(,\d+)/;
const DECIMAL = /^(\d+)?[.,](\d+)/;
const WHOLE = /^\d+/;

/**
 * Reads the number that a text starts with: "40", "1.5", "2,5", "1 1/2", "1-1/2", "3/4", "1½". A proper fraction
 * stays below 1. A comma before exactly three digits may be a decimal mark or may group thousands.
 * @returns undefined if the text starts with no such number
 * @throws LeatherError `ambiguous-comma`
 */
export function readNumber(text: string): NumberText | undefined {
  return readFraction(text) ?? readGrouped(text) ?? readDecimal(text) ?? readWhole(text);
}

function readFraction(text: string): NumberText | undefined {
  const spaced = SPACED_FRACTION.exec(text);
  if (spaced !== null) return fraction(text, spaced[0], spaced[1]!, [Number(spaced[2]), Number(spaced[3])]);
  const plain = PLAIN_FRACTION.exec(text);
  if (plain !== null) return fraction(text, plain[0], '0', [Number(plain[1]), Number(plain[2])]);
  const vulgar = VULGAR_FRACTION.exec(text);
  if (vulgar === null) return undefined;
  return fraction(text, vulgar[0], vulgar[1] ?? '0', VULGAR[vulgar[2]!]!);
}

/** "4/1" is no proper fraction: some write four and a quarter so. */
function fraction(
  text: string,
  match: string,
  whole: string,
  [top, bottom]: readonly [number, number],
): NumberText | undefined {
  if (top === 0 || top >= bottom) return undefined;
  return { value: Number(whole) + top / bottom, whole, rest: text.slice(match.length) };
}

function readGrouped(text: string): NumberText | undefined {
  const match = POINTED_THOUSANDS.exec(text) ?? COMMA_THOUSANDS.exec(text);
  if (match === null) return undefined;
  const decimals = match[1]!.slice(1);
  const whole = match[0].slice(0, -match[1]!.length).replace(/[.,]/g, '');
  return { value: Number(`${whole}.${decimals}`), whole, decimals, rest: text.slice(match[0].length) };
}

function readDecimal(text: string): NumberText | undefined {
  const match = DECIMAL.exec(text);
  if (match === null) return undefined;
  const whole = match[1] ?? '0';
  const decimals = match[2]!;
  const hasComma = match[0].includes(',');
  if (hasComma && decimals.length === 3 && /^[1-9]\d{0,2}$/.test(whole)) {
    const params = { found: quoteValue(text), decimal: `${whole}.${decimals}`, thousands: whole + decimals };
    throw leatherError('ambiguous-comma', params);
  }
  return { value: Number(`${whole}.${decimals}`), whole, decimals, rest: text.slice(match[0].length) };
}

function readWhole(text: string): NumberText | undefined {
  const match = WHOLE.exec(text);
  if (match === null || /^\s*[/⁄]/.test(text.slice(match[0].length))) return undefined;
  return { value: Number(match[0]), whole: match[0], rest: text.slice(match[0].length) };
}

/** A unit as written, without spaces, dots and letter case, "²" as "2". */
export function unitKey(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replace(/²/g, '2')
    .replace(/[\s.]+/g, ' ')
    .trim();
}
