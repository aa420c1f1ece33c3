import { PAPERS } from '@hidebound/leather';
import type { Paper, SheetPaper } from '@hidebound/leather';

/** A usual way to print at the wrong scale without meaning to. */
export interface WrongScale {
  /** Printed over true length. */
  readonly ratio: number;
  /** The same as it is usually said. */
  readonly percent: string;
  readonly words: string;
}

/** Margins within which printer drivers fit a page. */
const FITTED_MARGIN_MM = 5;

/** Sheets of nearly one size, of which the one is often taken for the other. */
const PAIRS: readonly (readonly [string, string])[] = [
  ['A4', 'Letter'],
  ['A3', 'Tabloid'],
  ['A2', 'ANSI-C'],
  ['A1', 'ANSI-D'],
  ['A0', 'ANSI-E'],
];

/**
 * How pages of this paper come out when a driver fits them to what it takes for the sheet: the one of a pair on the
 * other (A4 on Letter 94.07 %, Letter on A4 97.27 %), or within margins of 5 mm. Largest error last.
 */
export function wrongScales(paper: Paper): WrongScale[] {
  const scales = [...pairScales(paper), marginScale(paper)];
  return scales.sort((a, b) => b.ratio - a.ratio);
}

function pairScales(paper: Paper): WrongScale[] {
  const pair = PAIRS.find((names) => names.includes(paper.name));
  if (pair === undefined) return [];
  const [first, second] = pair.map((name) => PAPERS.find((each) => each.name === name)!);
  return [fitted(first!, second!), fitted(second!, first!)];
}

function fitted(page: SheetPaper, sheet: SheetPaper): WrongScale {
  const ratio = Math.min(sheet.widthMm / page.widthMm, sheet.heightMm / page.heightMm);
  return { ratio, percent: (ratio * 100).toFixed(2), words: `${page.name} on ${sheet.name}` };
}

function marginScale(paper: Paper): WrongScale {
  const ratio = (paper.widthMm - 2 * FITTED_MARGIN_MM) / paper.widthMm;
  return { ratio, percent: (ratio * 100).toFixed(1), words: `to ${FITTED_MARGIN_MM} mm margins` };
}
