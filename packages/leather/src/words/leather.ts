import type { RuleName, UnplacedReason } from '@hidebound/geometry';
import type { SentenceTable } from './sentence.js';

/** A copy of a piece, in words. */
export interface CopyParams {
  readonly piece: string;
  readonly article: string;
}

const who = (p: CopyParams): string => `"${p.piece}" of ${p.article}`;

/** Copies that were not laid, in words. */
export interface UnplacedParams extends CopyParams {
  /** How many copies it is about; absent: not told. */
  readonly count?: number;
  /** What of the leather the piece asks, in words: "looks A on its face, from bend or shoulder". */
  readonly needs?: string;
}

const missing = (p: UnplacedParams): string =>
  p.count === undefined || p.count === 1 ? who(p) : `${who(p)} (${p.count} of them)`;

/** Why a copy was not laid: code "unplaced-" and the reason. */
const UNPLACED_SENTENCES = {
  'unplaced-larger-than-every-sheet': (p: UnplacedParams) =>
    `${missing(p)} is larger than every hide of its leather; give a larger hide or divide the piece.`,
  'unplaced-no-sheet-allowed': (p: UnplacedParams) =>
    `${missing(p)} may come from none of the hides given; add a hide of its leather to the order.`,
  'unplaced-no-room': (p: UnplacedParams) =>
    `No room was found for ${missing(p)}; give it more time, add a hide, or ask for fewer sets.`,
  'unplaced-no-leather-good-enough': (p: UnplacedParams) =>
    `No place on the hides is good enough for ${missing(p)} in looks, strength and zone${p.needs === undefined ? '' : ` (it asks for ${p.needs})`}; add a better hide, or ask less of the piece.`,
  'unplaced-direction-unknown': (p: UnplacedParams) =>
    `${missing(p)} must follow the direction in which the leather stretches least, and the hide does not show it; draw the backbone or strokes.`,
  'unplaced-thickness': (p: UnplacedParams) =>
    `No hide is of the thickness that ${missing(p)} needs; add one, or allow skiving.`,
  'unplaced-set-incomplete': (p: UnplacedParams) =>
    `${missing(p)} was left out because its set could not be laid whole; give it more time, or add a hide.`,
  'unplaced-not-tried': (p: UnplacedParams) =>
    `${missing(p)} was not tried before the run was stopped; let it run longer.`,
} as const satisfies Record<`unplaced-${UnplacedReason}`, (params: UnplacedParams) => string>;

/** A broken rule, in words. */
export interface BrokenParams {
  /** Who breaks the rule, in words. */
  readonly what: string;
  /** The other party in words. */
  readonly other?: string;
  readonly measured?: number;
  readonly required?: number;
}

const figures = (p: BrokenParams, unit: string): string =>
  p.measured === undefined || p.required === undefined
    ? ''
    : ` (${p.measured}${unit} where ${p.required}${unit} is asked)`;
const turned = (p: BrokenParams): string =>
  p.measured === undefined || p.required === undefined
    ? ''
    : ` (by ${p.measured}° where at most ${p.required}° is allowed)`;
/** A distance below zero is how far one reaches into the other. */
const reach = (p: BrokenParams): string | undefined =>
  p.measured !== undefined && p.measured < 0 ? ` by ${-p.measured} mm` : undefined;
const party = (p: BrokenParams, otherwise: string): string => p.other ?? otherwise;

/** What the check found: code "broken-" and the rule's name. */
const BROKEN_SENTENCES = {
  'broken-gap': (p: BrokenParams) =>
    reach(p) === undefined
      ? `${p.what} lies too near to ${party(p, 'another piece')}${figures(p, ' mm')}; move them apart.`
      : `${p.what} lies over ${party(p, 'another piece')}${reach(p)}; move them apart.`,
  'broken-edge': (p: BrokenParams) =>
    reach(p) === undefined
      ? `${p.what} lies too near to the edge of the hide or of an opening${figures(p, ' mm')}; move it inwards.`
      : `${p.what} reaches over the edge of the hide or of an opening${reach(p)}; move it inwards.`,
  'broken-void': (p: BrokenParams) =>
    reach(p) === undefined
      ? `${p.what} lies too near to a place that is never to be used, ${party(p, 'a flaw')}${figures(p, ' mm')}; move it away.`
      : `${p.what} reaches into a place that is never to be used, ${party(p, 'a flaw')},${reach(p)}; move it away.`,
  'broken-looks': (p: BrokenParams) =>
    `${p.what} lies on leather whose looks are not good enough, ${party(p, 'a flaw or zone')}; move it.`,
  'broken-strength': (p: BrokenParams) =>
    `${p.what} bears load and lies on weak leather, ${party(p, 'a flaw or zone')}; move it.`,
  'broken-zone': (p: BrokenParams) => `${p.what} lies outside the zones that it may come from; move it.`,
  'broken-angle': (p: BrokenParams) => `${p.what} is turned away from its direction${turned(p)}; turn it.`,
  'broken-thickness': (p: BrokenParams) =>
    `${p.what} lies on leather of the wrong thickness${figures(p, ' mm')}; move it.`,
  'broken-mirrored': (p: BrokenParams) =>
    `${p.what} is mirrored where it should not be, or not where it should; lay the other one.`,
  'broken-pair': (p: BrokenParams) =>
    `${p.what} and ${party(p, 'its mirror image')} do not lie where they stretch alike; move one of them.`,
  'broken-count': (p: BrokenParams) =>
    `${p.what} is laid more or fewer times than the order asks${figures(p, ' times')}; lay the order anew.`,
  'broken-set': (p: BrokenParams) => `${p.what} does not lie on one hide with the rest of its set; move it.`,
  'broken-lot': (p: BrokenParams) =>
    `${p.what} lies on a hide of another lot than the rest of its set, so that shades may differ; move it.`,
  'broken-sheet': (p: BrokenParams) => `${p.what} lies on a hide that is not of its leather; move it.`,
  'broken-locked': (p: BrokenParams) =>
    `${p.what} was locked in its place and does not lie there any more; put it back.`,
  'broken-lane': (p: BrokenParams) =>
    `${p.what} does not keep to ${party(p, 'the lane')}: the straps of a lane lie in their rows within it, and all else outside; lay the lane anew.`,
  'broken-rough-cut': (p: BrokenParams) =>
    `${p.what} does not keep to ${party(p, 'the rough cut')}: its pieces lie within it, margin included, and all else outside; lay it anew.`,
  'broken-finite': (p: BrokenParams) =>
    `${p.what} has a place or an angle that is not a number, or the order does not ask for it at all; correct it, or take it out.`,
} as const satisfies Record<`broken-${RuleName}`, (params: BrokenParams) => string>;

/** A hide, in words. */
export interface HideParams {
  readonly hide: string;
}

/** What is worth knowing about order and hides before anything is laid. */
const ORDER_SENTENCES = {
  'arrow-guessed': (p: CopyParams & { angleDeg: number }) =>
    `${who(p)} has no direction arrow, so its long axis is taken (${Math.round(p.angleDeg * 10) / 10}° clockwise from the horizontal of its drawing); draw an arrow, or give the piece an "arrow" in the order, if that is wrong.`,
  'zones-not-drawn': (p: HideParams) =>
    `Hide ${p.hide} has no zones drawn, so that pieces which may come from certain zones only can't be held to them there; draw the zones.`,
  'hide-already-cut': (p: HideParams) =>
    `Hide ${p.hide} is marked as cut; make sure that this is the leather you mean.`,
  'candidates-not-confirmed': (p: HideParams & { count: number }) =>
    `Hide ${p.hide} has ${p.count} possible ${p.count === 1 ? 'flaw' : 'flaws'} that nobody has confirmed; look before you cut.`,
  'guesses-not-confirmed': (p: HideParams & { guesses: string }) =>
    `The ${p.guesses} of hide ${p.hide} ${p.guesses.includes(' and ') ? 'were' : 'was'} guessed from its photo and nobody has confirmed ${p.guesses.includes(' and ') ? 'them' : 'it'}; look before you cut.`,
  'thickness-not-known': (p: HideParams) =>
    `Hide ${p.hide} says nothing of its thickness, so that pieces of a certain thickness can't be held to it there; measure it.`,
  'use-from-guessed': (p: HideParams & { useFrom: string }) =>
    `Hide ${p.hide} has no backbone, so the end to use first (${p.useFrom}) is guessed from its long axis; draw the backbone or give an angle.`,
} as const satisfies SentenceTable;

/** Why a layout can't be proven, apart from broken rules. */
const PROOF_SENTENCES = {
  'layout-hide-missing': (p: HideParams & { file: string }) =>
    `Hide ${p.hide} is not at hand, so nothing laid on it can be proven; give its file.`,
  'layout-hide-changed': (p: HideParams & { file: string }) =>
    `Hide ${p.hide} was changed after this layout was made; lay the order anew, or bring the old file back.`,
  'layout-piece-missing': (p: CopyParams) =>
    `${who(p)} is in the layout's order but not among its pieces; make the layout anew.`,
  'layout-piece-twice': (p: CopyParams) =>
    `${who(p)} stands twice among the layout's pieces; make the layout anew.`,
  'layout-piece-broken': (p: CopyParams) =>
    `The stored outline of ${who(p)} encloses nothing; make the layout anew.`,
  'layout-piece-hash': (p: CopyParams) =>
    `The stored shape of ${who(p)} is not the one that its hash was taken of: it was changed after the layout was made; make the layout anew.`,
  'layout-piece-region': (p: CopyParams) =>
    `The rings of ${who(p)} do not follow from its cut lines: they were changed after the layout was made; make the layout anew.`,
  'layout-piece-face': (p: CopyParams) =>
    `The face of ${who(p)} does not follow from its lines: it was changed after the layout was made; make the layout anew.`,
  'layout-piece-arrow': (p: CopyParams) =>
    `The direction of ${who(p)} does not follow from its arrow: it was changed after the layout was made; make the layout anew.`,
  'layout-yield-differs': (p: HideParams & { figure: string; says: number; is: number }) =>
    `The yield of ${p.hide} says ${p.figure} ${p.says}, but the placements give ${p.is}; make the figures anew.`,
} as const satisfies SentenceTable;

/** English sentences for what laying pieces on hides can find. */
export const LAYOUT_SENTENCES = {
  ...UNPLACED_SENTENCES,
  ...BROKEN_SENTENCES,
  ...ORDER_SENTENCES,
  ...PROOF_SENTENCES,
} as const satisfies SentenceTable;
