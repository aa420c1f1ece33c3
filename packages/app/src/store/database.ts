import { openDB } from 'idb';
import type { DBSchema, IDBPDatabase, IDBPTransaction } from 'idb';
import type { JobFile } from '../job/job.js';
import type { StoredFile } from './job-store.js';

/** A job in the browser's own storage. */
export interface JobRecord {
  readonly id: number;
  readonly name: string;
  /** Milliseconds since 1970, for people's eyes only. */
  readonly changed: number;
  /** When it was put into the bin. */
  readonly binned?: number;
}

export interface FileRecord extends StoredFile {
  readonly job: number;
}

/** Content lies apart, so that a list need not load the photos. */
export interface ContentRecord {
  readonly job: number;
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** One change of one file that may not be in its store yet. */
export interface ChangeRecord {
  readonly job: string;
  readonly writer: number;
  readonly order: number;
  readonly path: string;
  readonly base: string | null;
  /** Undefined: the file is taken away. */
  readonly file: JobFile | undefined;
  readonly strand: string;
  readonly steps: readonly string[];
}

export interface Tables extends DBSchema {
  jobs: { key: number; value: JobRecord };
  files: { key: [number, string]; value: FileRecord };
  contents: { key: [number, string]; value: ContentRecord };
  /** What each file was before its last change. */
  before: { key: [number, string]; value: ContentRecord };
  changes: { key: [string, number, number]; value: ChangeRecord };
  counters: { key: 'job' | 'revision' | 'writer'; value: number };
}

export type TableName = 'jobs' | 'files' | 'contents' | 'before' | 'changes' | 'counters';

export type Write = IDBPTransaction<Tables, TableName[], 'readwrite'>;
export type Read = IDBPTransaction<Tables, TableName[], 'readonly'>;

export interface Database {
  read<T>(tables: readonly TableName[], what: (transaction: Read) => Promise<T>): Promise<T>;
  /**
   * All of it or nothing; settled once it is on the disk, not merely handed to the system (durability "strict").
   * @throws what the browser throws, QuotaExceededError among it
   */
  write<T>(tables: readonly TableName[], what: (transaction: Write) => Promise<T>): Promise<T>;
  close(): void;
}

export const DATABASE_NAME = 'hidebound';
const VERSION = 1;

/** The app's database in the browser. It is opened when it is first needed, and anew where the browser closed it. */
export function openDatabase(name: string = DATABASE_NAME): Database {
  let opened: Promise<IDBPDatabase<Tables>> | undefined;
  const forget = (): void => {
    opened = undefined;
  };
  const open = (): Promise<IDBPDatabase<Tables>> => {
    opened ??= openTables(name, forget).catch((error: unknown) => {
      forget();
      throw error;
    });
    return opened;
  };
  const close = (): void => {
    void opened?.then((database) => database.close()).catch(() => undefined);
    forget();
  };

  return {
    read: async (tables, what) => what((await open()).transaction([...tables], 'readonly')),
    write: async (tables, what) => {
      const transaction = (await open()).transaction([...tables], 'readwrite', { durability: 'strict' });
      return finish(transaction, what);
    },
    close,
  };
}

async function finish<T>(transaction: Write, what: (transaction: Write) => Promise<T>): Promise<T> {
  const done = transaction.done;
  // Whoever waits for `what` hears of a failure there first; this keeps it from being called unheard.
  done.catch(() => undefined);
  let result: T;
  try {
    result = await what(transaction);
  } catch (error) {
    try {
      transaction.abort();
    } catch {
      // It ended by itself.
    }
    // A request that fails for want of room may only say "aborted"; the transaction knows why.
    throw transaction.error ?? error;
  }
  await done;
  return result;
}

function openTables(name: string, forget: () => void): Promise<IDBPDatabase<Tables>> {
  return openDB<Tables>(name, VERSION, {
    upgrade: (database) => {
      database.createObjectStore('jobs', { keyPath: 'id' });
      database.createObjectStore('files', { keyPath: ['job', 'path'] });
      database.createObjectStore('contents', { keyPath: ['job', 'path'] });
      database.createObjectStore('before', { keyPath: ['job', 'path'] });
      database.createObjectStore('changes', { keyPath: ['job', 'writer', 'order'] });
      database.createObjectStore('counters');
    },
    // A newer version of the app in another tab wants to go on: let it.
    blocking: (_current, _blocked, event) => {
      (event.target as IDBDatabase).close();
      forget();
    },
    terminated: forget,
  });
}

/** The next number of a counter, drawn within the transaction that uses it. */
export async function nextNumber(transaction: Write, counter: Tables['counters']['key']): Promise<number> {
  const counters = transaction.objectStore('counters');
  const number = ((await counters.get(counter)) ?? 0) + 1;
  await counters.put(number, counter);
  return number;
}

/** All records of a job in a table whose key begins with the job's number. */
export function ofJob(job: number): IDBKeyRange {
  return IDBKeyRange.bound([job], [job, []]);
}
