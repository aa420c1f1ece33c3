import { CliError } from '../cli-error.js';

/**
 * Segments in one hide file. Traced hides have hundreds, and one with many marks some thousands; far beyond that, laying
 * would take hours.
 */
const MOST_SEGMENTS = 50_000;

/** Every segment of a curve says where it goes "to". */
const SEGMENT = '"to"';

/** Refuses a hide file of more segments than anybody draws, before it is read. */
export function refuseTooDetailed(text: string, file: string): void {
  const count = text.split(SEGMENT).length - 1;
  if (count <= MOST_SEGMENTS) return;
  throw new CliError(
    'too-large',
    `There are ${count} segments in its lines, and at most ${MOST_SEGMENTS} are read; trace it again with fewer points, or simplify its lines.`,
    { file },
  );
}
