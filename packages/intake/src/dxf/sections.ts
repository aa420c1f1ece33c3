import { IntakeError } from '../error.js';
import { lineOf } from './pairs.js';
import type { Pairs } from './pairs.js';
import { isWord, wordAt } from './values.js';

/** From the first pair of something to the one after its last. */
export interface Range {
  readonly from: number;
  readonly to: number;
}

/** The sections of the file by name; of two with one name, the first. Throws `dxf-truncated`, `dxf-no-entities`. */
export function findSections(pairs: Pairs): ReadonlyMap<string, Range> {
  const sections = new Map<string, Range>();
  const { codes, count, file } = pairs;
  let open: { readonly name: string; readonly from: number } | undefined;
  for (let i = 0; i < count; i++) {
    if (codes[i] !== 0) continue;
    if (open === undefined && isWord(pairs, i, 'SECTION')) {
      const name = codes[i + 1] === 2 && i + 1 < count ? wordAt(pairs, i + 1).toUpperCase() : '';
      open = { name, from: i + 2 };
    } else if (open !== undefined && isWord(pairs, i, 'ENDSEC')) {
      if (!sections.has(open.name)) sections.set(open.name, { from: open.from, to: i });
      open = undefined;
    }
  }
  const isWhole = open === undefined && (pairs.hasEnd || sections.has('ENTITIES'));
  if (!isWhole) throw new IntakeError('dxf-truncated', {}, { file, line: lineOf(count) });
  if (!sections.has('ENTITIES')) throw new IntakeError('dxf-no-entities', {}, { file });
  return sections;
}

/** The pair with group code 0 after this one, or the end. */
export function nextEntity({ codes }: Pairs, from: number, to: number): number {
  let i = from + 1;
  while (i < to && codes[i] !== 0) i++;
  return Math.min(i, to);
}
