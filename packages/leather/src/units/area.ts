import { LARGEST_AREA_MM2 } from '../files/schema/limits.js';
import { leatherError } from '../words/refuse.js';
import { quoteValue } from '../words/sentence.js';
import { SQUARE_FOOT_MM2, overFactor, timesFactor } from './constants.js';
import type { ExactFactor } from './constants.js';
import { withFraction } from './length.js';
import { readNumber, unitKey } from './number-text.js';
import type { NumberText } from './number-text.js';

const FOOT_NAMES = ['ft2', 'sq ft', 'sqft', 'sf', 'square foot', 'square feet'];
const AREA_UNITS: Readonly<Record<string, ExactFactor>> = {
  ...Object.fromEntries(FOOT_NAMES.map((name) => [name, SQUARE_FOOT_MM2])),
  m2: { of: 1_000_000, over: 1 },
  'sq m': { of: 1_000_000, over: 1 },
  dm2: { of: 10_000, over: 1 },
  cm2: { of: 100, over: 1 },
  mm2: { of: 1, over: 1 },
};

/** Small figures behind whole feet, as hides are marked: ¹ ² ³ are quarters. */
const QUARTER_MARKS = ['', '¹', '²', '³'] as const;

export function squareFeetToMm2(ft2: number): number {
  return timesFactor(ft2, SQUARE_FOOT_MM2);
}

export function mm2ToSquareFeet(mm2: number): number {
  return overFactor(mm2, SQUARE_FOOT_MM2);
}

/**
 * An area in mm²: "22 3/4 ft2", "22¾ ft²", "22³ ft2" (as marked on a hide), "2.1 m2", "210 dm2", "22.30 ft2".
 * One decimal of 1, 2 or 3 with feet ("22.3 ft2") is never guessed at: on invoices it means quarters or tenths.
 * @throws LeatherError `ambiguous-area`, `area-needs-unit`, `bad-area`, `out-of-range`, `ambiguous-comma`
 */
export function parseAreaMm2(value: string | number): number {
  const found = quoteValue(value);
  const text = typeof value === 'number' ? String(value) : value.trim();
  const number = readMarked(text) ?? readNumber(text);
  if (number === undefined) throw leatherError('bad-area', { found });
  const key = unitKey(number.rest);
  if (key === '') throw leatherError('area-needs-unit', { found });
  if (!Object.hasOwn(AREA_UNITS, key)) throw leatherError('bad-area', { found });
  if (FOOT_NAMES.includes(key)) refuseAmbiguity(number, found);
  const mm2 = timesFactor(number.value, AREA_UNITS[key]!);
  if (mm2 > LARGEST_AREA_MM2) {
    throw leatherError('out-of-range', { found, unit: 'm2', from: '0', to: String(LARGEST_AREA_MM2 / 1e6) });
  }
  return mm2;
}

function readMarked(text: string): NumberText | undefined {
  const match = /^(\d+)\s*([¹²³])/.exec(text);
  if (match === null) return undefined;
  const quarters = QUARTER_MARKS.indexOf(match[2] as '¹');
  return { value: Number(match[1]) + quarters / 4, whole: match[1]!, rest: text.slice(match[0].length) };
}

function refuseAmbiguity(number: NumberText, found: string): void {
  const { decimals, whole } = number;
  if (decimals === undefined || !/^[123]$/.test(decimals)) return;
  const inQuarters = Number(whole) + Number(decimals) / 4;
  throw leatherError('ambiguous-area', {
    found,
    quarters: withFraction(inQuarters * 4, 4),
    quartersFt2: inQuarters.toFixed(2),
    tenths: number.value.toFixed(2),
    quartersM2: (squareFeetToMm2(inQuarters) / 1e6).toFixed(3),
    tenthsM2: (squareFeetToMm2(number.value) / 1e6).toFixed(3),
  });
}

export type AreaUnit = 'ft2' | 'quarter ft2' | 'm2' | 'dm2' | 'cm2';

/**
 * An area for people. Feet are written with two decimals ("22.75 ft²"), so that they can't be taken for quarters, or
 * to the nearest quarter ("22 3/4 ft²").
 */
export function formatArea(mm2: number, options: { readonly unit: AreaUnit }): string {
  switch (options.unit) {
    case 'ft2':
      return `${mm2ToSquareFeet(mm2).toFixed(2)} ft²`;
    case 'quarter ft2':
      return `${withFraction(quarterFeet(mm2), 4)} ft²`;
    case 'm2':
      return `${(mm2 / 1e6).toFixed(3)} m²`;
    case 'dm2':
      return `${(mm2 / 1e4).toFixed(1)} dm²`;
    case 'cm2':
      return `${(mm2 / 100).toFixed(1)} cm²`;
  }
}

function quarterFeet(mm2: number): number {
  return Math.round(mm2ToSquareFeet(mm2) * 4);
}

/** The mark that is written on a hide: whole square feet with a small figure for the quarters, "22³". */
export function quarterFootMark(mm2: number): string {
  const quarters = quarterFeet(mm2);
  return `${Math.floor(quarters / 4)}${QUARTER_MARKS[(quarters % 4) as 0 | 1 | 2 | 3]}`;
}
