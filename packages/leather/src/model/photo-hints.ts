import type { Point, Polyline } from '@hidebound/geometry';

/** `*.hints.yaml`: what a person says of the photos of one hide. Places are pixels of the upright photo as shown. */
export interface PhotoHints {
  readonly photos: readonly HintedPhoto[];
}

/** Hints for one photo; x to the right and y down from its top left corner, in its own pixels. */
export interface HintedPhoto extends EdgeHints {
  /** The photo, relative to the file of hints. */
  readonly photo: string;
  /** What gives the scale, besides reference sheets that are found by themselves. */
  readonly reference?: StatedReference;
}

/** What a person says of where the hide ends. */
export interface EdgeHints {
  /** Strokes over leather and over floor. */
  readonly hideStrokes: readonly Polyline[];
  readonly floorStrokes: readonly Polyline[];
  /** Places that lie exactly on the hide's edge. */
  readonly edgePoints: readonly Point[];
}

export type StatedReference =
  /** A rectangle of known sides: its corners clockwise from the top left, width from first to second. */
  | {
      readonly kind: 'rectangle';
      readonly corners: readonly [Point, Point, Point, Point];
      readonly widthMm: number;
      readonly heightMm: number;
    }
  /** Two steel rules that meet at right angles: readings along both. */
  | {
      readonly kind: 'rules';
      readonly along: readonly RuleReading[];
      readonly across: readonly RuleReading[];
    }
  /** A card of ISO/IEC 7810 ID-1, its corners clockwise from the top left as it lies with its long side across. */
  | { readonly kind: 'card'; readonly corners: readonly [Point, Point, Point, Point] };

/** A place on a rule and what the rule reads there. */
export interface RuleReading {
  readonly at: Point;
  readonly mm: number;
}
