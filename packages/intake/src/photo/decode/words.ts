import { groupDigits } from '@hidebound/leather';
import type { Sentence } from '../../sentence.js';

/** What can make a photo unusable here. */
export const PHOTO_DECODE_REFUSALS = {
  'not-a-photo': ({ what }) => `This is ${what}, no photo that can be read here; give a JPEG, PNG or WebP.`,
  'photo-heic': ({ what }) =>
    `This is ${what} picture, which can't be read here; in the phone's camera settings choose JPEG (the most compatible format) for new photos, and export this one as JPEG.`,
  'photo-broken': () =>
    'The picture is damaged or stops in the middle; copy it again from the camera, or export it anew as JPEG.',
  'photo-too-many-pixels': ({ width, height, megapixels, limit }) =>
    `The picture has ${pixels(width, height)}, ${groupDigits(Number(megapixels))} megapixels, and at most ${limit} are read; export it smaller.`,
  'photo-too-small': ({ width, height, least }) =>
    `The picture has only ${pixels(width, height)}, and at least ${least} each way are needed; give the photo as the camera took it, not a preview.`,
} as const satisfies Readonly<Record<string, Sentence>>;

function pixels(width: unknown, height: unknown): string {
  return `${groupDigits(Number(width))} × ${groupDigits(Number(height))} pixels`;
}

/** Findings that are part of a result. */
export const PHOTO_DECODE_FINDINGS = {} as const satisfies Readonly<Record<string, Sentence>>;
