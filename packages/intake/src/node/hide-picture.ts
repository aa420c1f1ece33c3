import type { Box } from '@hidebound/geometry';
import type { Hide, HidePhoto } from '@hidebound/leather';
import { FAINT_QUALITY, faintHidePixels, photoBox } from '../photo/decode/faint-hide.js';
import { encodeJpeg } from './encode-jpeg.js';
import { brokenUnless, openPicture } from './open-picture.js';
import { rgbPixels } from './rgb-pixels.js';

/** The photo of a hide, made ready to be drawn on. */
export interface FaintPicture {
  /** A JPEG file without any metadata. */
  readonly jpeg: Uint8Array;
  /** Where the whole picture lies in the hide's frame, mm. */
  readonly box: Box;
}

/**
 * The straightened photo of a hide, shrunk to what a page can show and made light for drawing on (`faintPixels`).
 * @param bytes the file that the hide's photo names
 * @param longestPx the longer side of the result at most
 * @throws IntakeError as `decodePhoto`, but of any size up to the limit
 */
export async function faintHidePicture(
  bytes: Uint8Array,
  file: string,
  hide: Hide & { readonly photo: HidePhoto },
  longestPx: number,
): Promise<FaintPicture> {
  const picture = await openPicture(bytes, file);
  const shrunk = picture.upright.resize({
    width: longestPx,
    height: longestPx,
    fit: 'inside',
    withoutEnlargement: true,
  });
  const pixels = await brokenUnless(file, rgbPixels(shrunk));
  const box = photoBox(hide.photo, picture);
  const jpeg = await encodeJpeg(faintHidePixels(pixels, hide, box), FAINT_QUALITY);
  return { jpeg, box };
}
