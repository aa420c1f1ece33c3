import { nextNumber, ofJob } from './database.js';
import type { Database, Write } from './database.js';
import type { Conflict, JobStore, SaveOutcome, StoredFile, StoreWrite } from './job-store.js';
import { askToPersist } from './persist.js';
import { StoreError, failedBy, storeErrorOf } from './store-error.js';

/** Other tabs hear of changes here. */
const CHANNEL = 'hidebound-store';

/** One job in the browser's own storage. */
export function browserStore(database: Database, job: number): JobStore {
  const messenger = messengerOf(job);
  return {
    kind: 'browser',
    list: () => reading(() => listJob(database, job)),
    read: (path) =>
      reading(() =>
        database.read(['files', 'contents'], async (transaction) => {
          const [file, content] = await Promise.all([
            transaction.objectStore('files').get([job, path]),
            transaction.objectStore('contents').get([job, path]),
          ]);
          return file && content && { bytes: content.bytes, revision: file.revision };
        }),
      ),
    save: async (writes) => {
      const outcome = await saveWrites(database, job, writes);
      if (outcome.kind === 'saved') {
        messenger.tell();
        askToPersist();
      }
      return outcome;
    },
    watch: (listener) => messenger.watch(listener),
  };
}

async function reading<T>(what: () => Promise<T>): Promise<T> {
  try {
    return await what();
  } catch (error) {
    throw storeErrorOf(error);
  }
}

function listJob(
  database: Database,
  job: number,
): Promise<{ readonly name: string; readonly files: readonly StoredFile[] }> {
  return database.read(['jobs', 'files'], async (transaction) => {
    const record = await transaction.objectStore('jobs').get(job);
    if (record === undefined) throw new StoreError('not allowed', 'This job is no longer in this browser.');
    const files = await transaction.objectStore('files').getAll(ofJob(job));
    return {
      name: record.name,
      files: files.map(({ path, size, revision }) => ({ path, size, revision })),
    };
  });
}

/** Thrown within a transaction so that all of it is taken back. */
class ConflictFound extends Error {
  constructor(readonly conflicts: readonly Conflict[]) {
    super('conflict');
  }
}

async function saveWrites(
  database: Database,
  job: number,
  writes: readonly StoreWrite[],
): Promise<SaveOutcome> {
  try {
    const files = await database.write(
      ['jobs', 'files', 'contents', 'before', 'counters'],
      async (transaction) => {
        const conflicts = await conflictsOf(transaction, job, writes);
        if (conflicts.length > 0) throw new ConflictFound(conflicts);
        return writeFiles(transaction, job, writes);
      },
    );
    return { kind: 'saved', files };
  } catch (error) {
    return error instanceof ConflictFound
      ? { kind: 'conflict', conflicts: error.conflicts }
      : failedBy(error);
  }
}

async function conflictsOf(
  transaction: Write,
  job: number,
  writes: readonly StoreWrite[],
): Promise<readonly Conflict[]> {
  const files = transaction.objectStore('files');
  const now = await Promise.all(writes.map(({ path }) => files.get([job, path])));
  return writes.flatMap(({ path, base }, i) => {
    const revision = now[i]?.revision ?? null;
    return revision === base ? [] : [{ path, revision }];
  });
}

/** Writes without asking what is there. Within a transaction over all tables of jobs. */
export async function writeFiles(
  transaction: Write,
  job: number,
  writes: readonly StoreWrite[],
): Promise<readonly StoredFile[]> {
  const jobs = transaction.objectStore('jobs');
  const record = await jobs.get(job);
  if (record === undefined) throw new StoreError('not allowed', 'This job is no longer in this browser.');
  const written: StoredFile[] = [];
  for (const { path, bytes } of writes) {
    await keepBefore(transaction, job, path);
    if (bytes === undefined) {
      await transaction.objectStore('files').delete([job, path]);
      await transaction.objectStore('contents').delete([job, path]);
      continue;
    }
    // A number that never comes again: also for a content that was there before, which is safe.
    const revision = String(await nextNumber(transaction, 'revision'));
    const file = { path, size: bytes.length, revision };
    await transaction.objectStore('files').put({ job, ...file });
    await transaction.objectStore('contents').put({ job, path, bytes });
    written.push(file);
  }
  await jobs.put({ ...record, changed: Date.now() });
  return written;
}

async function keepBefore(transaction: Write, job: number, path: string): Promise<void> {
  const content = await transaction.objectStore('contents').get([job, path]);
  if (content !== undefined) await transaction.objectStore('before').put(content);
}

interface Messenger {
  tell(): void;
  watch(listener: () => void): () => void;
}

/** Between tabs on one job. One channel does both, for it doesn't hear itself. */
function messengerOf(job: number): Messenger {
  const listeners = new Set<() => void>();
  let channel: BroadcastChannel | undefined;
  const open = (): BroadcastChannel | undefined => {
    if (channel !== undefined || typeof BroadcastChannel === 'undefined') return channel;
    channel = new BroadcastChannel(CHANNEL);
    channel.onmessage = ({ data }: MessageEvent<{ readonly job?: unknown }>) => {
      if (data.job === job) for (const listener of [...listeners]) listener();
    };
    return channel;
  };
  return {
    tell: () => open()?.postMessage({ job }),
    watch: (listener) => {
      listeners.add(listener);
      open();
      return () => {
        listeners.delete(listener);
        if (listeners.size > 0) return;
        channel?.close();
        channel = undefined;
      };
    },
  };
}
