import sharp from 'sharp';
import { brokenUnless } from './open-picture.js';

/** Cameras and screens write 72 or 96 into their files without meaning anything by it; scanners scan finer. */
const LEAST_MEANT_DPI = 100;

/** Pixels to the inch that a scanner wrote into the file; undefined where nobody meant any. */
export async function statedDpi(bytes: Uint8Array, file: string): Promise<number | undefined> {
  const { density } = await brokenUnless(
    file,
    sharp(bytes, { limitInputPixels: false, pages: 1 }).metadata(),
  );
  return density === undefined || density < LEAST_MEANT_DPI ? undefined : density;
}
