import type { Hide } from './hide.js';

/** `stock.journal.json`: what was taken from which hide, so that it can be undone. Entries are only ever added. */
export interface StockJournal {
  readonly entries: readonly StockEntry[];
}

export type StockEntry =
  | {
      readonly kind: 'taken';
      readonly number: number;
      /** ISO 8601 day, given by the caller. */
      readonly date: string;
      readonly hide: string;
      readonly hideHash: string;
      readonly layout: string;
      readonly layoutHash: string;
      /** Ids of the offcuts that came of it. */
      readonly offcuts: readonly string[];
    }
  | { readonly kind: 'undone'; readonly number: number; readonly date: string; readonly undoes: number };

/** `*.job.json`: one file with all of a job; names are relative paths, texts are the files' own contents. */
export interface JobBundle {
  readonly name: string;
  readonly files: readonly BundledFile[];
}

export interface BundledFile {
  readonly path: string;
  readonly kind: 'hide' | 'order' | 'article' | 'layout' | 'workshop' | 'pattern' | 'picture' | 'journal';
  readonly encoding: 'utf8' | 'base64';
  readonly content: string;
}

/** The hides at hand, by id. */
export type HideShelf = ReadonlyMap<string, Hide>;
