import type { ThicknessRange } from '../model/marks.js';
import { THICKEST_MM } from '../files/schema/limits.js';
import { leatherError } from '../words/refuse.js';
import { quoteValue } from '../words/sentence.js';
import { OUNCE_MM, overFactor, timesFactor } from './constants.js';
import { trimmed } from './length.js';
import { readNumber, unitKey } from './number-text.js';

/** 1 oz is 1/64 in: a name for a thickness, not a weight. */
export function ouncesToMm(ounces: number): number {
  return timesFactor(ounces, OUNCE_MM);
}

export function mmToOunces(mm: number): number {
  return overFactor(mm, OUNCE_MM);
}

const OUNCE_NAMES = ['oz', 'ounce', 'ounces'];

/**
 * A span of thickness: a bare number is mm, a text carries its unit: "2.0-2.4 mm", "4-5 oz", "4 to 5 oz", "3 oz".
 * A single figure is a span from itself to itself.
 * @throws LeatherError `bad-thickness`, `ambiguous-ounces`, `thickness-reversed`, `out-of-range`, `ambiguous-comma`
 */
export function parseThickness(value: string | number): ThicknessRange {
  if (typeof value === 'string') refuseSlashedOunces(value);
  const range = typeof value === 'number' ? { minMm: value, maxMm: value } : readSpan(value);
  if (range === undefined || !Number.isFinite(range.minMm) || range.minMm <= 0) {
    throw leatherError('bad-thickness', { found: quoteValue(value) });
  }
  if (range.minMm > range.maxMm) {
    throw leatherError('thickness-reversed', {
      from: trimmed(range.minMm, 2),
      to: trimmed(range.maxMm, 2),
    });
  }
  if (range.maxMm > THICKEST_MM) {
    const to = String(THICKEST_MM);
    throw leatherError('out-of-range', { found: quoteValue(value), unit: 'mm', from: 'above 0', to });
  }
  return range;
}

const SLASHED = /^\s*(\d+)\s*\/\s*(\d+)\s*(?:oz|ounces?)\.?\s*$/i;

/** "4/5 oz" on a label means 4 to 5 oz; as a number it is four fifths of one. */
function refuseSlashedOunces(text: string): void {
  const match = SLASHED.exec(text);
  if (match === null) return;
  const [, from = '', to = ''] = match;
  const ounces = trimmed(Number(from) / Number(to), 3);
  throw leatherError('ambiguous-ounces', { found: quoteValue(text), from, to, ounces });
}

const TO = /^\s*(?:-|–|—|to\b)\s*/i;

function readSpan(text: string): ThicknessRange | undefined {
  const first = readNumber(text.trim());
  if (first === undefined) return undefined;
  const joint = TO.exec(first.rest);
  const second = joint === null ? first : readNumber(first.rest.slice(joint[0].length));
  if (second === undefined) return undefined;
  const unit = unitKey(second.rest);
  if (unit === 'mm') return { minMm: first.value, maxMm: second.value };
  if (!OUNCE_NAMES.includes(unit)) return undefined;
  return { minMm: ouncesToMm(first.value), maxMm: ouncesToMm(second.value) };
}

/** A span for people: "2–2.4 mm", "4–5 oz"; one figure where both ends are the same. */
export function formatThickness(range: ThicknessRange, options: { readonly unit: 'mm' | 'oz' }): string {
  const isMm = options.unit === 'mm';
  const [from, to] = [range.minMm, range.maxMm].map((mm) =>
    trimmed(isMm ? mm : mmToOunces(mm), isMm ? 2 : 1),
  );
  return from === to ? `${from} ${options.unit}` : `${from}–${to} ${options.unit}`;
}
