import { listWords, quoteValue } from '../words/sentence.js';
import { leatherError } from '../words/refuse.js';

/** A sheet, upright, in mm. */
export interface SheetPaper {
  readonly kind: 'sheet';
  readonly name: string;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Paper from a roll: as wide as it is, cut off as long as it must be. */
export interface RollPaper {
  readonly kind: 'roll';
  readonly name: string;
  readonly widthMm: number;
}

export type Paper = SheetPaper | RollPaper;

const MM_PER_INCH = 25.4;

function sheet(name: string, widthMm: number, heightMm: number): SheetPaper {
  return { kind: 'sheet', name, widthMm, heightMm };
}

function inchSheet(name: string, widthIn: number, heightIn: number): SheetPaper {
  return sheet(name, widthIn * MM_PER_INCH, heightIn * MM_PER_INCH);
}

/**
 * The A sizes of ISO 216, and sizes A to E of ASME Y14.1, of which A and B are better known as Letter and Tabloid
 * (8.5 × 11, 11 × 17, 17 × 22, 22 × 34, 34 × 44 in).
 */
export const PAPERS = [
  sheet('A4', 210, 297),
  sheet('A3', 297, 420),
  sheet('A2', 420, 594),
  sheet('A1', 594, 841),
  sheet('A0', 841, 1189),
  inchSheet('Letter', 8.5, 11),
  inchSheet('Tabloid', 11, 17),
  inchSheet('ANSI-C', 17, 22),
  inchSheet('ANSI-D', 22, 34),
  inchSheet('ANSI-E', 34, 44),
] as const satisfies readonly SheetPaper[];

/** The sheet of this name, in whatever letter case. Throws `template-paper`. */
export function paperNamed(name: string): SheetPaper {
  const found = PAPERS.find((paper) => paper.name.toLowerCase() === name.toLowerCase());
  if (found !== undefined) return found;
  throw leatherError('template-paper', {
    found: quoteValue(name),
    known: listWords(PAPERS.map((paper) => paper.name)),
  });
}

/** Narrower than any printer's roll, and wider than any. */
const ROLL_RANGE_MM = { least: 200, most: 2000 } as const;

/** A roll of this width in mm. Throws `template-roll` if no printer takes such a roll. */
export function rollOf(widthMm: number): RollPaper {
  const { least, most } = ROLL_RANGE_MM;
  if (!(widthMm >= least && widthMm <= most)) {
    throw leatherError('template-roll', { widthMm, leastMm: least, mostMm: most });
  }
  return { kind: 'roll', name: `a roll of ${widthMm} mm`, widthMm };
}
