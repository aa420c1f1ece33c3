import { composeAffine, scaling, translation } from '@hidebound/geometry';
import type { Box } from '@hidebound/geometry';
import { hideRegion } from '@hidebound/leather';
import type { Hide, HidePhoto } from '@hidebound/leather';
import { faintPixels } from '../photo/decode/faint-pixels.js';
import { regionMask } from '../photo/decode/leather-mask.js';
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

/** Light colours of low contrast: finer steps would not be seen on paper. */
const FAINT_QUALITY = 72;

/** Changes of shade over more than this are the room's light, not the leather's marks, mm. */
const SLOW_MM = 180;

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
  const box = pictureBox(hide.photo, picture);
  const pxPerMm = pixels.width / (box.maxX - box.minX);
  const toPicture = composeAffine(
    translation(-0.5, -0.5),
    composeAffine(scaling(pxPerMm), translation(-box.minX, -box.minY)),
  );
  const mask = regionMask(hideRegion(hide), toPicture, pixels);
  const jpeg = await encodeJpeg(faintPixels(pixels, mask, SLOW_MM * pxPerMm), FAINT_QUALITY);
  return { jpeg, box };
}

function pictureBox(
  { origin, pxPerMm }: HidePhoto,
  { widthPx, heightPx }: { readonly widthPx: number; readonly heightPx: number },
): Box {
  return {
    minX: origin.x,
    minY: origin.y,
    maxX: origin.x + widthPx / pxPerMm,
    maxY: origin.y + heightPx / pxPerMm,
  };
}
