import { DEFAULT_IRONS, ironPitchOfTeethMm, pitchOfStitchesMm } from '../stitch/irons.js';
import { leatherError } from '../words/refuse.js';
import { quoteValue } from '../words/sentence.js';
import { parseLengthMm, trimmed } from './length.js';

/** Finer than any thread, and coarser than any lacing. In mm. */
const FINEST_PITCH_MM = 0.5;
const COARSEST_PITCH_MM = 50;

/** Words that count by the inch: "8 spi", "8 per inch", "8 teeth", "8/in". A length in inches ("1/8 in") is none. */
const BY_THE_INCH = /[stp]pi\b|\bper\b|\bto (?:the|an) in|\/\s*(?:in|")|stitch|\bsts?\b|teeth|tooth|prong/i;

/** Whole numbers that are teeth or stitches to the inch far more often than mm. */
const FEWEST_TEETH = 6;
const MOST_TEETH = 16;

/**
 * A pitch in mm, from hole to hole: a bare number is mm, a text carries its unit (mm, cm, in). What counts by the
 * inch is never converted, because an iron of 8 teeth and 8 stitches to the inch are two pitches: both are named.
 * @throws LeatherError `pitch-by-the-inch`, `ambiguous-pitch`, `bad-length`, `out-of-range`, `ambiguous-comma`
 */
export function parsePitchMm(value: string | number): number {
  const found = quoteValue(value);
  if (typeof value === 'string' && BY_THE_INCH.test(value)) {
    const number = /\d+(?:[.,]\d+)?/.exec(value)?.[0];
    const perInch = Number(number?.replace(',', '.'));
    if (!(perInch >= 1)) throw leatherError('bad-length', { found });
    throw leatherError('pitch-by-the-inch', { found, ...readingsOf(perInch) });
  }
  if (typeof value === 'number' && Number.isInteger(value) && value >= FEWEST_TEETH && value <= MOST_TEETH) {
    throw leatherError('ambiguous-pitch', { found, ...readingsOf(value) });
  }
  const mm = parseLengthMm(value);
  if (mm < FINEST_PITCH_MM || mm > COARSEST_PITCH_MM) {
    const [from, to] = [String(FINEST_PITCH_MM), String(COARSEST_PITCH_MM)];
    throw leatherError('out-of-range', { found, unit: 'mm', from, to });
  }
  return mm;
}

/** What so many to the inch may mean, in mm: the teeth of an iron, or true stitches. */
function readingsOf(perInch: number) {
  const iron = DEFAULT_IRONS.find(({ teethPerInch }) => teethPerInch === perInch);
  return {
    perInch: trimmed(perInch, 2),
    ironMm: trimmed(iron?.pitchMm ?? ironPitchOfTeethMm(perInch), 2),
    stitchesMm: trimmed(pitchOfStitchesMm(perInch), 3),
  };
}
