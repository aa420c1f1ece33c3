import type { JobFile } from '../job/job.js';
import type { Change } from './journal.js';
import { judge } from './judge.js';
import { move, putAside, setKnown } from './keeping.js';
import type { Keeping } from './keeping.js';
import { asRebased, ordersOf, waitingOf } from './waiting.js';
import type { Moved, Waiting } from './waiting.js';

/**
 * Takes in what a tab left that was closed or killed before the store had it: each file's newest change waits here
 * from now on and stands in the app; where it can't follow what is there now, it goes aside.
 */
export async function adoptLeft(keeping: Keeping, changes: readonly Change[]): Promise<void> {
  keeping.line.found(changes);
  for (const waiting of waitingOf(changes)) await adoptOne(keeping, waiting);
}

async function adoptOne(keeping: Keeping, waiting: Waiting): Promise<void> {
  const { path, base } = waiting;
  const untouched: Moved = { waiting, notes: { puts: [waiting.last], drops: [] } };
  if ((keeping.known.get(path) ?? null) === base) {
    takeIn(keeping, waiting, untouched);
    return;
  }
  let verdict;
  let revision: string | null;
  try {
    const stored = await keeping.store.read(path);
    revision = stored?.revision ?? null;
    verdict = await judge(keeping, waiting, stored);
  } catch {
    // Out of reach, or refused: the change waits, and saving it will tell.
    takeIn(keeping, waiting, untouched);
    return;
  }
  if (verdict === 'settled') keeping.line.note({ puts: [], drops: ordersOf(waiting) });
  else if (verdict === 'theirs') setAside(keeping, waiting);
  else takeIn(keeping, waiting, asRebased(waiting, revision));
}

/** Where this tab has a change of the file waiting itself, the other one's goes aside. */
function takeIn(keeping: Keeping, waiting: Waiting, moved: Moved): void {
  const { path, last } = waiting;
  if (keeping.files.has(path)) {
    setAside(keeping, waiting);
    return;
  }
  setKnown(keeping, path, moved.waiting?.base ?? null);
  move(keeping, path, moved);
  keeping.onOthers(new Map([[path, last.file]]));
}

function setAside(keeping: Keeping, waiting: Waiting): void {
  const { path, last } = waiting;
  if (last.file === undefined) {
    keeping.line.note({ puts: [], drops: ordersOf(waiting) });
    return;
  }
  const aside = putAside(keeping, waiting);
  keeping.onOthers(new Map<string, JobFile>([[aside, last.file]]));
  keeping.onAside(path, aside);
}
