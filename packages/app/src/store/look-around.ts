import type { JobFile } from '../job/job.js';
import { kindOfPath } from '../job/kind-of-path.js';
import type { Keeping } from './keeping.js';
import { setKnown } from './keeping.js';
import { readAll } from './read-all.js';

/**
 * Looks for what others changed in the store and hands it to the app. A file that has a change waiting here is left
 * alone: saving it tells what becomes of it.
 * @throws StoreError where the store is out of reach
 */
export async function lookAround(keeping: Keeping): Promise<void> {
  const { store, desk, known, files } = keeping;
  const listed = (await store.list()).files.filter(({ path }) => kindOfPath(path) !== undefined);
  const there = new Set(listed.map(({ path }) => path));
  const changed = listed.filter(({ path, revision }) => known.get(path) !== revision && !files.has(path));
  const gone = [...known.keys()].filter((path) => !there.has(path) && !files.has(path));
  if (changed.length + gone.length === 0) return;
  const read = await readAll(store, desk, changed);
  // No waiting from here on: what the app changed meanwhile was made from what it had.
  const edits = new Map<string, JobFile | undefined>();
  for (const [path, file] of read.files) if (!files.has(path)) edits.set(path, file);
  for (const path of gone) if (!files.has(path)) edits.set(path, undefined);
  for (const path of edits.keys()) setKnown(keeping, path, read.revisions.get(path) ?? null);
  if (edits.size > 0) keeping.onOthers(edits);
}
