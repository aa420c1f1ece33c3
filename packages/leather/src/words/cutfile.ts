import type { CopyParams, HideParams } from './leather.js';
import type { SentenceTable } from './sentence.js';

const who = (p: CopyParams): string => `"${p.piece}" of ${p.article}`;

/** English sentences for what making a cut file can find. */
export const CUT_FILE_SENTENCES = {
  'cut-nothing': (p: HideParams) =>
    `Nothing is to be cut from hide ${p.hide}: no piece that is not cut yet lies on it, and no rough cut was asked for; choose another hide.`,
  'kerf-wider-than-punch': (p: CopyParams & { kerfMm: number; diameterMm: number }) =>
    `A cut ${p.kerfMm} mm wide can't make the hole of ${p.diameterMm} mm in ${who(p)}; take a smaller kerf, or punch it by hand and leave the hole out of the pattern.`,
  'kerf-wider-than-opening': (p: CopyParams & { kerfMm: number }) =>
    `A cut ${p.kerfMm} mm wide does not fit into an opening of ${who(p)}, or into a narrow place of it; take a smaller kerf or draw the opening wider.`,
  'kerf-wider-than-gap': (p: CopyParams & { other: string; kerfMm: number; gapMm: number }) =>
    `A cut ${p.kerfMm} mm wide does not fit between ${who(p)} and ${p.other}, which lie ${p.gapMm} mm apart; lay the order anew with this kerf, or take a smaller one.`,
  'bridges-longer-than-path': (p: { what: string; count: number; widthMm: number; lengthMm: number }) =>
    `${p.count} bridges of ${p.widthMm} mm with their cuts leave nothing to cut of ${p.what}, whose line is ${p.lengthMm} mm long; ask for fewer or narrower ones.`,
  'lead-in-no-room': (p: { what: string; count: number }) =>
    `No lead-in has room beside ${p.what}${p.count === 1 ? '' : ` and ${p.count - 1} more`}; the cut starts on the line there: shorten the lead-in, or lay with a wider gap.`,
  'lane-laid-for-less-kerf': (p: { lane: string; laidMm: number; kerfMm: number; lessMm: number }) =>
    `The straps of lane ${p.lane} were laid for a kerf of ${p.laidMm} mm; cut with ${p.kerfMm} mm they come out ${p.lessMm} mm narrower: lay the order anew with this kerf.`,
  'kerf-closes-a-bay': (p: CopyParams & { kerfMm: number }) =>
    `A narrow place in the outline of ${who(p)} is too narrow for a cut of ${p.kerfMm} mm and is left as it is; finish it by hand.`,
  'label-no-room': (p: { what: string; count: number }) =>
    `${p.what}${p.count === 1 ? '' : ` and ${p.count - 1} more`} ${p.count === 1 ? 'has' : 'have'} no room for a name and ${p.count === 1 ? 'is' : 'are'} left without one.`,
  'rough-cuts-left-out': (p: HideParams & { count: number }) =>
    `Hide ${p.hide} has ${p.count} rough ${p.count === 1 ? 'cut' : 'cuts'} to be cut and prepared whole first, which this file leaves out; choose rough cuts first for the file of that step.`,
  'already-cut-left-out': (p: HideParams & { count: number }) =>
    `${p.count} ${p.count === 1 ? 'piece' : 'pieces'} of hide ${p.hide} that ${p.count === 1 ? 'is' : 'are'} cut or spoiled already ${p.count === 1 ? 'is' : 'are'} left out.`,
} as const satisfies SentenceTable;
