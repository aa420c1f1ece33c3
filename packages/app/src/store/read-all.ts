import type { JobFile } from '../job/job.js';
import { kindOfPath } from '../job/kind-of-path.js';
import type { Desk } from '../work/desk.js';
import type { RawFile } from '../work/desk-tasks.js';
import { toldError } from '../words/told.js';
import type { Told } from '../words/told.js';
import type { JobStore, StoredFile } from './job-store.js';
import { storeErrorOf } from './store-error.js';

/** As many requests as browsers send to one server at a time. */
const AT_A_TIME = 6;

/** A file that could not be had, and why. */
export type Left = Told & { readonly path: string };

export interface ReadAll {
  readonly files: ReadonlyMap<string, JobFile>;
  /** Of the files that were read. */
  readonly revisions: ReadonlyMap<string, string>;
  /** Files that are there but could not be had, and why. They are no part of the job; nothing is written over them. */
  readonly left: readonly Left[];
}

/**
 * Reads files of a store, small ones first, as the app holds them. One that is gone meanwhile is left out.
 * @throws StoreError where the store is out of reach
 */
export async function readAll(
  store: Pick<JobStore, 'read'>,
  desk: Pick<Desk, 'ask'>,
  listed: readonly Pick<StoredFile, 'path' | 'size'>[],
): Promise<ReadAll> {
  const queue = listed.filter(({ path }) => kindOfPath(path) !== undefined).sort((a, b) => a.size - b.size);
  const raw: RawFile[] = [];
  const revisions = new Map<string, string>();
  const left: Left[] = [];
  const readOn = async (): Promise<void> => {
    for (let file = queue.shift(); file !== undefined; file = queue.shift()) {
      const { path } = file;
      try {
        const read = await store.read(path);
        if (read === undefined) continue;
        raw.push({ path, bytes: read.bytes });
        revisions.set(path, read.revision);
      } catch (error) {
        const failure = storeErrorOf(error);
        if (failure.reason !== 'too large' && failure.reason !== 'not allowed') throw failure;
        left.push({ path, ...toldError(failure) });
      }
    }
  };
  await Promise.all(Array.from({ length: AT_A_TIME }, readOn));
  const read = await desk.ask('readFiles', raw);
  return { files: new Map(read), revisions, left };
}
