import { roundCoordinate } from '@hidebound/geometry';
import * as v from 'valibot';
import type { ThicknessRange } from '../../model/marks.js';
import { parseAngleDeg } from '../../units/angle.js';
import { parseLengthMm } from '../../units/length.js';
import { parseMoney } from '../../units/money.js';
import { readPriceUnit } from '../../units/price-unit.js';
import { parseThickness } from '../../units/thickness.js';
import { angleDeg, name, quantity } from './leaves.js';
import { readWith } from './problem.js';

/** Quantities in files that people write: a bare number is mm or degrees, a text carries its unit. */

function numberOrText(words: string) {
  return v.union([v.number(words), v.string(words)], words);
}

const LENGTH_WORDS = 'a length: millimetres as a bare number (40), or with a unit ("4 cm", "1 1/2 in")';
export const writtenLength = v.pipe(
  numberOrText(LENGTH_WORDS),
  readWith(parseLengthMm),
  v.transform(roundCoordinate),
);

const POSITIVE_WORDS = 'a length above 0';
export const writtenPositive = v.pipe(
  writtenLength,
  v.check((mm) => mm > 0, POSITIVE_WORDS),
);

/** Thread comes by the kilometre: longer than anything that is laid. */
const LONGEST_THREAD_MM = 1_000_000;
const THREAD_WORDS = 'a length from 0 to 1 km: millimetres as a bare number, or with a unit ("12 m")';
export const writtenThread = v.pipe(
  numberOrText(THREAD_WORDS),
  readWith(readThread),
  v.transform(roundCoordinate),
  v.check((mm) => mm >= 0 && mm <= LONGEST_THREAD_MM, THREAD_WORDS),
);

/** Reads "60 m" too, which is too long for a piece. */
function readThread(value: string | number): number {
  const metres = typeof value === 'string' ? /^(\d+(?:\.\d+)?)\s*m$/.exec(value.trim())?.[1] : undefined;
  if (metres !== undefined) return Number(metres) * 1000;
  return typeof value === 'number' ? value : parseLengthMm(value);
}

const THICKNESS_WORDS = 'a thickness: millimetres as a bare number (2), "2.0-2.4 mm" or "4-5 oz"';
export const writtenThickness = v.pipe(
  numberOrText(THICKNESS_WORDS),
  readWith(parseThickness),
  v.transform((range): ThicknessRange => ({
    minMm: roundCoordinate(range.minMm),
    maxMm: roundCoordinate(range.maxMm),
  })),
);

const ANGLE_WORDS = 'an angle: degrees as a bare number (90), or "90 deg"';
export const writtenAngle = v.pipe(
  numberOrText(ANGLE_WORDS),
  readWith(parseAngleDeg),
  v.transform((degrees) => angleDeg.encode(degrees) as number),
);

const TOLERANCE_WORDS = 'an angle from 0 to 180 degrees';
export const writtenTolerance = v.pipe(
  writtenAngle,
  v.check((degrees) => degrees >= 0 && degrees <= 180, TOLERANCE_WORDS),
);

const MONEY_WORDS = 'a price such as "12.50 EUR"';
export const writtenMoney = v.pipe(v.string(MONEY_WORDS), readWith(parseMoney));

export const writtenPriceUnit = v.pipe(name, readWith(readPriceUnit));

const VERSION_WORDS = 'a version as a whole number, or in quotes ("1.10")';
export const writtenVersion = v.pipe(
  v.union([v.pipe(v.number(VERSION_WORDS), v.integer(VERSION_WORDS)), name], VERSION_WORDS),
  v.transform(String),
);

const PERCENT_WORDS = 'a percentage: a bare number (20), or "20 %"';
export const writtenPercent = v.pipe(
  numberOrText(PERCENT_WORDS),
  v.transform((value) => (typeof value === 'number' ? value : readPercent(value))),
  v.check((value) => value >= 0 && value <= 1000, `${PERCENT_WORDS}, from 0 to 1,000`),
  v.transform((value) => quantity.encode(value) as number),
);

function readPercent(text: string): number {
  return Number(/^(\d+(?:\.\d+)?)\s*%$/.exec(text.trim())?.[1] ?? NaN);
}
