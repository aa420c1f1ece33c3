import type { JobFile } from '../job/job.js';
import type { FileRead } from './job-store.js';
import { judge } from './judge.js';
import { move, putAside, setKnown } from './keeping.js';
import type { Keeping } from './keeping.js';
import { asRebased, asSaved, ordersOf } from './waiting.js';
import type { Waiting } from './waiting.js';

/**
 * A file in the store is not as a waiting change took it to be: the change is found to be there already, or is made
 * to follow what is there, or goes aside.
 * @throws StoreError or WorkError where that can't be found out now; then nothing is changed.
 */
export async function settleConflict(keeping: Keeping, path: string): Promise<void> {
  const waiting = keeping.files.get(path);
  if (waiting === undefined) return;
  const stored = await keeping.store.read(path);
  const verdict = await judge(keeping, waiting, stored);
  const theirs = verdict === 'theirs' && stored ? await readTheirs(keeping, path, stored) : undefined;
  // No waiting from here on: what the app changes meanwhile is in `now`.
  const now = keeping.files.get(path)!;
  const revision = stored?.revision ?? null;
  if (verdict === 'settled') move(keeping, path, asSaved(now, waiting.last, revision));
  else if (verdict === 'own') move(keeping, path, asRebased(now, revision));
  else giveWay(keeping, now, theirs);
  setKnown(keeping, path, revision);
}

async function readTheirs(
  { desk }: Keeping,
  path: string,
  { bytes }: FileRead,
): Promise<JobFile | undefined> {
  const [read] = await desk.ask('readFiles', [{ path, bytes }]);
  return read?.[1];
}

/** Their version keeps the path; the own one goes beside it. A file that was taken away here comes back. */
function giveWay(keeping: Keeping, now: Waiting, theirs: JobFile | undefined): void {
  const { path, last } = now;
  keeping.files.delete(path);
  keeping.heldUp.delete(path);
  if (last.file === undefined) {
    keeping.line.note({ puts: [], drops: ordersOf(now) });
    keeping.onOthers(new Map([[path, theirs]]));
    return;
  }
  const aside = putAside(keeping, now);
  keeping.onOthers(
    new Map([
      [path, theirs],
      [aside, last.file],
    ]),
  );
  keeping.onAside(path, aside);
}
