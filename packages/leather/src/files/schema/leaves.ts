import { ROTATION_DECIMALS, roundCoordinate } from '@hidebound/geometry';
import * as v from 'valibot';
import { groupDigits, listWords } from '../../words/sentence.js';
import {
  AREA_DECIMALS,
  FACTOR_DECIMALS,
  FARTHEST_MM,
  LARGEST_AREA_MM2,
  LONGEST_NAME,
  LONGEST_TEXT,
  MOST_COPIES,
  SHARE_DECIMALS,
  THICKEST_MM,
  UNIT_DECIMALS,
} from './limits.js';
import { stored } from './group.js';

/** Each leaf's message is the words for what would be right: "it should be …". */

export function roundTo(decimals: number): (value: number) => number {
  const scale = 10 ** decimals;
  return (value) => {
    const steps = Math.round(Math.abs(value) * scale);
    return value < 0 && steps !== 0 ? -steps / scale : steps / scale;
  };
}

interface NumberRange {
  readonly from: number;
  readonly to: number;
  /** The range does not include its lower end. */
  readonly above?: boolean;
  readonly round: (value: number) => number;
}

/** A number within a range, rounded on reading as on writing, so that memory and file say the same. */
export function numberLeaf(words: string, range: NumberRange) {
  const upper = v.maxValue<number, number, string>(range.to, words);
  const rounded = v.transform(range.round);
  const schema =
    range.above === true
      ? v.pipe(v.number(words), v.gtValue(range.from, words), upper, rounded)
      : v.pipe(v.number(words), v.minValue(range.from, words), upper, rounded);
  return stored<v.GenericSchema<number>>(schema, range.round);
}

export const coordinate = numberLeaf('a coordinate in mm, at most 50,000 either way', {
  from: -FARTHEST_MM,
  to: FARTHEST_MM,
  round: roundCoordinate,
});
export const lengthMm = numberLeaf('a length in mm from 0 to 50,000', {
  from: 0,
  to: FARTHEST_MM,
  round: roundCoordinate,
});
export const positiveMm = numberLeaf('a length in mm above 0, at most 50,000', {
  from: 0,
  to: FARTHEST_MM,
  above: true,
  round: roundCoordinate,
});
export const factor = numberLeaf('a number above 0, at most 50,000', {
  from: 0,
  to: FARTHEST_MM,
  above: true,
  round: roundTo(FACTOR_DECIMALS),
});
export const thicknessMm = numberLeaf('a thickness in mm above 0, at most 50', {
  from: 0,
  to: THICKEST_MM,
  above: true,
  round: roundCoordinate,
});
export const areaMm2 = numberLeaf('an area in mm², 0 or more', {
  from: 0,
  to: LARGEST_AREA_MM2,
  round: roundTo(AREA_DECIMALS),
});
export const angleDeg = numberLeaf('an angle in degrees from -360 to 360', {
  from: -360,
  to: 360,
  round: roundTo(ROTATION_DECIMALS),
});
export const toleranceDeg = numberLeaf('an angle in degrees from 0 to 180', {
  from: 0,
  to: 180,
  round: roundTo(ROTATION_DECIMALS),
});
export const share = numberLeaf('a share from 0 to 1', { from: 0, to: 1, round: roundTo(SHARE_DECIMALS) });
/** Half of a unit vector, finer than a share: its angle is off by less than 1e-6 degrees. */
export const unitShare = numberLeaf('a number from -1 to 1', {
  from: -1,
  to: 1,
  round: roundTo(UNIT_DECIMALS),
});
export const pxPerMm = numberLeaf('a number of pixels per mm above 0, at most 1,000', {
  from: 0,
  to: 1000,
  above: true,
  round: roundTo(SHARE_DECIMALS),
});
/** Hours, parts, values: quantities without a unit of length. */
export const quantity = numberLeaf('a number from 0 to 1,000,000', {
  from: 0,
  to: 1_000_000,
  round: roundTo(SHARE_DECIMALS),
});
export const percent = numberLeaf('a percentage from 0 to 1,000', {
  from: 0,
  to: 1000,
  round: roundTo(SHARE_DECIMALS),
});

export function wholeNumber(from: number, to: number) {
  const words = `a whole number from ${groupDigits(from)} to ${groupDigits(to)}`;
  return v.pipe(v.number(words), v.integer(words), v.minValue(from, words), v.maxValue(to, words));
}

export const count = wholeNumber(1, MOST_COPIES);
export const countOrNone = wholeNumber(0, MOST_COPIES);
export const priority = wholeNumber(-1000, 1000);
export const serial = wholeNumber(1, 1_000_000_000);
export const seed = wholeNumber(0, Number.MAX_SAFE_INTEGER);

const NAME_WORDS = `a name of 1 to ${LONGEST_NAME} characters on one line`;

const ONE_LINE = /^[^\u0000-\u001f\u007f]*$/;
export const name = v.pipe(
  v.string(NAME_WORDS),
  v.minLength(1, NAME_WORDS),
  v.maxLength(LONGEST_NAME, NAME_WORDS),
  v.regex(/^(?=.*\S)[^\u0000-\u001f\u007f]*$/, NAME_WORDS),
);

const TEXT_WORDS = `text of at most ${groupDigits(LONGEST_TEXT)} characters`;
export const text = v.pipe(v.string(TEXT_WORDS), v.maxLength(LONGEST_TEXT, TEXT_WORDS));

const PATH_WORDS = 'the path of a file';
export const filePath = v.pipe(
  v.string(PATH_WORDS),
  v.minLength(1, PATH_WORDS),
  v.maxLength(1000, PATH_WORDS),
  v.regex(ONE_LINE, PATH_WORDS),
);

const HASH_WORDS = 'a SHA-256 sum: 64 digits 0-9 and a-f';
export const hash = v.pipe(v.string(HASH_WORDS), v.regex(/^[0-9a-f]{64}$/, HASH_WORDS));

const DATE_WORDS = 'a day such as "2026-03-21"';
export const day = v.pipe(
  v.string(DATE_WORDS),
  v.regex(/^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])$/, DATE_WORDS),
  v.check(isRealDay, DATE_WORDS),
);

const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

function isRealDay(text: string): boolean {
  const [year = 0, month = 0, date = 0] = text.split('-').map(Number);
  const isLeap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  return date <= (month === 2 && isLeap ? 29 : (DAYS[month - 1] ?? 0));
}

const AMOUNT_WORDS = 'an amount in text such as "12.50"';
export const amount = v.pipe(v.string(AMOUNT_WORDS), v.regex(/^\d{1,12}(?:\.\d{1,4})?$/, AMOUNT_WORDS));

const CURRENCY_WORDS = 'a currency of three letters such as "EUR"';
export const currency = v.pipe(v.string(CURRENCY_WORDS), v.regex(/^[A-Z]{3}$/, CURRENCY_WORDS));

export const flag = v.boolean('true or false');

/** One of some words. */
export function oneOf<const Words extends readonly string[]>(words: Words) {
  return v.picklist(words, listWords(words.map((word) => `"${word}"`)));
}

export function exactly<const Word extends string>(word: Word) {
  return v.literal(word, `"${word}"`);
}
