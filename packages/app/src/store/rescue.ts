import { inBundle } from '../job/in-bundle.js';
import { listJobs } from './browser-jobs.js';
import { ofJob } from './database.js';
import type { Database, JobRecord } from './database.js';

/** The jobs that lie in this browser, the last changed first; none where it can't be looked into. */
export async function jobsToRescue(database: Database): Promise<readonly JobRecord[]> {
  return listJobs(database).catch(() => []);
}

/** A job as one file, straight out of the browser's storage, when the app itself could not be opened. */
export async function rescuedJob(database: Database, { id, name }: JobRecord): Promise<Uint8Array> {
  const contents = await database.read(['contents'], (transaction) =>
    transaction.objectStore('contents').getAll(ofJob(id)),
  );
  const files = contents.map(({ path, bytes }) => inBundle(path, bytes));
  return new TextEncoder().encode(`${JSON.stringify({ format: 'hidebound/job@1', name, files })}\n`);
}
