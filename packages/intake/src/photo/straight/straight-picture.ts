import type { Point } from '@hidebound/geometry';

/**
 * The floor as seen from straight above, at one scale everywhere. The middle of pixel (i, j) shows the floor at
 * origin + ((i + 0.5) / pxPerMm, (j + 0.5) / pxPerMm).
 */
export interface StraightPicture {
  readonly width: number;
  readonly height: number;
  /** width × height × 3 bytes. */
  readonly rgb: Uint8Array;
  readonly pxPerMm: number;
  /** The floor's place of the picture's top left corner, mm. */
  readonly origin: Point;
  /** width × height: 255 where a photo shows the floor, 0 beyond its edges. */
  readonly seen: Uint8Array;
}

/** The floor's place of a place on the picture (pixel middles are whole numbers), mm. */
export function toFloor(picture: Pick<StraightPicture, 'origin' | 'pxPerMm'>, { x, y }: Point): Point {
  return {
    x: picture.origin.x + (x + 0.5) / picture.pxPerMm,
    y: picture.origin.y + (y + 0.5) / picture.pxPerMm,
  };
}

/** The place on the picture that shows a place of the floor. */
export function toPicture(picture: Pick<StraightPicture, 'origin' | 'pxPerMm'>, { x, y }: Point): Point {
  return {
    x: (x - picture.origin.x) * picture.pxPerMm - 0.5,
    y: (y - picture.origin.y) * picture.pxPerMm - 0.5,
  };
}
