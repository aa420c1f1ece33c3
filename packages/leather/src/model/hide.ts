import type { Curve, Point, Polyline } from '@hidebound/geometry';
import type { Effect, Money, Side, ThicknessRange } from './marks.js';

export const HIDE_CUTS = [
  'whole hide',
  'side',
  'back',
  'bend',
  'butt',
  'shoulder',
  'double shoulder',
  'belly',
  'panel',
  'offcut',
] as const;
export type HideCut = (typeof HIDE_CUTS)[number];

export const FLAW_KINDS = [
  'hole',
  'cut',
  'brand',
  'scar',
  'bite',
  'vein',
  'wrinkle',
  'loose grain',
  'stain',
] as const;
export type FlawKind = (typeof FLAW_KINDS)[number];

export const ZONE_KINDS = ['bend', 'shoulder', 'belly', 'flank', 'neck', 'shank'] as const;
export type ZoneKind = (typeof ZONE_KINDS)[number];

/** One hide or skin, or a cut of it, seen from the grain side; mm, y down. */
export interface Hide {
  readonly id: string;
  /** The hide that this offcut or prepared rough cut was cut from. */
  readonly parent?: string;
  readonly cut: HideCut;
  readonly outline: Curve;
  readonly openings: readonly Curve[];
  /** From head to tail. A belly has none. */
  readonly backbone?: Polyline;
  /** Lines drawn along the direction in which the leather stretches least. */
  readonly tightness: readonly Polyline[];
  readonly zones: readonly Zone[];
  readonly flaws: readonly Flaw[];
  /** Found in a photo, not yet confirmed by the user. */
  readonly candidates: readonly FlawCandidate[];
  readonly unsureEdges: readonly UnsureEdge[];
  readonly leather: LeatherQualities;
  readonly area: HideArea;
  readonly price?: HidePrice;
  /** Hides of one lot match in shade. Without one, a hide is its own lot. */
  readonly lot?: string;
  readonly state: 'on hand' | 'reserved' | 'cut';
  readonly photo?: HidePhoto;
  /** What was guessed from the photo and nobody has confirmed yet. */
  readonly guessed?: readonly HideGuess[];
  /** Where it lies in the workshop. */
  readonly storedAt?: string;
  readonly notes?: string;
}

export interface LeatherQualities {
  readonly tannage?: string;
  readonly temper?: string;
  readonly finish?: string;
  readonly colour?: string;
  readonly thickness?: ThicknessRange;
  readonly readings: readonly ThicknessReading[];
}

export interface ThicknessReading {
  readonly at: Point;
  readonly mm: number;
}

export interface HideArea {
  /** Measured within the outline, by whoever traced it. */
  readonly measuredMm2?: number;
  /** As written on the hide or the invoice. */
  readonly invoicedMm2?: number;
}

export interface HidePrice extends Money {
  readonly per: 'hide' | 'ft2' | 'm2' | 'dm2';
  /** Of which area, where it is a price per area. */
  readonly of: 'invoiced' | 'measured';
}

/** A region with looks and strength of its own. Fields of the effect that are absent come from its kind. */
export interface Zone {
  readonly id: string;
  readonly kind: ZoneKind;
  readonly outline: Curve;
  readonly effect?: Partial<Effect>;
}

/** A mark on the hide. Fields of the effect that are absent come from its kind; without a kind, they are required. */
export interface Flaw {
  readonly id: string;
  readonly kind?: FlawKind;
  readonly side: Side;
  /** Share of the thickness, 0 to 1; absent: not known. */
  readonly depth?: number;
  readonly shape: FlawShape;
  readonly effect?: Partial<Effect>;
}

export type FlawShape =
  | { readonly kind: 'point'; readonly at: Point; readonly radiusMm: number }
  | { readonly kind: 'line'; readonly line: Polyline; readonly widthMm: number }
  | { readonly kind: 'area'; readonly outline: Curve };

export interface FlawCandidate extends Flaw {
  /** 0 to 1. */
  readonly confidence: number;
}

/** A stretch of the outline whose place is known only within `offByMm`. */
export interface UnsureEdge {
  readonly line: Polyline;
  readonly offByMm: number;
}

export const HIDE_GUESSES = ['backbone', 'cut'] as const;
export type HideGuess = (typeof HIDE_GUESSES)[number];

export interface HidePhoto {
  /** The straightened picture, as seen from the grain side. */
  readonly file: string;
  readonly pxPerMm: number;
  /** The hide's place of the picture's top left corner, mm. */
  readonly origin: Point;
  /** In words: "four reference sheets". */
  readonly scaledBy: string;
  /** How far off a mark can be, everywhere at least. */
  readonly errorMm: number;
  /** How far off at places, where it is known better; the nearest one counts. */
  readonly errorsAt: readonly { readonly at: Point; readonly mm: number }[];
  /** The scale can be wrong by this share, and the area by this one (1 is all of it). */
  readonly scaleErrorShare?: number;
  readonly areaErrorShare?: number;
  /** Which side lay upwards in the photo; a flesh side's picture is mirrored. */
  readonly sideUp?: Side;
  /** The photos as they were taken, and the file of hints, beside the hide file. */
  readonly takenFrom?: readonly string[];
  /** Of these, the ones with light from low at one side, and those of the other side of the hide. */
  readonly raking?: readonly string[];
  readonly otherSide?: readonly string[];
  /** The leather was dragged along between the photos. */
  readonly isMoved?: boolean;
  readonly hints?: string;
  /** Strokes that the user gave as hints. */
  readonly hideStrokes: readonly Polyline[];
  readonly floorStrokes: readonly Polyline[];
}
