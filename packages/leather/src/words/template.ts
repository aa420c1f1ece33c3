import type { SentenceTable } from './sentence.js';

/** A sheet, in words: "A4", "a roll of 300 mm". */
export interface SheetParams {
  readonly paper: string;
}

/** Why full-scale templates can't be made as asked. */
export const TEMPLATE_SENTENCES = {
  'template-paper': (p: { found: string; known: string }) =>
    `There is no paper called ${p.found}; take ${p.known}, or a roll by its width.`,
  'template-roll': (p: { widthMm: number; leastMm: number; mostMm: number }) =>
    `A roll can't be ${p.widthMm} mm wide; take one of ${p.leastMm} to ${p.mostMm} mm.`,
  'template-margin': (p: { marginMm: number; leastMm: number }) =>
    `A margin of ${p.marginMm} mm is within what printers leave blank; leave at least ${p.leastMm} mm.`,
  'template-sheet-too-small': (p: SheetParams & { marginMm: number; widthMm: number; heightMm: number }) =>
    `${p.paper} has no room for margins of ${p.marginMm} mm and check bars of 100 mm; take a sheet of at least ${p.widthMm} × ${p.heightMm} mm, or smaller margins.`,
  'template-overlap': (p: SheetParams & { overlapMm: number; leastMm: number; mostMm: number }) =>
    `Pages of ${p.paper} can't overlap by ${p.overlapMm} mm; take ${p.leastMm} to ${p.mostMm} mm, so that the matching marks find room.`,
  'template-too-many-pages': (p: SheetParams & { pages: number; most: number }) =>
    `This would take ${p.pages} pages of ${p.paper}, and at most ${p.most} are made; take a larger sheet.`,
  'template-nothing': (p: { what: string }) => `There is nothing to draw: ${p.what}.`,
} as const satisfies SentenceTable;
