import type { Sentence } from '../../sentence.js';

/** What can make a photo unusable here. */
export const PHOTO_OUTLINE_REFUSALS = {
  'no-hide-in-photo': () =>
    'No hide was found in the photo; lay it on a floor of another colour, or draw a stroke on the leather and one on the floor in the hints.',
} as const satisfies Readonly<Record<string, Sentence>>;

/** Findings that are part of a result. */
export const PHOTO_OUTLINE_FINDINGS = {} as const satisfies Readonly<Record<string, Sentence>>;
