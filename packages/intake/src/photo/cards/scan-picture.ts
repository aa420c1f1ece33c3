import { MM_PER_INCH } from '../../limits.js';
import type { Photo } from '../photo.js';
import type { StraightPicture } from '../straight/straight-picture.js';

/** A flat scan as a straight picture: its density is trusted, its top left corner is the origin. */
export function scanPicture({ width, height, rgb }: Photo, dpi: number): StraightPicture {
  return {
    width,
    height,
    rgb,
    pxPerMm: dpi / MM_PER_INCH,
    origin: { x: 0, y: 0 },
    seen: new Uint8Array(width * height).fill(255),
  };
}
