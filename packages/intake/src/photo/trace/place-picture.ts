import { applyAffine } from '@hidebound/geometry';
import type { Affine, Box } from '@hidebound/geometry';
import type { Side } from '@hidebound/leather';
import type { StraightPicture } from '../straight/straight-picture.js';

/**
 * The part of a straightened picture that shows a box of the floor (mm), in the hide's frame: mirrored where the flesh
 * side lay upwards. Cut along whole pixels, so that no pixel changes; the box grows to the next ones.
 */
export function pictureInFrame(
  picture: StraightPicture,
  box: Box,
  frame: Affine,
  sideUp: Side,
): StraightPicture {
  const { pxPerMm, origin } = picture;
  const left = Math.max(0, Math.floor((box.minX - origin.x) * pxPerMm));
  const top = Math.max(0, Math.floor((box.minY - origin.y) * pxPerMm));
  const right = Math.min(picture.width, Math.ceil((box.maxX - origin.x) * pxPerMm));
  const bottom = Math.min(picture.height, Math.ceil((box.maxY - origin.y) * pxPerMm));
  const width = Math.max(1, right - left);
  const height = Math.max(1, bottom - top);
  const isMirrored = sideUp === 'flesh';
  const corner = {
    x: origin.x + (isMirrored ? left + width : left) / pxPerMm,
    y: origin.y + top / pxPerMm,
  };
  const window = { left, top, width, height, isMirrored };
  return {
    width,
    height,
    rgb: cutPixels(picture.rgb, picture.width, 3, window),
    seen: cutPixels(picture.seen, picture.width, 1, window),
    pxPerMm,
    origin: applyAffine(frame, corner),
  };
}

interface PixelWindow {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly isMirrored: boolean;
}

function cutPixels(
  pixels: Uint8Array,
  rowPixels: number,
  channels: number,
  { left, top, width, height, isMirrored }: PixelWindow,
): Uint8Array {
  const cut = new Uint8Array(width * height * channels);
  for (let row = 0; row < height; row++) {
    const from = ((top + row) * rowPixels + left) * channels;
    const to = row * width * channels;
    const line = pixels.subarray(from, from + width * channels);
    if (!isMirrored) {
      cut.set(line, to);
      continue;
    }
    for (let x = 0; x < width; x++) {
      for (let c = 0; c < channels; c++) cut[to + (width - 1 - x) * channels + c] = line[x * channels + c]!;
    }
  }
  return cut;
}
