import type { Point } from '@hidebound/geometry';
import type { Shot } from '../bring-in.js';
import { cornerIn } from '../logic/snap-corner.js';

/** A photo's picture for looking closely: below a finger, and for corners. */
export interface PicturePeek {
  readonly shot: Shot;
  readonly image: HTMLImageElement;
}

export function peekInto(shot: Shot): PicturePeek {
  const image = new Image();
  image.src = shot.url;
  return { shot, image };
}

/** A corner is looked for within so many pixels of the screen's picture. */
const REACH_PX = 14;

/** The corner that lies near a place (px of the photo); the place itself where there is none. */
export function snapped({ shot, image }: PicturePeek, at: Point): Point {
  if (!image.complete || image.naturalWidth === 0) return at;
  const side = 2 * REACH_PX + 1;
  const left = Math.round(at.x * shot.shrink) - REACH_PX;
  const top = Math.round(at.y * shot.shrink) - REACH_PX;
  const canvas = document.createElement('canvas');
  canvas.width = side;
  canvas.height = side;
  const pen = canvas.getContext('2d', { willReadFrequently: true })!;
  pen.drawImage(image, left, top, side, side, 0, 0, side, side);
  const { data } = pen.getImageData(0, 0, side, side);
  // Brightness as ITU-R BT.601 weighs the colours.
  const values = Float32Array.from(
    { length: side * side },
    (_, i) => 0.299 * data[4 * i]! + 0.587 * data[4 * i + 1]! + 0.114 * data[4 * i + 2]!,
  );
  const corner = cornerIn({ width: side, height: side, values });
  if (corner === undefined) return at;
  return { x: (left + corner.x) / shot.shrink, y: (top + corner.y) / shot.shrink };
}
