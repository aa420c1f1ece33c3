import type { Point } from '@hidebound/geometry';

/** What of the reference sheets one photo shows; places in px of the photo. */
export interface SeenReferences {
  readonly file: string;
  readonly width: number;
  readonly height: number;
  readonly markers: readonly SeenMarker[];
}

export interface SeenMarker {
  readonly id: number;
  /** As `markerCorners` orders them: top left, top right, bottom right, bottom left of the marker as printed. */
  readonly corners: readonly [Point, Point, Point, Point];
  /** Places along its four edges (top, right, bottom, left), measured apart; empty where they could not be. */
  readonly sides: readonly [SeenSide, SeenSide, SeenSide, SeenSide];
  /** Width of its edges from dark to light as the deviation of a bell curve, px. */
  readonly blurPx: number;
  /** How bright its paper and its ink are, shares of what the picture can hold (as light, not as stored). */
  readonly white: number;
  readonly black: number;
}

export interface SeenSide {
  readonly points: readonly Point[];
  /** How far the points scatter about a smooth line, px. */
  readonly scatterPx: number;
}
