import type { Sentence } from '../../sentence.js';

/** What can make a photo unusable here. */
export const PHOTO_DECODE_REFUSALS = {
  'not-a-photo': ({ what }) => `This is ${what}, no photo that can be read here; give a JPEG, PNG or WebP.`,
} as const satisfies Readonly<Record<string, Sentence>>;

/** Findings that are part of a result. */
export const PHOTO_DECODE_FINDINGS = {} as const satisfies Readonly<Record<string, Sentence>>;
