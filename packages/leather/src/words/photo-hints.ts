import type { SentenceTable } from './sentence.js';

/** English sentences for what can be wrong with hints on photos. */
export const PHOTO_HINTS_SENTENCES = {
  'hints-photo-twice': (p: { photo: string }) =>
    `The photo ${p.photo} is spoken of twice; put all of its hints into one entry.`,
  'hints-two-references': (p: { first: string; second: string }) =>
    `This photo has both "${p.first}" and "${p.second}" to give it a scale; keep the larger one.`,
  'hints-corners': () =>
    'The four corners do not go around clockwise; give the top left one first, then top right, bottom right, bottom left.',
  'hints-readings': () =>
    'The same reading of the rule stands at two places; give each place the figure that the rule shows there.',
} as const satisfies SentenceTable;
