import type { StraightPicture } from '../straight/straight-picture.js';

/** Numbers for each sample: the three of colour.ts, then red, green and blue as amounts of light, 0 to 1. */
export const SAMPLE_NUMBERS = 6;

/** The amount of light that an 8-bit level of sRGB stands for (IEC 61966-2-1). */
const AMOUNT = Float64Array.from({ length: 256 }, (_, level) => {
  const share = level / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
});

/** White of daylight, D65 (CIE 15). */
const WHITE = [0.95047, 1, 1.08883] as const;

/** Steps of the table of the eye's cube root. */
const ROOTS = 4096;
const ROOT = Float64Array.from({ length: ROOTS + 2 }, (_, i) => {
  const t = i / ROOTS;
  return t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116;
});

function root(t: number): number {
  const at = t <= 0 ? 0 : t >= 1 ? ROOTS : t * ROOTS;
  const i = Math.floor(at);
  return ROOT[i]! + (at - i) * (ROOT[i + 1]! - ROOT[i]!);
}

/** Writes the numbers of the place on the straightened picture, between its pixels, to `to`; false where it is not seen. */
export function samplePlace(
  picture: StraightPicture,
  x: number,
  y: number,
  to: Float32Array,
  offset: number,
): boolean {
  const { width, height, rgb, seen } = picture;
  const i = Math.floor(x);
  const j = Math.floor(y);
  if (i < 0 || j < 0 || i + 1 >= width || j + 1 >= height) return false;
  const at = j * width + i;
  if (seen[at] === 0 || seen[at + 1] === 0 || seen[at + width] === 0 || seen[at + width + 1] === 0)
    return false;
  const u = x - i;
  const v = y - j;
  const between = (channel: number): number => {
    const a = at * 3 + channel;
    const b = a + width * 3;
    return (
      (1 - v) * ((1 - u) * AMOUNT[rgb[a]!]! + u * AMOUNT[rgb[a + 3]!]!) +
      v * ((1 - u) * AMOUNT[rgb[b]!]! + u * AMOUNT[rgb[b + 3]!]!)
    );
  };
  writeNumbers(between(0), between(1), between(2), to, offset);
  return true;
}

/** From amounts of light (sRGB's primaries) over XYZ and L*a*b* to the numbers of colour.ts. */
function writeNumbers(red: number, green: number, blue: number, to: Float32Array, offset: number): void {
  const fx = root((0.4124 * red + 0.3576 * green + 0.1805 * blue) / WHITE[0]);
  const fy = root(0.2126 * red + 0.7152 * green + 0.0722 * blue);
  const fz = root((0.0193 * red + 0.1192 * green + 0.9505 * blue) / WHITE[2]);
  // L + 16 is 116 fy.
  to[offset] = 66 * Math.log((116 * fy) / 66);
  to[offset + 1] = (66 * 500 * (fx - fy)) / (116 * fy);
  to[offset + 2] = (66 * 200 * (fy - fz)) / (116 * fy);
  to[offset + 3] = red;
  to[offset + 4] = green;
  to[offset + 5] = blue;
}
