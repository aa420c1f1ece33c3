import type { Pairs } from './pairs.js';
import type { Range } from './sections.js';
import { textAt } from './text.js';
import { isWord, wholeAt, wordAt } from './values.js';

/** What the header section says that matters for reading. */
export interface DxfHeader {
  readonly version?: string;
  readonly codePage?: string;
  /** $INSUNITS; 0 stands for none. */
  readonly units?: number;
  /** $MEASUREMENT: 0 is inches, 1 metric; it chooses line types and hatches and says nothing of what a unit is. */
  readonly measurement?: number;
}

/** Variables are a pair of group code 9 with the name, then one with the value. */
export function readHeader(pairs: Pairs, range: Range | undefined): DxfHeader {
  const found: { -readonly [key in keyof DxfHeader]: DxfHeader[key] } = {};
  for (let i = range?.from ?? 0; i + 1 < (range?.to ?? 0); i++) {
    if (pairs.codes[i] !== 9) continue;
    if (isWord(pairs, i, '$ACADVER')) found.version = wordAt(pairs, i + 1);
    else if (isWord(pairs, i, '$DWGCODEPAGE')) found.codePage = textAt(pairs, i + 1, () => '');
    else if (isWord(pairs, i, '$INSUNITS')) found.units = wholeAt(pairs, i + 1);
    else if (isWord(pairs, i, '$MEASUREMENT')) found.measurement = wholeAt(pairs, i + 1);
  }
  return found;
}
