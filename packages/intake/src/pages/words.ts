import type { Sentence } from '../sentence.js';

/** What can make such a file unreadable. */
export const PAGES_REFUSALS = {
  'pages-do-not-fit': ({ pages }) =>
    `The pages ${pages} do not fit together; say how they lie with a grid of columns and overlap, or read them apart.`,
} as const satisfies Readonly<Record<string, Sentence>>;

/** Findings that are part of a result. */
export const PAGES_FINDINGS = {} as const satisfies Readonly<Record<string, Sentence>>;
