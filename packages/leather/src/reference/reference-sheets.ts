import type { MeasuredBars } from './sheet-plan.js';

export const REFERENCE_PAPERS = ['A4', 'Letter'] as const;
export type ReferencePaper = (typeof REFERENCE_PAPERS)[number];

/** Sheets that were printed together, with the bars of one of them as measured. */
export interface PrintedSheets extends MeasuredBars {
  /** Their numbers, rising. */
  readonly sheets: readonly number[];
  readonly paper: ReferencePaper;
}

/** What is known of all printed reference sheets; no number stands in two entries. */
export interface ReferenceSheets {
  readonly printed: readonly PrintedSheets[];
}

/** The bars of a sheet as measured; undefined where nobody measured it. */
export function barsOfSheet({ printed }: ReferenceSheets, sheet: number): MeasuredBars | undefined {
  const entry = printed.find(({ sheets }) => sheets.includes(sheet));
  return entry === undefined ? undefined : { acrossMm: entry.acrossMm, downMm: entry.downMm };
}

/**
 * The same with newly measured sheets. Numbers printed anew leave their old entries: a photo shows a sheet's number, not
 * when it was printed. Entries stand in the order of their first numbers.
 */
export function withPrintedSheets({ printed }: ReferenceSheets, added: PrintedSheets): ReferenceSheets {
  const anew = new Set(added.sheets);
  const kept = printed
    .map((entry) => ({ ...entry, sheets: entry.sheets.filter((sheet) => !anew.has(sheet)) }))
    .filter(({ sheets }) => sheets.length > 0);
  const sheets = [...anew].sort((a, b) => a - b);
  return { printed: [...kept, { ...added, sheets }].sort((a, b) => a.sheets[0]! - b.sheets[0]!) };
}
