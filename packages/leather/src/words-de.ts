/** The sentences of this package in German: loaded by those who show German. */
export { germanLanguage, germanSentences } from './words/de/german.js';
export { germanFor } from './words/de/say.js';
export type { German, Translation } from './words/de/say.js';
export { CUTS, ROLES, cutShort, joined, referenceTerm, term, termList } from './words/de/terms.js';
