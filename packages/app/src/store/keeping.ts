import type { Edits } from '../job/job.js';
import type { Desk } from '../work/desk.js';
import { asidePath } from './aside-path.js';
import type { JobStore } from './job-store.js';
import type { JournalLine } from './journal-line.js';
import type { Change } from './journal.js';
import type { HeldUp } from './keep-state.js';
import { firstWaiting, ordersOf } from './waiting.js';
import type { Moved, Waiting } from './waiting.js';

/** What the keeper tells the app. */
export interface KeeperListener {
  /** Files are otherwise than the app has them: changed elsewhere, or put aside. No step to undo. */
  readonly onOthers: (edits: Edits) => void;
  /** Somebody else changed the file too: their version stands at its path, this tab's own beside it. */
  readonly onAside: (path: string, aside: string) => void;
}

/** What the keeper's parts share. Only here is anything changed in place. */
export interface Keeping extends KeeperListener {
  readonly store: JobStore;
  readonly line: JournalLine;
  readonly desk: Pick<Desk, 'ask'>;
  /** Each file's revision that the app's content came from or became. */
  readonly known: Map<string, string>;
  readonly files: Map<string, Waiting>;
  /** Why a file's newest change could not be saved. It is left alone until it is tried again. */
  readonly heldUp: Map<string, HeldUp>;
  readonly nextOrder: () => number;
}

export function move(keeping: Keeping, path: string, { waiting, notes }: Moved): void {
  if (waiting === undefined) keeping.files.delete(path);
  else keeping.files.set(path, waiting);
  if (waiting === undefined) keeping.heldUp.delete(path);
  if (notes.puts.length + notes.drops.length > 0) keeping.line.note(notes);
}

export function setKnown({ known }: Keeping, path: string, revision: string | null): void {
  if (revision === null) known.delete(path);
  else known.set(path, revision);
}

/** A change's content as a store keeps it; undefined for a file that is taken away. */
export async function bytesOf({ desk }: Keeping, { path, file }: Change): Promise<Uint8Array | undefined> {
  // Photos need not go to the desk and back.
  return file === undefined
    ? undefined
    : 'bytes' in file
      ? file.bytes
      : desk.ask('writeFile', { path, file });
}

/** Gives a waiting change a path of its own beside the file that somebody else changed. It is in `files` after that. */
export function putAside(keeping: Keeping, waiting: Waiting): string {
  const { path, last } = waiting;
  const aside = asidePath(path, (each) => keeping.known.has(each) || keeping.files.has(each));
  const change = { ...last, order: keeping.nextOrder(), path: aside, base: null };
  keeping.files.set(aside, firstWaiting(change));
  keeping.line.note({ puts: [change], drops: ordersOf(waiting) });
  return aside;
}
