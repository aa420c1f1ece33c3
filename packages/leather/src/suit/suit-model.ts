import type { HideCut } from '../model/hide.js';
import type { Diagnostic } from '../model/diagnostic.js';
import type { ThicknessRange } from '../model/marks.js';
import type { Part } from '../model/order.js';
import type { GoodsRule, LeatherNeed, Temper } from '../model/workshop-rules.js';

/**
 * Who says it: the piece itself, its article's "wants", the order's leather, the row of the part ("gusset"), the row of
 * the goods ("saddlebag"), or the rule of the part.
 */
export type WantOrigin = 'piece' | 'wants' | 'leather' | 'part row' | 'goods row' | 'part rule';

export interface Want<Value> {
  readonly value: Value;
  readonly from: WantOrigin;
}

/** What a piece wants of its leather; what is absent may be anything. */
export interface WantedLeather {
  /** Of one layer, in mm. */
  readonly thickness?: Want<ThicknessRange>;
  readonly tannages?: Want<readonly string[]>;
  readonly tempers?: Want<readonly Temper[]>;
  readonly finish?: Want<string>;
  readonly colour?: string;
  readonly needs: readonly LeatherNeed[];
  readonly partRow?: GoodsRule;
  readonly goodsRow?: GoodsRule;
}

/** Something that is said about a piece on a hide, as data. */
export interface SuitRemark {
  readonly code: SuitRemarkCode;
  readonly params: Readonly<Record<string, string | number>>;
}

export const SUIT_REMARKS = [
  // Why it does not fit.
  'too-thin',
  'too-thick',
  'skive-too-deep',
  'too-little-of-it',
  'tannage-not-asked',
  'need-not-met',
  'too-soft',
  'too-hard',
  'too-soft-to-stand',
  'too-hard-to-turn',
  'finished-for-tooling',
  'finish-not-asked',
  'other-colour',
  'no-such-zone',
  'too-small',
  'cut-already',
  // What else is to be known.
  'need-with-care',
  'tannage-unusual',
  'softer-than-usual',
  'stiffer-than-usual',
  'only-places',
  'measure-places',
  'within-tolerance',
  'thickness-not-known',
  'tannage-not-known',
  'temper-not-known',
  'finish-not-known',
  'zone-unusual',
  'reserved',
  'order-refuses-skiving',
] as const;
export type SuitRemarkCode = (typeof SUIT_REMARKS)[number];

/** How a piece and a hide go together; "measure": it fits if its thickness or tannage does, which nobody knows. */
export const FIT_KINDS = ['fits', 'skive', 'double', 'measure', 'no'] as const;
export type FitKind = (typeof FIT_KINDS)[number];

/** What is done to a piece of a hide, in the order of work. */
export type SuitWork =
  /** All over, from up to `fromMm`, by at most `byMm`. */
  | { readonly kind: 'all over'; readonly fromMm: number; readonly byMm: number; readonly to: ThicknessRange }
  | { readonly kind: 'turned edges'; readonly widthMm: number; readonly toMm: number }
  /** Folds that the pattern shows: thinned only where they are to lie flat. */
  | { readonly kind: 'folds'; readonly count: number; readonly toMm: number }
  /** A strap's fold around its buckle, running out so far to both sides. */
  | { readonly kind: 'buckle fold'; readonly toMm: number; readonly taper: readonly [number, number] }
  /** Lines for skiving that the pattern shows. */
  | { readonly kind: 'drawn lines'; readonly count: number; readonly toMm: number }
  /** Bottoms of pockets that lie on each other. */
  | { readonly kind: 'covered bottoms'; readonly to: ThicknessRange }
  | { readonly kind: 'layers'; readonly count: number };

export interface HideFit {
  readonly hide: string;
  readonly kind: FitKind;
  /** Of the places that it may come from, mm; absent: not known. */
  readonly thickness?: ThicknessRange;
  /** Share of these places whose thickness is right or is skived to be, 0 to 1. */
  readonly rightShare?: number;
  /** Of one layer once it is skived, mm; absent: not known. */
  readonly finished?: ThicknessRange;
  readonly work: readonly SuitWork[];
  /** Why it does not fit; empty where it does. */
  readonly reasons: readonly SuitRemark[];
  readonly remarks: readonly SuitRemark[];
}

export interface SuitPiece {
  readonly article: string;
  readonly goods: string;
  readonly piece: string;
  readonly part: Part;
  readonly leather: string;
  /** All sets and layers; of one set where there are as many sets as fit. */
  readonly copies: number;
  readonly layers: number;
  readonly wanted: WantedLeather;
  /** One for each hide on hand, in their order. */
  readonly fits: readonly HideFit[];
}

export interface SuitHide {
  readonly id: string;
  readonly file: string;
  readonly cut: HideCut;
  /** Leathers of the order that name it. */
  readonly leathers: readonly string[];
  readonly thickness?: ThicknessRange;
  /** Places where it was measured. */
  readonly readings: number;
  readonly tannage?: string;
  readonly temper?: string;
  readonly finish?: string;
  readonly colour?: string;
  readonly lot?: string;
  readonly storedAt?: string;
}

/** Which leather goes where, before anything is laid. */
export interface Suit {
  readonly hides: readonly SuitHide[];
  readonly pieces: readonly SuitPiece[];
  readonly diagnostics: readonly Diagnostic[];
  /** Every piece finds a hide. */
  readonly isSuited: boolean;
}
