import { IntakeError } from '@hidebound/intake';
import type { Photo } from '@hidebound/intake/photo';
import type { RawPhoto } from '../photo-tasks.js';
import { checkPhoto } from './check-photo.js';

/** Rows that are fetched from the canvas at once: all of a large photo would lie in the memory twice. */
const ROWS_AT_ONCE = 256;

/**
 * A photo's picture, turned upright as its metadata asks, as the browser decodes it. Closed by whoever asked for it.
 * @throws IntakeError as `checkPhoto`
 */
export async function openPhoto(photo: RawPhoto): Promise<ImageBitmap> {
  checkPhoto(photo);
  try {
    return await createImageBitmap(new Blob([photo.bytes as Uint8Array<ArrayBuffer>]), {
      imageOrientation: 'from-image',
    });
  } catch (error) {
    const broken = new IntakeError('photo-broken', {}, { file: photo.file });
    broken.cause = error;
    throw broken;
  }
}

/** A photo's pixels; transparent parts are white. */
export async function decodePhoto(photo: RawPhoto): Promise<Photo> {
  const picture = await openPhoto(photo);
  try {
    return { file: photo.file, ...pixelsOf(picture) };
  } finally {
    picture.close();
  }
}

function pixelsOf(picture: ImageBitmap): Omit<Photo, 'file'> {
  const { width, height } = picture;
  const rgb = new Uint8Array(width * height * 3);
  const canvas = new OffscreenCanvas(width, ROWS_AT_ONCE);
  const pen = canvas.getContext('2d', { willReadFrequently: true, alpha: false })!;
  for (let top = 0; top < height; top += ROWS_AT_ONCE) {
    const rows = Math.min(ROWS_AT_ONCE, height - top);
    pen.fillStyle = '#ffffff';
    pen.fillRect(0, 0, width, rows);
    pen.drawImage(picture, 0, top, width, rows, 0, 0, width, rows);
    withoutFourth(pen.getImageData(0, 0, width, rows).data, rgb, top * width * 3);
  }
  return { width, height, rgb };
}

function withoutFourth(rgba: Uint8ClampedArray, rgb: Uint8Array, from: number): void {
  for (let at = 0, to = from; at < rgba.length; at += 4, to += 3) {
    rgb[to] = rgba[at]!;
    rgb[to + 1] = rgba[at + 1]!;
    rgb[to + 2] = rgba[at + 2]!;
  }
}
