import type { Sentence } from '../../sentence.js';

/** What can make a photo unusable here. */
export const PHOTO_CAMERA_REFUSALS = {
  'no-reference': () =>
    'No reference sheet was found in the photo, so nothing tells its scale; lay printed sheets flat beside the hide, or state a rectangle, rules or a card in the hints.',
  'photo-not-tied': () =>
    'No reference in this photo is seen in any of the other photos, so nothing tells how they lie together; photograph the same sheet in both, or trace the photos one by one.',
} as const satisfies Readonly<Record<string, Sentence>>;

/** Findings that are part of a result. */
export const PHOTO_CAMERA_FINDINGS = {} as const satisfies Readonly<Record<string, Sentence>>;
