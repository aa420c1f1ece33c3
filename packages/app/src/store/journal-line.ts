import type { Change, Journal } from './journal.js';
import { storeErrorOf } from './store-error.js';
import type { StoreError } from './store-error.js';
import type { Notes } from './waiting.js';

/** The journal's writing, one after another; what could not be written is tried again with the next. */
export interface JournalLine {
  /** Notes are made together, or not at all. */
  note(notes: Notes): void;
  /** These are in the journal already. */
  found(changes: readonly Change[]): void;
  /** Settled once all that was noted so far was written, or was refused. */
  flushed(): Promise<void>;
  /** Tries again what was refused. */
  retry(): void;
  /** True where this change, in whatever form, is safe. */
  has(change: Change): boolean;
  /** Why the last writing was refused. */
  failure(): StoreError | undefined;
}

export function journalLine(journal: Pick<Journal, 'write'>): JournalLine {
  const puts = new Map<number, Change>();
  const drops = new Set<number>();
  const written = new Set<number>();
  let failure: StoreError | undefined;
  let last: Promise<void> = Promise.resolve();

  const write = async (): Promise<void> => {
    if (puts.size + drops.size === 0) return;
    const nowPuts = [...puts.values()];
    const nowDrops = [...drops];
    try {
      await journal.write(nowPuts, nowDrops);
    } catch (error) {
      failure = storeErrorOf(error);
      return;
    }
    failure = undefined;
    for (const change of nowPuts) {
      written.add(change.order);
      // Meanwhile it may have been noted in another form.
      if (puts.get(change.order) === change) puts.delete(change.order);
    }
    for (const order of nowDrops) {
      drops.delete(order);
      written.delete(order);
    }
  };
  const queue = (): void => {
    last = last.then(write);
  };

  return {
    note: (notes) => {
      for (const change of notes.puts) puts.set(change.order, change);
      for (const order of notes.drops) {
        puts.delete(order);
        drops.add(order);
      }
      queue();
    },
    found: (changes) => {
      for (const { order } of changes) written.add(order);
    },
    flushed: () => last,
    retry: queue,
    has: ({ order }) => written.has(order),
    failure: () => failure,
  };
}
