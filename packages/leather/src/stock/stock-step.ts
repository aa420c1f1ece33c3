import { sha256Hex } from '../hash/index.js';
import type { StockChange, StockEntry } from '../model/stock.js';

/** What a step writes into the journal, and the contents that its changes name by their sums. */
export interface StockStep {
  readonly entry: StockEntry;
  readonly contents: readonly KeptContent[];
}

export interface KeptContent {
  readonly hash: string;
  readonly text: string;
}

/** A hide file as it is and as it is to be; absent: there is none. */
export interface FileChange {
  readonly hide: string;
  readonly file: string;
  readonly before?: string | undefined;
  readonly after?: string | undefined;
}

/** Changes by their sums, with the contents beside them, each once. */
export function changesWithContents(files: readonly FileChange[]): {
  readonly changes: StockChange[];
  readonly contents: KeptContent[];
} {
  const contents = new Map<string, string>();
  const keep = (text: string): string => {
    const hash = sha256Hex(text);
    contents.set(hash, text);
    return hash;
  };
  const changes = files.map(({ hide, file, before, after }) => ({
    hide,
    file,
    ...(before === undefined ? {} : { before: keep(before) }),
    ...(after === undefined ? {} : { after: keep(after) }),
  }));
  return { changes, contents: [...contents].map(([hash, text]) => ({ hash, text })) };
}
