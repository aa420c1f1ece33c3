import { plural } from '../../sentence.js';
import type { Sentence } from '../../sentence.js';

/** What can make a photo unusable here. */
export const PHOTO_OUTLINE_REFUSALS = {
  'no-hide-in-photo': () =>
    'No hide was found in the photo; lay it on a floor of another colour, or draw a stroke on the leather and one on the floor in the hints.',
} as const satisfies Readonly<Record<string, Sentence>>;

/** Findings that are part of a result. */
export const PHOTO_OUTLINE_FINDINGS = {
  'hide-leaves-picture': ({ mm }) =>
    `The hide goes on beyond what the photo shows, along ${mm} mm of its edge; take the photo again with the whole hide in it, or add one that shows the rest.`,
  'edge-points-astray': ({ count }) =>
    `${plural(count, 'place that was', 'places that were')} said to be on the edge ${Number(count) === 1 ? 'lies' : 'lie'} more than 200 mm from it and ${Number(count) === 1 ? 'was' : 'were'} left out; correct the hints.`,
  'edge-unsure': ({ mm, most, count }) =>
    `Along ${plural(count, 'stretch', 'stretches')} of the edge, ${mm} mm together, leather and floor are hard to tell apart and the outline can be off by up to ${most} mm; look at them, and mark places on the edge in the hints.`,
} as const satisfies Readonly<Record<string, Sentence>>;
