import type { Sentence } from '../../sentence.js';

/** What can make a photo unusable here. */
export const PHOTO_CARDS_REFUSALS = {
  'no-cards-found': () =>
    'No card or paper template was found in the picture; lay them apart on a plain ground of another shade, without shadows.',
} as const satisfies Readonly<Record<string, Sentence>>;

/** Findings that are part of a result. */
export const PHOTO_CARDS_FINDINGS = {} as const satisfies Readonly<Record<string, Sentence>>;
