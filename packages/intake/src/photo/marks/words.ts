import type { Sentence } from '../../sentence.js';

/** What can make a photo unusable here. */
export const PHOTO_MARKS_REFUSALS = {
  'sides-do-not-match': ({ photo }) =>
    `What ${photo} shows could not be laid onto the hide by its outline or by shared marks; take the photo again with the whole hide in it.`,
} as const satisfies Readonly<Record<string, Sentence>>;

/** Findings that are part of a result. */
export const PHOTO_MARKS_FINDINGS = {} as const satisfies Readonly<Record<string, Sentence>>;
