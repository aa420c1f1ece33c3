import type { RawFile } from '../work/desk-tasks.js';
import { writeFiles } from './browser-store.js';
import { nextNumber, ofJob } from './database.js';
import type { Database, JobRecord, Write } from './database.js';

/** All jobs in the browser's own storage, the last changed first. */
export async function listJobs(database: Database): Promise<readonly JobRecord[]> {
  return (await allJobs(database)).filter(({ binned }) => binned === undefined);
}

/** What was taken away and can still be fetched back, the last first. */
export async function listBin(database: Database): Promise<readonly JobRecord[]> {
  return (await allJobs(database)).filter(({ binned }) => binned !== undefined);
}

async function allJobs(database: Database): Promise<readonly JobRecord[]> {
  const jobs = await database.read(['jobs'], (transaction) => transaction.objectStore('jobs').getAll());
  return jobs.sort((one, other) => other.changed - one.changed || other.id - one.id);
}

const JOB_TABLES = ['jobs', 'files', 'contents', 'before', 'counters'] as const;

/**
 * A new job of files, under a name that no other has ("Satchel", "Satchel 2").
 * @throws where there is no room; then nothing is there.
 */
export function createJob(database: Database, name: string, files: readonly RawFile[]): Promise<JobRecord> {
  return database.write(JOB_TABLES, (transaction) => addJob(transaction, name, files));
}

/** The same, but only where there is no job yet, so that two tabs of a first start make one; else undefined. */
export function createFirstJob(
  database: Database,
  name: string,
  files: readonly RawFile[],
): Promise<JobRecord | undefined> {
  return database.write(JOB_TABLES, async (transaction) => {
    const count = await transaction.objectStore('jobs').count();
    return count === 0 ? addJob(transaction, name, files) : undefined;
  });
}

async function addJob(transaction: Write, name: string, files: readonly RawFile[]): Promise<JobRecord> {
  const jobs = transaction.objectStore('jobs');
  const names = (await jobs.getAll()).map((job) => job.name);
  const id = await nextNumber(transaction, 'job');
  const record = { id, name: freeName(name, names), changed: Date.now() };
  await jobs.put(record);
  await writeFiles(
    transaction,
    id,
    files.map(({ path, bytes }) => ({ path, base: null, bytes })),
  );
  return record;
}

function freeName(name: string, taken: readonly string[]): string {
  for (let number = 1; ; number++) {
    const free = number === 1 ? name : `${name} ${number}`;
    if (!taken.includes(free)) return free;
  }
}

/** Gives the name that it has now: another job may have the wished one. */
export async function renameJob(database: Database, id: number, name: string): Promise<string> {
  return database.write(['jobs'], async (transaction) => {
    const jobs = transaction.objectStore('jobs');
    const all = await jobs.getAll();
    const job = all.find((each) => each.id === id);
    const free = freeName(
      name,
      all.filter((each) => each.id !== id).map((each) => each.name),
    );
    if (job !== undefined) await jobs.put({ ...job, name: free });
    return free;
  });
}

/** Into the bin, where all of it stays until it is thrown away. */
export function binJob(database: Database, id: number): Promise<void> {
  return database.write(['jobs'], async (transaction) => {
    const jobs = transaction.objectStore('jobs');
    const job = await jobs.get(id);
    if (job !== undefined) await jobs.put({ ...job, binned: Date.now() });
  });
}

export function fetchBack(database: Database, id: number): Promise<void> {
  return database.write(['jobs'], async (transaction) => {
    const jobs = transaction.objectStore('jobs');
    const job = await jobs.get(id);
    if (job === undefined) return;
    const { binned: _, ...fetched } = job;
    await jobs.put(fetched);
  });
}

/** For good, and only out of the bin: gives its room back. */
export function throwAway(database: Database, id: number): Promise<void> {
  return database.write(JOB_TABLES, async (transaction) => {
    const job = await transaction.objectStore('jobs').get(id);
    if (job?.binned === undefined) return;
    await transaction.objectStore('jobs').delete(id);
    for (const table of ['files', 'contents', 'before'] as const)
      await transaction.objectStore(table).delete(ofJob(id));
  });
}
