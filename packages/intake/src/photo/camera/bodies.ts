import type { Point, Ring } from '@hidebound/geometry';

/**
 * A body is something flat of known drawing on the floor: a reference sheet, a stated rectangle, a card, two rules.
 * Its drawing is in mm; where it lies is solved for.
 */
export interface Body {
  readonly name: string;
  readonly kind: 'sheet' | 'rectangle' | 'rules' | 'card';
  /** Number of a sheet. */
  readonly sheet?: number;
  /** What it covers of the floor, in its own coordinates. */
  readonly ring: Ring;
  /** Half of its extent each way, mm: where it can curl up most. */
  readonly half: { readonly x: number; readonly y: number };
  /** Deviation of its size from what is drawn or stated, as a share, each way. */
  readonly sizeShare: { readonly x: number; readonly y: number };
  /** Printed over drawn size, as measured; 1 and 1 where nobody measured. */
  readonly stretch: { readonly x: number; readonly y: number };
  /** Bodies of one group were made by the same printer, so what is unknown of their size is the same. */
  readonly sizeGroup: string;
  /** How far it can rise from the floor at its rim, mm (deviation). */
  readonly curlMm: number;
  /** Rules may start anywhere: their zero is solved for. */
  readonly slides: boolean;
}

/** A place of a body as seen on a photo. */
export interface Sighting {
  readonly photo: number;
  readonly body: number;
  /** Sightings of one group are good or bad together: the corners of one marker. */
  readonly group: string;
  /** On the body, mm. */
  readonly on: Point;
  /** Which way ink that ran, or an edge taken too wide, moves it: outwards from the marker. */
  readonly spread: Point;
  /** On the photo, px. */
  readonly px: Point;
  /** Deviation of the measured place, px. */
  readonly deviationPx: number;
  /** For rules: 1 where a shift of the rule's zero moves the place, 0 where not. */
  readonly slide: Point;
}
