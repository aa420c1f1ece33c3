import type { Photo } from '../photo/photo.js';
import { brokenUnless, openPicture, refuseTooSmall } from './open-picture.js';
import { rgbPixels } from './rgb-pixels.js';

/**
 * A photo's pixels: JPEG, PNG, WebP or TIFF, of any depth and colours, turned upright as its metadata asks, transparent
 * parts white; of several pages or frames the first one. A damaged file is refused, also where most of it is there: what
 * is missing might be the hide's edge.
 * @throws IntakeError `not-a-photo`, `photo-heic`, `photo-broken`, `photo-too-many-pixels`, `photo-too-small`
 */
export async function decodePhoto(bytes: Uint8Array, file: string): Promise<Photo> {
  const picture = await openPicture(bytes, file);
  refuseTooSmall(picture, file);
  return { file, ...(await brokenUnless(file, rgbPixels(picture.upright))) };
}
