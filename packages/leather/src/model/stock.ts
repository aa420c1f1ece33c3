import type { Hide } from './hide.js';

/**
 * `stock.journal.json`: what was taken from which hide, so that it can be undone. Entries are only ever added. An entry
 * counts from the moment it stands in the journal; the hide files are written after it.
 */
export interface StockJournal {
  /** So many entries have their files all written. The one after them, if there is one, was interrupted. */
  readonly finished: number;
  readonly entries: readonly StockEntry[];
}

export type StockEntry = TakenEntry | UndoneEntry;

/** A layout was cut: its hides became pieces and offcuts. */
export interface TakenEntry {
  readonly kind: 'taken';
  readonly number: number;
  /** ISO 8601 day, given by the caller. */
  readonly date: string;
  readonly layout: string;
  readonly layoutHash: string;
  /** The hides that were cut, as the layout knew them. */
  readonly hides: readonly { readonly hide: string; readonly hash: string }[];
  /** Ids of the offcuts that came of it. */
  readonly offcuts: readonly string[];
  readonly changes: readonly StockChange[];
}

export interface UndoneEntry {
  readonly kind: 'undone';
  readonly number: number;
  readonly date: string;
  readonly undoes: number;
  readonly changes: readonly StockChange[];
}

/** What a step does to one hide file. Contents are kept beside the journal, under their sums. */
export interface StockChange {
  readonly hide: string;
  /** Its name within the stock's folder. */
  readonly file: string;
  /** SHA-256 of the file as it was; absent: there was none. */
  readonly before?: string;
  /** SHA-256 of the file as it became; absent: it was taken away. */
  readonly after?: string;
}

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
