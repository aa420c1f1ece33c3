import type { JobFile } from '../job/job.js';
import { nextNumber } from './database.js';
import type { ChangeRecord, Database } from './database.js';
import { holdLock, whileGone } from './locks.js';

/** One change of one file that may not be in its store yet. */
export interface Change {
  /** Counts up within a writer. */
  readonly order: number;
  readonly path: string;
  /** The store's revision that it was made from; null: there was no such file. */
  readonly base: string | null;
  /** Undefined: the file is taken away. */
  readonly file: JobFile | undefined;
  /** The same for changes of a file that follow one another; others of the file were made without seeing these. */
  readonly strand: string;
  /** The changes of several files that it is part of: they are saved together. */
  readonly steps: readonly string[];
}

/**
 * A write-ahead journal: each change is put there before it goes to the store, and taken off when the store has it.
 * What a tab leaves behind that was closed or killed is found by the next one.
 */
export interface Journal {
  /** Of this writer, for names that no other tab gives. */
  readonly writer: number;
  /**
   * Puts some, takes off others: all of it or nothing, on the disk when it is settled. An order number that is there
   * already is written over.
   * @throws where there is no room or no storage at all
   */
  write(puts: readonly Change[], drops: readonly number[]): Promise<void>;
  /**
   * Takes over what other writers of the job left who are gone: a list for each of them, in its order, with numbers
   * of this writer's.
   */
  adopt(nextOrder: () => number): Promise<readonly (readonly Change[])[]>;
  /** Ends the writer: from then on another may adopt what is left. */
  close(): void;
}

const TABLES = ['changes', 'counters'] as const;

/**
 * The journal of one job in IndexedDB, for one tab. A tab is known to be alive by a lock that it holds (Web Locks):
 * the browser gives it back however the tab ends.
 */
export async function openJournal(database: Database, job: string): Promise<Journal> {
  const writer = await database.write(['counters'], (transaction) => nextNumber(transaction, 'writer'));
  const release = await holdLock(writerLock(writer));
  return {
    writer,
    write: (puts, drops) =>
      database.write(TABLES, async (transaction) => {
        const changes = transaction.objectStore('changes');
        const waits: Promise<unknown>[] = drops.map((order) => changes.delete([job, writer, order]));
        for (const change of puts) waits.push(changes.put({ ...change, job, writer }));
        await Promise.all(waits);
      }),
    adopt: async (nextOrder) => {
      const adopted: (readonly Change[])[] = [];
      for (const other of await otherWriters(database, job, writer)) {
        await whileGone(writerLock(other), async () => {
          adopted.push(await takeFrom(database, job, other, writer, nextOrder));
        });
      }
      return adopted;
    },
    close: release,
  };
}

function writerLock(writer: number): string {
  return `hidebound-writer-${writer}`;
}

async function otherWriters(database: Database, job: string, own: number): Promise<readonly number[]> {
  const keys = await database.read(['changes'], (transaction) =>
    transaction.objectStore('changes').getAllKeys(changesOf(job)),
  );
  return [...new Set(keys.map(([, writer]) => writer))].filter((writer) => writer !== own);
}

/** In one transaction, so that each change is always somebody's. */
function takeFrom(
  database: Database,
  job: string,
  other: number,
  writer: number,
  nextOrder: () => number,
): Promise<readonly Change[]> {
  return database.write(['changes'], async (transaction) => {
    const changes = transaction.objectStore('changes');
    const left = await changes.getAll(changesOf(job, other));
    await changes.delete(changesOf(job, other));
    const taken = left.map((record) => ({ ...record, writer, order: nextOrder() }));
    await Promise.all(taken.map((record) => changes.put(record)));
    return taken.map(changeOf);
  });
}

function changeOf({ order, path, base, file, strand, steps }: ChangeRecord): Change {
  return { order, path, base, file, strand, steps };
}

/** Arrays sort behind numbers and texts in IndexedDB, so that an empty one is the end of all. */
function changesOf(...key: readonly [string] | readonly [string, number]): IDBKeyRange {
  return IDBKeyRange.bound([...key], [...key, []]);
}

/** Stands in where the browser keeps nothing: each change then has to reach the store by itself. */
export function noJournal(reason: unknown): Journal {
  const refuse = (): Promise<never> =>
    Promise.reject(reason instanceof Error ? reason : new Error(String(reason)));
  return { writer: 0, write: refuse, adopt: () => Promise.resolve([]), close: () => undefined };
}
