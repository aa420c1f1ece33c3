import type { ZoneKind } from '../../model/hide.js';

/** A place as shares: of the length from head (0) to tail (1), and of the width out from the base line (0) to 1. */
export type Share = readonly [along: number, out: number];

/** A box of shares: from, to along; from, to outwards. */
export type ShareBox = readonly [fromAlong: number, toAlong: number, fromOut: number, toOut: number];

/** A stretch of an outline: as the animal grew it, or straight as the knife cut it. */
export interface PlannedRun {
  readonly kind: 'natural' | 'cut';
  readonly points: readonly Share[];
}

/** Where a zone lies on one half. One that joins starts and ends on the base line and has its mirror image beyond it. */
export interface PlannedZone {
  readonly kind: ZoneKind;
  readonly points: readonly Share[];
  readonly joins: boolean;
}

/** Where marks of a kind are likely. */
export interface LikelyPlaces {
  readonly anywhere: ShareBox;
  /** Belly, flanks and legs, or what is left of them. */
  readonly outer: ShareBox;
  /** Where brands are set; absent: none. */
  readonly rump?: ShareBox;
  readonly neck?: ShareBox;
}

/**
 * A hide before it has a size. The half is drawn from the base line's head end out and round to its tail end. The base
 * line is the backbone, but on a belly it is the cut that parted it from its side.
 */
export interface HidePlan {
  readonly half: readonly PlannedRun[];
  /** True: the other half is drawn beyond the base line. */
  readonly isWhole: boolean;
  readonly hasBackbone: boolean;
  readonly zones: readonly PlannedZone[];
  /** Lines along which the leather stretches least, where that is not along the backbone. */
  readonly strokes: readonly (readonly [Share, Share])[];
  readonly places: LikelyPlaces;
}
