import type { SentenceTable } from './sentence.js';

/** What can be wrong with the measured bars of reference sheets. */
export const REFERENCE_SENTENCES = {
  'bars-unreadable': (p: { found: string }) =>
    `${p.found} are no two lengths; write the line across and then the one down, such as "159.2 x 218.9" (mm) or "6 1/4 in x 8 5/8 in".`,
  'bars-swapped': (p: { across: string; down: string }) =>
    `The line across would be ${p.across} and the one down ${p.down}, which looks like the two swapped; write the shorter line, across, first.`,
  'bar-far-off': (p: { which: string; found: string; drawn: string; most: number }) =>
    `The line ${p.which} is drawn ${p.drawn} long and reads ${p.found}, more than ${p.most} % off; measure it again from end mark to end mark, or print the sheets again at 100 %.`,
  'sheet-twice': (p: { sheet: number }) =>
    `Sheet ${p.sheet} stands in this file twice; keep the newer entry for it.`,
} as const satisfies SentenceTable;
