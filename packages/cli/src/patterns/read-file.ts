import type { PatternRead } from '@hidebound/intake';

/** A pattern file and what was read from it. */
export interface ReadFile {
  readonly file: string;
  readonly read: PatternRead;
}
