import type { Photo } from '../photo.js';

/**
 * Light in place of stored values: blur mixes light, not stored numbers, so an edge lies where the light is half way.
 * Curve: IEC 61966-2-1 (sRGB).
 */
const LIGHT_OF_STORED = Float64Array.from({ length: 256 }, (_, stored) => {
  const share = stored / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
});

/** Shares of red, green and blue in brightness (ITU-R BT.709). */
const RED = 0.2126;
const GREEN = 0.7152;
const BLUE = 0.0722;

/** The light at a place of a photo, 0 to 1, between pixels by straight lines; NaN outside. */
export function lightAt({ width, height, rgb }: Photo, x: number, y: number): number {
  const left = Math.floor(x);
  const top = Math.floor(y);
  if (!(left >= 0 && top >= 0 && left < width - 1 && top < height - 1)) return Number.NaN;
  const first = (top * width + left) * 3;
  const second = first + width * 3;
  const fx = x - left;
  const fy = y - top;
  return (
    (pixelLight(rgb, first) * (1 - fx) + pixelLight(rgb, first + 3) * fx) * (1 - fy) +
    (pixelLight(rgb, second) * (1 - fx) + pixelLight(rgb, second + 3) * fx) * fy
  );
}

function pixelLight(rgb: Uint8Array, at: number): number {
  return (
    RED * LIGHT_OF_STORED[rgb[at]!]! +
    GREEN * LIGHT_OF_STORED[rgb[at + 1]!]! +
    BLUE * LIGHT_OF_STORED[rgb[at + 2]!]!
  );
}
