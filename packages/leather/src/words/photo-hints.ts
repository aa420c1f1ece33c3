import type { SentenceTable } from './sentence.js';

/** English sentences for what can be wrong with hints on photos, and with what is decided of a traced hide. */
export const PHOTO_HINTS_SENTENCES = {
  'hints-photo-twice': (p: { photo: string }) =>
    `The photo ${p.photo} is spoken of twice; put all of its hints into one entry.`,
  'hints-two-references': (p: { first: string; second: string }) =>
    `This photo has both "${p.first}" and "${p.second}" to give it a scale; keep the larger one.`,
  'hints-corners': () =>
    'The four corners do not go around clockwise; give the top left one first, then top right, bottom right, bottom left.',
  'hints-readings': () =>
    'The same reading of the rule stands at two places; give each place the figure that the rule shows there.',
  'no-such-candidate': (p: { hide: string; id: string; near?: string; known: string }) =>
    `Hide ${p.hide} has no possible flaw ${p.id}${p.near === undefined ? '' : ` (did you mean "${p.near}"?)`}; it has ${p.known}.`,
  'candidate-both-ways': (p: { id: string }) =>
    `The possible flaw ${p.id} can't be taken and dropped at once; keep one of the two.`,
  'guess-not-open': (p: { guess: string; hide: string }) =>
    `The ${p.guess} of hide ${p.hide} is no open guess, so there is nothing to confirm; leave it out.`,
} as const satisfies SentenceTable;
