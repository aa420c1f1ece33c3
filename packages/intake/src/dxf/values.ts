import { IntakeError } from '../error.js';
import { lineOf } from './pairs.js';
import type { Pairs } from './pairs.js';

const ZERO = 0x30;
const NINE = 0x39;
const POINT = 0x2e;
const MINUS = 0x2d;
const PLUS = 0x2b;

/** Up to this, a whole number and its quotient by a power of ten up to 1e22 are the double that the decimal text reads as. */
const EXACT_DIGITS = Number.MAX_SAFE_INTEGER;
const POWERS_OF_TEN = Array.from({ length: 23 }, (_, i) => Number(`1e${i}`));

/** The number that a value holds. Throws `bad-number` for what is none, or not finite. */
export function numberAt(pairs: Pairs, pair: number): number {
  const { bytes, starts, ends } = pairs;
  let i = starts[pair]!;
  const end = ends[pair]!;
  while (i < end && (bytes[i] === 0x20 || bytes[i] === 0x09)) i++;
  const from = i;
  const isNegative = bytes[i] === MINUS;
  if (isNegative || bytes[i] === PLUS) i++;
  let n = 0;
  let digits = 0;
  let decimals = 0;
  let isFraction = false;
  for (; i < end; i++) {
    const byte = bytes[i]!;
    if (byte >= ZERO && byte <= NINE) {
      n = n * 10 + byte - ZERO;
      digits++;
      if (isFraction) decimals++;
    } else if (byte === POINT && !isFraction) isFraction = true;
    else break;
  }
  if (i === end && digits > 0 && n <= EXACT_DIGITS && decimals < POWERS_OF_TEN.length) {
    const value = n / POWERS_OF_TEN[decimals]!;
    return isNegative ? -value : value;
  }
  return slowNumber(pairs, pair, from, end);
}

/** Exponents, and more digits than fit. */
function slowNumber(pairs: Pairs, pair: number, from: number, end: number): number {
  const text = latin(pairs.bytes, from, end);
  const value = text === '' ? NaN : Number(text);
  if (Number.isFinite(value)) return value;
  const place = { file: pairs.file, line: lineOf(pair) + 1 };
  throw new IntakeError('bad-number', { what: `group ${pairs.codes[pair]!}` }, place);
}

/** Flags and counts; a fraction is cut off. */
export function wholeAt(pairs: Pairs, pair: number): number {
  return Math.trunc(numberAt(pairs, pair));
}

/** A value of plain letters: names of entities, handles. */
export function wordAt({ bytes, starts, ends }: Pairs, pair: number): string {
  let start = starts[pair]!;
  while (start < ends[pair]! && bytes[start] === 0x20) start++;
  return latin(bytes, start, ends[pair]!);
}

function latin(bytes: Uint8Array, start: number, end: number): string {
  let text = '';
  for (let i = start; i < end; i++) text += String.fromCharCode(bytes[i]!);
  return text;
}

/** True if a value is this word, letter by letter: cheaper than making a string of it. */
export function isWord({ bytes, starts, ends }: Pairs, pair: number, word: string): boolean {
  const start = starts[pair]!;
  if (ends[pair]! - start !== word.length) return false;
  for (let i = 0; i < word.length; i++) {
    if (bytes[start + i] !== word.charCodeAt(i)) return false;
  }
  return true;
}
