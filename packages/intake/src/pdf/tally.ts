import { tell } from '../findings.js';
import type { Findings } from '../findings.js';
import type { Tally } from './page-walk.js';

/** Elements named in one sentence. */
const NAMED = 4;

/** Tells once of the whole file what was seen on its pages. */
export function tellTally({ white, thin }: Tally, findings: Findings): void {
  if (white.length > 0) tell(findings, 'note', 'pdf-white-lines', counted(white));
  if (thin.length > 0) tell(findings, 'warning', 'pdf-thin-areas', counted(thin));
}

function counted(names: readonly string[]): { readonly count: number; readonly elements: string } {
  const shown = names.slice(0, NAMED).join(', ');
  const more = names.length - NAMED;
  return { count: names.length, elements: more > 0 ? `${shown} and ${more} more` : shown };
}
