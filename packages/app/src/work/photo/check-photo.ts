import { IntakeError } from '@hidebound/intake';
import { LEAST_PHOTO_SIDE_PX, MOST_PHOTO_MEGAPIXELS, photoSignature } from '@hidebound/intake/photo';
import type { RawPhoto } from '../photo-tasks.js';
import { pictureHeader } from './picture-header.js';

const PIXELS_PER_MEGAPIXEL = 1_000_000;

/**
 * Refuses by the first bytes and the header alone what can't be traced, in the words of the command; nothing is decoded.
 * @throws IntakeError `not-a-photo`, `photo-heic`, `photo-broken`, `photo-too-many-pixels`, `photo-too-small`
 */
export function checkPhoto({ bytes, file }: RawPhoto): void {
  const signature = photoSignature(bytes);
  if (signature.kind === 'heic') throw new IntakeError('photo-heic', { what: signature.what }, { file });
  if (signature.kind === 'other') throw new IntakeError('not-a-photo', { what: signature.what }, { file });
  // Browsers show no TIFF.
  if (signature.kind === 'tiff') throw new IntakeError('not-a-photo', { what: 'a TIFF picture' }, { file });
  const { size, isWhole } = pictureHeader(bytes, signature.kind);
  if (size === undefined) throw new IntakeError('photo-broken', {}, { file });
  const { width, height } = size;
  const megapixels = (width * height) / PIXELS_PER_MEGAPIXEL;
  if (megapixels > MOST_PHOTO_MEGAPIXELS) {
    const params = { width, height, megapixels: Math.round(megapixels), limit: MOST_PHOTO_MEGAPIXELS };
    throw new IntakeError('photo-too-many-pixels', params, { file });
  }
  if (!isWhole) throw new IntakeError('photo-broken', {}, { file });
  if (Math.min(width, height) < LEAST_PHOTO_SIDE_PX) {
    throw new IntakeError('photo-too-small', { width, height, least: LEAST_PHOTO_SIDE_PX }, { file });
  }
}
