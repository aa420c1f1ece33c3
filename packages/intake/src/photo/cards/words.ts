import { plural } from '../../sentence.js';
import type { Sentence } from '../../sentence.js';

/** What can make a photo unusable here. */
export const PHOTO_CARDS_REFUSALS = {
  'no-cards-found': () =>
    'No card or paper template was found in the picture; lay them apart on a plain ground of another shade, without shadows.',
} as const satisfies Readonly<Record<string, Sentence>>;

/** Findings that are part of a result. */
export const PHOTO_CARDS_FINDINGS = {
  'card-cut-off': () =>
    'A card lies here at the border of the picture, or under or on a reference sheet, and is left out; lay it clear of both.',
  'card-edge-rough': ({ piece, off }) =>
    `The edge of "${piece}" lies up to ${off} mm off its clean line here; compare the saved drawing with the card.`,
  'card-edge-unclear': ({ piece, length }) =>
    `Over ${length} mm, from here on, the edge of "${piece}" can hardly be told from the ground or a shadow and may be off by 1 mm; lay it on another shade, or light it evenly.`,
  'card-edge-as-seen': ({ piece }) =>
    `The edge of "${piece}" is too ragged for clean lines and is drawn as it is seen; draw over it if it matters.`,
  'card-lines-guessed': ({ how, count, role, pieces }) =>
    `${how === 'solid' ? plural(count, 'solid line', 'solid lines') : plural(count, 'line of dashes or dots', 'lines of dashes or dots')} drawn on cards ${Number(count) === 1 ? 'is' : 'are'} taken for ${role} ${Number(count) === 1 ? 'line' : 'lines'} (${pieces}); change what ${Number(count) === 1 ? 'it is' : 'they are'} in the saved drawing if that is wrong.`,
  'card-notches-guessed': ({ count, pieces }) =>
    `${plural(count, 'short line', 'short lines')} at the edge ${Number(count) === 1 ? 'is' : 'are'} taken for ${Number(count) === 1 ? 'a notch' : 'notches'} (${pieces}).`,
  'card-direction-guessed': ({ pieces }) =>
    `An arrow is taken for the direction towards the tail (${pieces}); take it out of the saved drawing if it means something else.`,
  'card-several-arrows': ({ piece }) =>
    `Several arrows are drawn on "${piece}" and the longest is taken for its direction; keep one.`,
  'card-marks-left': ({ count, pieces }) =>
    `${plural(count, 'drawn stroke', 'drawn strokes')} that ${Number(count) === 1 ? 'is' : 'are'} no clear line, such as writing, ${Number(count) === 1 ? 'is' : 'are'} left out (${pieces}).`,
  'names-left-over': ({ names, pieces }) =>
    `${plural(names, 'name is', 'names are')} given for ${plural(pieces, 'piece', 'pieces')}, so the last ones are not used; names count in reading order.`,
} as const satisfies Readonly<Record<string, Sentence>>;
