import { readNumber } from '../units/number-text.js';
import { formatLength, parseLengthMm } from '../units/length.js';
import { leatherError } from '../words/refuse.js';
import { quoteValue } from '../words/sentence.js';
import { BAR_MM } from './sheet-plan.js';
import type { MeasuredBars } from './sheet-plan.js';

/** A printer that is asked for 100 % stays within 1 %, "fit to page" makes 3 to 8 %; beyond this it is a slip. */
export const MOST_PRINT_OFF = 0.1;

/**
 * The measured bars as a person writes them, across first: "159.2 x 218.9" in mm, or each with its unit
 * ("6 1/4 in x 8 5/8 in"); a unit at the end holds for both.
 * @throws LeatherError `bars-unreadable`, `bars-swapped`, `bar-far-off`
 */
export function parseMeasuredBars(written: string): MeasuredBars {
  const parts = written.split(/[x×*]/i).map((part) => part.trim());
  const [across, down] = parts;
  if (across === undefined || down === undefined || parts.length > 2) throw unreadable(written);
  const unit = unitOf(down, written);
  const bars = {
    acrossMm: lengthOf(unitOf(across, written) === '' ? `${across} ${unit}` : across, written),
    downMm: lengthOf(down, written),
  };
  refuseFarOff(bars);
  return bars;
}

function unitOf(part: string, written: string): string {
  const number = readNumber(part);
  if (number === undefined) throw unreadable(written);
  return number.rest.trim();
}

function lengthOf(part: string, written: string): number {
  try {
    return parseLengthMm(unitOf(part, written) === '' ? `${part} mm` : part);
  } catch {
    throw unreadable(written);
  }
}

function unreadable(written: string) {
  return leatherError('bars-unreadable', { found: quoteValue(written) });
}

function refuseFarOff({ acrossMm, downMm }: MeasuredBars): void {
  if (
    isFarOff(acrossMm, BAR_MM.across) &&
    !isFarOff(acrossMm, BAR_MM.down) &&
    !isFarOff(downMm, BAR_MM.across)
  ) {
    throw leatherError('bars-swapped', { across: inMm(acrossMm), down: inMm(downMm) });
  }
  for (const [which, mm, drawnMm] of [
    ['across', acrossMm, BAR_MM.across],
    ['down', downMm, BAR_MM.down],
  ] as const) {
    if (!isFarOff(mm, drawnMm)) continue;
    const params = { which, found: inMm(mm), drawn: inMm(drawnMm), most: MOST_PRINT_OFF * 100 };
    throw leatherError('bar-far-off', params);
  }
}

function isFarOff(mm: number, drawnMm: number): boolean {
  return Math.abs(mm - drawnMm) > drawnMm * MOST_PRINT_OFF;
}

function inMm(mm: number): string {
  return formatLength(mm, { unit: 'mm' });
}
