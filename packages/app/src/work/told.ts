import { sentenceFor } from '@hidebound/leather';
import type { Diagnostic, SentenceTable } from '@hidebound/leather';
import type { Told } from '../words/told.js';

/** A finding as it is told: its sentence, by these tables too, and what other languages say it from. */
export function told(
  { code, params, place }: Pick<Diagnostic, 'code' | 'params' | 'place'>,
  tables: readonly SentenceTable[] = [],
): Told {
  const finding = { code, params, ...(place === undefined ? {} : { place }) };
  return { sentence: sentenceFor(finding, tables), finding };
}
