import { INTAKE_SENTENCES } from '@hidebound/intake';
import type { SentenceTable } from '@hidebound/leather';

/** English sentences for what this package finds itself. */
const CLI_SENTENCES = {
  'workshop-not-needed': () =>
    'This file makes no difference here: the layout says itself what flaws and zones mean; leave out --workshop, or lay the order anew with it.',
} as const satisfies SentenceTable;

/** The tables that are looked up before those of leather. */
export const SENTENCE_TABLES: readonly SentenceTable[] = [CLI_SENTENCES, INTAKE_SENTENCES];
