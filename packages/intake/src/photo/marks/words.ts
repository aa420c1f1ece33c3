import { plural } from '../../sentence.js';
import type { Sentence } from '../../sentence.js';

/** What can make a photo unusable here. */
export const PHOTO_MARKS_REFUSALS = {
  'sides-do-not-match': ({ photo }) =>
    `What ${photo} shows could not be laid onto the hide by its outline or by shared marks; take the photo again with the whole hide in it, and with marks that both sides show if its legs cannot lie alike.`,
  'moved-photos-do-not-join': ({ photo, crosses }) =>
    `Of the chalk crosses in ${photo} (${plural(crosses, 'cross was', 'crosses were')} found) fewer than two are shared with the other photos, so it can't be told where its part of the hide lies; chalk at least three crosses, far apart, into each part that two photos show.`,
  'crosses-disagree': ({ crosses, misfit }) =>
    `The ${crosses} chalk crosses that are shared with the other photos lie up to ${misfit} mm off, so the leather was stretched or creased between the photos; lay it flat, draw it along without pulling, and take the photos again.`,
} as const satisfies Readonly<Record<string, Sentence>>;

/** Findings that are part of a result. */
export const PHOTO_MARKS_FINDINGS = {
  'chalk-hardly-shows': () =>
    'The leather is so pale that white chalk hardly shows on it, so chalk marks may have been missed; use pale blue chalk, and look whether each mark was found.',
  'other-side-ambiguous': ({ misfit, other }) =>
    `The other side's photo fits the hide in two ways, within ${misfit} mm and within ${other} mm, and the better one is taken; mark two or more places on both sides to be sure.`,
} as const satisfies Readonly<Record<string, Sentence>>;
