import type { Affine, Box, Curve, Point } from '@hidebound/geometry';

/**
 * A picture in mm: x to the right, y down, from the top left corner. Plain data; every writer draws it alike.
 * Colours are `#rrggbb`.
 */
export interface Drawing {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly title: string;
  readonly layers: readonly Layer[];
}

/** What lies on one level, the first layer lowest. The name is unique in its drawing. */
export interface Layer {
  readonly name: string;
  readonly elements: readonly DrawingElement[];
}

export type DrawingElement = PathElement | TextElement | ImageElement | GroupElement;

/** Curves that are filled together by the even-odd rule, then stroked. */
export interface PathElement {
  readonly kind: 'path';
  readonly curves: readonly Curve[];
  readonly style: PathStyle;
}

export interface PathStyle {
  readonly stroke?: Stroke;
  /** Colour of the inside. */
  readonly fill?: string;
  /** 0 to 1; 1 if absent. Holds for fill and stroke. */
  readonly opacity?: number;
}

export interface Stroke {
  readonly colour: string;
  readonly widthMm: number;
  /** Lengths of dash and gap in turn. */
  readonly dashMm?: readonly number[];
  /** Butt if absent. */
  readonly cap?: 'butt' | 'round';
  /** Round if absent. */
  readonly join?: 'miter' | 'round';
}

/** One line of text. */
export interface TextElement {
  readonly kind: 'text';
  readonly text: string;
  /** Where the anchor meets the baseline. */
  readonly at: Point;
  readonly anchor: TextAnchor;
  /** The line runs this way, clockwise from the x axis. */
  readonly angleDeg: number;
  /** Size of the em square. Capitals are about 0.73 of it high. */
  readonly sizeMm: number;
  /** Measured length of the line, so that it stays the same where another font must stand in. */
  readonly widthMm: number;
  readonly face: FontFace;
  readonly colour: string;
}

export type TextAnchor = 'start' | 'middle' | 'end';

/** Which font: the family's plain or narrow cut, regular or bold. */
export type FontFace = 'regular' | 'bold' | 'narrow' | 'narrow bold';

/** A picture of pixels, stretched over a box. Cut files have no such thing. */
export interface ImageElement {
  readonly kind: 'image';
  readonly file: ImageFile;
  readonly box: Box;
  /** 0 to 1; 1 if absent. */
  readonly opacity?: number;
}

/** A whole picture file. */
export interface ImageFile {
  readonly type: 'image/jpeg' | 'image/png';
  readonly bytes: Uint8Array;
}

/** Elements that belong together. Clipped first to the clip's curves (even-odd), which are in the group's own frame. */
export interface GroupElement {
  readonly kind: 'group';
  /** What it shows, for readers of the drawing: "piece Front 1/1". */
  readonly name?: string;
  readonly transform?: Affine;
  readonly clip?: readonly Curve[];
  readonly elements: readonly DrawingElement[];
}
