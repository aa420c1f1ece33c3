import type { HideParams } from './leather.js';
import type { SentenceTable } from './sentence.js';

/** A ticked piece, in words. */
export interface TickParams {
  /** "number 12" or the name, as it was written. */
  readonly asked: string;
  /** The copy in words: "front" of saddlebag, set 2, copy 1. */
  readonly what: string;
}

/** English sentences for cutting in stages. */
export const STAGES_SENTENCES = {
  'tick-no-such-number': (p: { number: string; first: string; last: string }) =>
    p.first === ''
      ? `There is no number ${p.number}: nothing is laid in this layout.`
      : `There is no piece with number ${p.number} in this layout; its numbers run from ${p.first} to ${p.last}, and "hidebound list" shows them.`,
  'tick-range-backwards': (p: { asked: string }) =>
    `${p.asked} runs backwards; write the smaller number first.`,
  'tick-no-such-piece': (p: { asked: string; near?: string }) =>
    `No piece that is laid goes by ${p.asked}${p.near === undefined ? '' : ` (did you mean "${p.near}"?)`}; write its number, or its name with set and copy, such as "front 2/1".`,
  'tick-piece-of-several': (p: { asked: string; articles: string }) =>
    `${p.asked} is a piece of several articles (${p.articles}); write the article first, such as "saddlebag: front 2/1".`,
  'tick-bad-words': (p: { asked: string }) =>
    `${p.asked} can't be read; write numbers ("1-12, 15, 37.2") or names ("front 2/1") with commas between.`,
  'tick-twice': (p: TickParams) =>
    `${p.what} is named twice (again by ${p.asked}); a piece is cut, spoiled or still to be cut, so name it once.`,
  'tick-cut-already': (p: TickParams) =>
    `${p.what} (${p.asked}) is ticked as cut already; leave it out, or take the tick back with --planned.`,
  'tick-spoiled-already': (p: TickParams) =>
    `${p.what} (${p.asked}) is ticked as spoiled already; lay it again with --lay, or take the tick back with --planned.`,
  'tick-not-ticked': (p: TickParams) =>
    `${p.what} (${p.asked}) bears no tick that could be taken back; it is still to be cut.`,
  'tick-nothing-left': (p: { asked: string; state: string }) =>
    `Nothing that ${p.asked} names is left to be ticked as ${p.state}.`,
  'tick-hide-changed': (p: HideParams & { file: string }) =>
    `Hide ${p.hide} (${p.file}) was changed after this layout was made, so that places on it may be wrong; bring the old file back, or lay the order anew.`,
  'tick-hide-cut': (p: HideParams & { file: string }) =>
    `Hide ${p.hide} (${p.file}) is marked as cut and its leather is no longer in stock; undo that step of the stock first if cutting still goes on.`,
  'flaw-bad-words': (p: { found: string; kinds: string }) =>
    `The flaw ${p.found} can't be read; write a kind if you like (${p.kinds}), then a place and a radius in mm, such as "hole 310,420 12", or several places and a width, such as "scar 310,420 390,460 8".`,
  'flaw-without-size': (p: { found: string }) =>
    `The flaw ${p.found} must be wider than nothing and at most 5,000 mm; give the radius of a spot, or the width of a line, in mm.`,
  'flaw-off-hide': (p: HideParams & { found: string }) =>
    `The flaw ${p.found} does not lie on the leather of hide ${p.hide}; measure again, or name the right hide with --hide.`,
  'flaw-which-hide': (p: { hides: string }) =>
    `The layout lies on several hides (${p.hides}); say with --hide on which of them the flaw is.`,
  'flaw-no-such-hide': (p: { asked: string; hides: string }) =>
    `The layout has no hide ${p.asked}; its hides are ${p.hides}.`,
  'flaw-under-planned': (p: { flaw: string; what: string; number: string }) =>
    `${p.what} (number ${p.number}) can't be cut any more where it lies because of ${p.flaw}; it is to be laid again.`,
  'flaw-under-cut': (p: { flaw: string; what: string; number: string }) =>
    `${p.what} (number ${p.number}) is cut already and ${p.flaw} breaks its rule there; if it can't be used, tick it as spoiled.`,
  'laid-again-numbers': (p: { count: number }) =>
    `${p.count === 1 ? '1 piece has' : `${p.count} pieces have`} a new number; print the sheets anew before you cut on.`,
  'rest-left-over-file': (p: { file: string }) =>
    `${p.file} is of an earlier time and no longer true; remove it.`,
  'left-unlaid': (p: { count: number; pieces: string; leather: string }) =>
    `${p.count === 1 ? '1 piece is' : `${p.count} pieces are`} to be cut and ${p.count === 1 ? 'has' : 'have'} no place yet: ${p.pieces} of pieces, about ${p.leather} of leather at the yield of this layout.`,
} as const satisfies SentenceTable;
