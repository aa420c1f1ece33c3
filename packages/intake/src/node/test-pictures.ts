import sharp from 'sharp';
import type { Sharp } from 'sharp';
import type { RgbPixels } from './rgb-pixels.js';

export const TEST_WIDTH = 400;
export const TEST_HEIGHT = 320;

/** Red grows to the right, green downwards, blue is a board of squares of 16 px: no turned or mirrored copy is alike. */
export function testPixels(width = TEST_WIDTH, height = TEST_HEIGHT): RgbPixels {
  const rgb = new Uint8Array(width * height * 3);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const isDark = ((x >> 4) + (y >> 4)) % 2 === 0;
      rgb.set([(x * 255) / width, (y * 255) / height, isDark ? 40 : 200], (y * width + x) * 3);
    }
  }
  return { width, height, rgb };
}

/** The same for the library. */
export function testPicture(pixels = testPixels()): Sharp {
  const { width, height, rgb } = pixels;
  return sharp(rgb, { raw: { width, height, channels: 3 } });
}

/** A picture of one colour. */
export function plainPicture(r: number, g: number, b: number): Sharp {
  return sharp({ create: { width: TEST_WIDTH, height: TEST_HEIGHT, channels: 3, background: { r, g, b } } });
}

/** Red, green and blue of one pixel. */
export function pixelAt({ width, rgb }: RgbPixels, x: number, y: number): number[] {
  return [...rgb.subarray((y * width + x) * 3, (y * width + x) * 3 + 3)];
}

/** The largest difference between the same pixels of two pictures of one size. */
export function largestDifference(a: RgbPixels, b: RgbPixels): number {
  if (a.width !== b.width || a.height !== b.height) return Infinity;
  return a.rgb.reduce((most, value, i) => Math.max(most, Math.abs(value - b.rgb[i]!)), 0);
}
