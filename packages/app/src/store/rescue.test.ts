import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readBundle } from '../work/desk/bundle.js';
import type { Database, JobRecord, Read } from './database.js';
import { jobsToRescue, rescuedJob } from './rescue.js';

const DEMO = join(import.meta.dirname, '../../../../fixtures/demo');
const JOB: JobRecord = { id: 3, name: 'Bicycle goods', changed: 0 };

/** Just what a rescue reads. */
function databaseWith(contents: readonly { readonly path: string; readonly bytes: Uint8Array }[]): Database {
  const tables = { jobs: [JOB], contents: contents.map((content) => ({ job: 3, ...content })) };
  const transaction = {
    objectStore: (name: keyof typeof tables) => ({ getAll: () => Promise.resolve(tables[name]) }),
  };
  return {
    read: (_, what) => what(transaction as unknown as Read),
    write: () => Promise.reject(new Error('nothing is written')),
    close: () => undefined,
  };
}

// `IDBKeyRange` belongs to browsers; what it selects is the database's own matter.
globalThis.IDBKeyRange ??= { bound: () => undefined } as unknown as typeof IDBKeyRange;

describe('a job that is taken out of a browser in which the app breaks', () => {
  it('when it is opened as a job file, every byte of every file is back', async () => {
    const paths = ['side.hide.json', 'bicycle-goods.order.yaml', 'workshop.yaml', 'pump-strap.article.yaml'];
    const files = [
      ...paths.map((path) => ({ path, bytes: new Uint8Array(readFileSync(join(DEMO, path))) })),
      { path: 'photo.jpg', bytes: Uint8Array.from([0xff, 0xd8, 0xff, 0, 7]) },
      { path: 'notes.txt', bytes: new TextEncoder().encode('thread: 0.8 mm') },
    ];
    const database = databaseWith(files);
    const [job] = await jobsToRescue(database);
    const bytes = await rescuedJob(database, job!);
    const back = readBundle({ path: 'x.job.json', bytes });
    expect(back.name).toBe('Bicycle goods');
    expect(back.files.map(({ path, bytes: own }) => [path, ...own])).toEqual(
      files.map(({ path, bytes: own }) => [path, ...own]),
    );
  });
});
