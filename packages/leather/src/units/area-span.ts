import type { Span } from '../model/workshop-rules.js';
import { leatherError } from '../words/refuse.js';
import { quoteValue } from '../words/sentence.js';
import { mm2ToSquareFeet, parseAreaMm2 } from './area.js';

const SPAN = /^(.*?\d\S*)\s*(?:-|–|\bto\b)\s*(\d.*)$/;
const HAS_UNIT = /[a-z]/i;
const UNIT = /\s*([a-z][a-z .]*[²2]?)\s*$/i;

/**
 * A span of area in mm²: "20-22 ft2", "20 ft2 to 22 ft2", "190-210 dm2", "22 ft2". Without a unit, the first figure has
 * the second one's.
 * @throws LeatherError as `parseAreaMm2`, `area-reversed`
 */
export function parseAreaSpanMm2(text: string): Span {
  const match = SPAN.exec(text.trim());
  if (match === null) {
    const mm2 = roundArea(parseAreaMm2(text));
    return { min: mm2, max: mm2 };
  }
  const [, from = '', to = ''] = match;
  const unit = UNIT.exec(to)?.[1] ?? '';
  const span = {
    min: roundArea(parseAreaMm2(HAS_UNIT.test(from) ? from : `${from} ${unit}`)),
    max: roundArea(parseAreaMm2(to)),
  };
  if (span.min > span.max) throw leatherError('area-reversed', { found: quoteValue(text) });
  return span;
}

/** To a hundredth of a mm²: what is written and read again is the same. */
function roundArea(mm2: number): number {
  return Math.round(mm2 * 100) / 100;
}

/** "20-22 ft2" where both are whole quarters of a square foot, else in dm². `parseAreaSpanMm2` reads it back. */
export function writeAreaSpan({ min, max }: Span): string {
  const unit = isQuarters(min) && isQuarters(max) ? 'ft2' : 'dm2';
  const figure = unit === 'ft2' ? inFeet : inDm2;
  return min === max ? `${figure(min)} ${unit}` : `${figure(min)}-${figure(max)} ${unit}`;
}

function isQuarters(mm2: number): boolean {
  const quarters = mm2ToSquareFeet(mm2) * 4;
  return Math.abs(quarters - Math.round(quarters)) < 1e-6;
}

/** Two decimals can't be taken for quarters. */
function inFeet(mm2: number): string {
  const feet = Math.round(mm2ToSquareFeet(mm2) * 4) / 4;
  return Number.isInteger(feet) ? String(feet) : feet.toFixed(2);
}

/** Six decimals hold a hundredth of a mm², and can't be taken for thousands. */
function inDm2(mm2: number): string {
  return (mm2 / 1e4).toFixed(6);
}
