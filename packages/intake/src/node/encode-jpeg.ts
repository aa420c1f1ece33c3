import sharp from 'sharp';
import type { RgbPixels } from './rgb-pixels.js';

/** Of a straightened picture: marks stay as they are in the photo, and 12 megapixels take some 3 MB. */
export const USUAL_JPEG_QUALITY = 88;

/**
 * Pixels as a JPEG file. It holds the picture and nothing else: no place, camera, time or profile of colours.
 * @param quality 1 to 100
 */
export async function encodeJpeg({ width, height, rgb }: RgbPixels, quality: number): Promise<Uint8Array> {
  const bytes = await sharp(rgb, { raw: { width, height, channels: 3 } })
    .jpeg({ quality })
    .toBuffer();
  return new Uint8Array(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}
