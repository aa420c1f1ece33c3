import type { Sentence } from '../sentence.js';

/** What can make such a file unreadable. */
export const PDF_REFUSALS = {
  'pdf-encrypted': () =>
    'The file is locked with a password and forbids to be read; print it and photograph or scan the pages, or ask its maker for an open copy.',
} as const satisfies Readonly<Record<string, Sentence>>;

/** Findings that are part of a result. */
export const PDF_FINDINGS = {} as const satisfies Readonly<Record<string, Sentence>>;
