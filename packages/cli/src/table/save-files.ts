import { dirname, join } from 'node:path';
import { STOCK_JOURNAL_FILE } from '@hidebound/leather';
import { existsSync } from 'node:fs';
import { withFolderLock } from '../io/folder-lock.js';
import type { LockName } from '../io/folder-lock.js';
import { NOBODY_WATCHES, removeStaged, stageFiles } from '../io/write-safely.js';
import type { DiskWatch, StagedFile } from '../io/write-safely.js';
import { completeStock } from '../stock/change-stock.js';
import { withStockLock } from '../stock/stock-lock.js';
import { clearParts } from './clear-parts.js';
import { findFile, readFound, tooLarge } from './find-file.js';
import type { FoundFile } from './find-file.js';
import { moveOne, removeIntent, settleIntent, writeIntent } from './intent.js';
import type { FileChange } from './intent.js';
import { keepBefore, keepOfToday } from './keep-versions.js';
import { TABLE_LIMITS } from './limits.js';
import { makeFolders, ownFolder } from './own-place.js';
import { TableRefusal } from './refusal.js';
import { revisionOf } from './revision.js';

/** One file of a save. Without `bytes` it is taken away. */
export interface SaveWrite {
  readonly path: string;
  /** The revision that was changed; null: there must be no such file. */
  readonly base: string | null;
  readonly bytes?: Uint8Array;
}

export interface SavedFile {
  readonly path: string;
  /** In bytes. */
  readonly size: number;
  readonly revision: string;
}

export interface SaveOptions {
  /** By the clock of the place. */
  readonly now: Date;
  /** Files that were kept already since the table was opened; added to. */
  readonly keptOfToday: Set<string>;
  readonly watch?: DiskWatch;
  readonly waitMs?: number;
}

export const TABLE_LOCK: LockName = { lock: 'table.lock', what: 'these files' };

/**
 * Saves several files, all of them or none, also where the process is ended half-way:
 *
 * 1. Under a lock, a save that was interrupted is settled; then each file must be as its `base` says.
 * 2. What the files hold is kept, and the new contents are laid beside them and synced to the disk.
 * 3. A record of what is to be done is written. This is the moment from which the save counts.
 * 4. Each content is renamed into its place, and the record is removed.
 *
 * Where a stock keeps its journal in a folder, no command changes that stock at the same time.
 * `folder` must be free of links. Fails with a TableRefusal 409, 413 or 422, or a CliError `can-not-write`.
 */
export async function saveFiles(
  folder: string,
  writes: readonly SaveWrite[],
  options: SaveOptions,
): Promise<readonly SavedFile[]> {
  const { watch = NOBODY_WATCHES } = options;
  refuseWrites(writes);
  const files = writes.map(({ path }) => findFile(folder, path));
  refuseSameFile(files);
  const lock = {
    watch,
    ...(options.waitMs === undefined ? {} : { waitMs: options.waitMs }),
  };
  const stocks = [...new Set(files.map(({ real }) => dirname(real)))].filter(hasStock).sort();
  const own = ownFolder(folder, [], watch);
  let action = (): Promise<readonly SavedFile[]> =>
    withFolderLock(own, TABLE_LOCK, () => saveLocked(folder, writes, { ...options, watch }), lock);
  for (const stock of stocks) {
    const inner = action;
    await completeQuietly(stock);
    action = () => withStockLock(stock, inner, lock);
  }
  return action();
}

/**
 * Settles a save that was interrupted, and clears away what it left. True if there was one.
 * Fails with a CliError `can-not-write`.
 */
export function settleFolder(folder: string, watch: DiskWatch = NOBODY_WATCHES): Promise<boolean> {
  const own = ownFolder(folder, [], watch);
  const settle = (): boolean => {
    const isSettled = settleIntent(folder, watch);
    clearParts(folder);
    return isSettled;
  };
  return withFolderLock(own, TABLE_LOCK, settle, { watch });
}

function hasStock(folder: string): boolean {
  return existsSync(join(folder, STOCK_JOURNAL_FILE));
}

/** A stock that can't be completed is told by the commands that work on it; a hide's file can be saved all the same. */
async function completeQuietly(stock: string): Promise<void> {
  try {
    await completeStock(stock);
  } catch {
    // The journal says what is open, and stays.
  }
}

function refuseWrites(writes: readonly SaveWrite[]): void {
  const { writes: most, fileBytes } = TABLE_LIMITS;
  if (writes.length > most) {
    throw new TableRefusal(413, 'too-many', `At most ${most} files are saved at once; save them in parts.`);
  }
  const large = writes.find(({ bytes }) => bytes !== undefined && bytes.length > fileBytes);
  if (large !== undefined) throw tooLarge(large.path);
}

/** Two names of one file: one would overwrite what the other has just written. */
function refuseSameFile(files: readonly FoundFile[]): void {
  const seen = new Set<string>();
  for (const { path, real } of files) {
    if (seen.has(real)) {
      throw new TableRefusal(422, 'same-file-twice', `${path} is named twice; save each file once.`);
    }
    seen.add(real);
  }
}

type LockedOptions = SaveOptions & { readonly watch: DiskWatch };

function saveLocked(
  folder: string,
  writes: readonly SaveWrite[],
  options: LockedOptions,
): readonly SavedFile[] {
  const { watch } = options;
  settleIntent(folder, watch);
  // Anew: what was found before the lock was held may have been changed by whoever held it.
  const planned = writes.map((write): PlannedWrite => planWrite(folder, write));
  refuseChanged(planned);
  const open = planned.filter(({ change }) => change.before !== change.after);
  if (open.length > 0) {
    for (const each of open) keepVersions(folder, each, options);
    for (const { file, write } of open) if (write.bytes !== undefined) makeFolders(dirname(file.real), watch);
    const staged = stageAll(open, watch);
    try {
      // Once more, as close to the change as can be: programs that know nothing of the lock may have written meanwhile.
      refuseChanged(open.map(({ write }) => planWrite(folder, write)));
      commit(folder, open, staged, watch);
    } finally {
      removeStaged(staged.filter(({ part }) => part !== ''));
    }
  }
  return planned.flatMap(({ write: { path, bytes }, change }) =>
    bytes === undefined || change.after === null
      ? []
      : [{ path, size: bytes.length, revision: change.after }],
  );
}

interface PlannedWrite {
  readonly write: SaveWrite;
  readonly file: FoundFile;
  readonly old: Uint8Array | undefined;
  readonly change: FileChange;
}

function planWrite(folder: string, write: SaveWrite): PlannedWrite {
  const { path, bytes } = write;
  const file = findFile(folder, path);
  const old = file.stat === undefined ? undefined : readFound(file);
  const before = old === undefined ? null : revisionOf(old);
  return {
    write,
    file,
    old,
    change: { path, before, after: bytes === undefined ? null : revisionOf(bytes) },
  };
}

function refuseChanged(planned: readonly PlannedWrite[]): void {
  const conflicts = planned
    .filter(({ write, change }) => change.before !== write.base)
    .map(({ change }) => ({ path: change.path, revision: change.before }));
  if (conflicts.length === 0) return;
  throw new TableRefusal(
    409,
    'changed-meanwhile',
    `${conflicts[0]!.path} was changed meanwhile; nothing was written. Load it again.`,
    { conflicts },
  );
}

function keepVersions(folder: string, { write: { path }, old }: PlannedWrite, options: LockedOptions): void {
  const { watch, keptOfToday, now } = options;
  if (old === undefined) return;
  keepBefore(folder, path, old, watch);
  if (keptOfToday.has(path)) return;
  keepOfToday(folder, path, { bytes: old, now }, watch);
  keptOfToday.add(path);
}

/** One for each write; without a content beside it for a file that is taken away. */
function stageAll(open: readonly PlannedWrite[], watch: DiskWatch): readonly StagedFile[] {
  const staged = stageFiles(
    open.flatMap(({ write: { bytes }, file, change }) =>
      bytes === undefined ? [] : [{ path: file.real, content: bytes, isNew: change.before === null }],
    ),
    watch,
  );
  const byTarget = new Map(staged.map((each) => [each.target, each]));
  return open.map(
    ({ file }) => byTarget.get(file.real) ?? { asked: file.real, part: '', target: file.real, isNew: false },
  );
}

/** Where one rename fails, all that was done is taken back. */
function commit(
  folder: string,
  open: readonly PlannedWrite[],
  staged: readonly StagedFile[],
  watch: DiskWatch,
): void {
  writeIntent(
    folder,
    open.map(({ change }) => change),
    watch,
  );
  try {
    open.forEach(({ change }, i) => moveOne(staged[i]!, change, watch));
  } catch (error) {
    settleIntent(folder, watch, 'take back');
    throw error;
  }
  try {
    removeIntent(folder, watch);
  } catch {
    // All is done. Whoever finds the record next finds nothing to do, and removes it.
  }
}
