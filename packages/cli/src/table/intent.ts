import { existsSync, readFileSync, unlinkSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { isPlainObject } from './plain-object.js';
import { removeFile, removeQuietly, moveStaged, syncFolder, writeFilesSafely } from '../io/write-safely.js';
import type { DiskWatch, StagedFile } from '../io/write-safely.js';
import { findFile, readFound } from './find-file.js';
import type { FoundFile } from './find-file.js';
import { TableRefusal } from './refusal.js';
import { beforePath } from './keep-versions.js';
import { OWN_FOLDER, isLink, ownFolder, writeOwn } from './own-place.js';
import { revisionOf } from './revision.js';

/** What becomes of one file: revisions, null where there is no file. */
export interface FileChange {
  readonly path: string;
  readonly before: string | null;
  readonly after: string | null;
}

/**
 * What a save is about to do to the files, whose new contents lie beside them: from the moment at which this record
 * is on the disk the whole of it counts, and whoever finds it there completes it or takes it back.
 */
export interface Intent {
  /** Of the process that saves: the contents beside the files are named after it. */
  readonly pid: number;
  readonly changes: readonly FileChange[];
}

const INTENT_FILE = 'saving.json';

function intentPath(folder: string): string {
  return join(folder, OWN_FOLDER, INTENT_FILE);
}

export function writeIntent(folder: string, changes: readonly FileChange[], watch: DiskWatch): Intent {
  const intent: Intent = { pid: process.pid, changes };
  writeOwn(join(ownFolder(folder, [], watch), INTENT_FILE), JSON.stringify(intent), watch);
  return intent;
}

export function removeIntent(folder: string, watch: DiskWatch): void {
  removeFile(intentPath(folder), watch);
}

/**
 * Completes a save that was interrupted, or takes it back if so asked or where a new content is missing. A file that somebody else
 * has changed since stays as it is. Doing it twice is the same as doing it once. True if there was one.
 * Fails with a CliError `can-not-write`, and leaves the record for the next try.
 */
export function settleIntent(
  folder: string,
  watch: DiskWatch,
  how: 'complete' | 'take back' = 'complete',
): boolean {
  const path = intentPath(folder);
  if (!existsSync(path) && !isLink(path)) return false;
  const found = foundChanges(folder, readIntent(path));
  if (found !== undefined) {
    const canComplete = how === 'complete' && found.every(({ state }) => state !== 'lost');
    for (const each of found) {
      if (canComplete) complete(each, watch);
      else takeBack(folder, each, watch);
      removeQuietly(each.part);
    }
  }
  removeIntent(folder, watch);
  return found !== undefined;
}

/** Undefined too where it names files that no save may touch. */
function foundChanges(folder: string, intent: Intent | undefined): readonly FoundChange[] | undefined {
  try {
    return intent?.changes.map((change) => stateOf(folder, change, intent.pid));
  } catch (error) {
    if (error instanceof TableRefusal) return undefined;
    throw error;
  }
}

/** Undefined for what no save of this table wrote: a folder may come from anybody. */
function readIntent(path: string): Intent | undefined {
  if (isLink(path)) return undefined;
  try {
    const value: unknown = JSON.parse(readFileSync(path, 'utf8'));
    if (!isPlainObject(value) || !Number.isSafeInteger(value['pid'])) return undefined;
    const changes: unknown = value['changes'];
    if (!Array.isArray(changes) || !changes.every(isFileChange)) return undefined;
    return { pid: value['pid'] as number, changes };
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}

function isFileChange(value: unknown): value is FileChange {
  if (!isPlainObject(value)) return false;
  const isRevision = (revision: unknown): boolean =>
    revision === null || (typeof revision === 'string' && /^[0-9a-f]{64}$/.test(revision));
  return typeof value['path'] === 'string' && isRevision(value['before']) && isRevision(value['after']);
}

interface FoundChange {
  readonly change: FileChange;
  readonly file: FoundFile;
  readonly part: string;
  /** Done; still to do; to do, but its content is lost; changed by somebody else since. */
  readonly state: 'done' | 'open' | 'lost' | 'foreign';
}

function stateOf(folder: string, change: FileChange, pid: number): FoundChange {
  const file = findFile(folder, change.path);
  const part = `${file.real}.${pid}.part`;
  const found = { change, file, part };
  const now = revisionAt(file);
  if (now === change.after) return { ...found, state: 'done' };
  if (now !== change.before) return { ...found, state: 'foreign' };
  if (change.after === null) return { ...found, state: 'open' };
  const content = isLink(part) ? undefined : readFound({ path: change.path, real: part });
  const isWhole = content !== undefined && revisionOf(content) === change.after;
  return { ...found, state: isWhole ? 'open' : 'lost' };
}

/** The revision of a file on the disk, null where there is none. */
export function revisionAt(file: FoundFile): string | null {
  const bytes = readFound(file);
  return bytes === undefined ? null : revisionOf(bytes);
}

function complete({ change, file, part, state }: FoundChange, watch: DiskWatch): void {
  if (state !== 'open') return;
  moveOne({ asked: change.path, part, target: file.real, isNew: change.before === null }, change, watch);
}

/** Puts one staged content in its place, or takes one file away. */
export function moveOne(staged: StagedFile, { after }: FileChange, watch: DiskWatch): void {
  if (after === null) removeFile(staged.target, watch);
  else moveStaged(staged, watch);
}

function takeBack(folder: string, { change, file, state }: FoundChange, watch: DiskWatch): void {
  if (state !== 'done' || change.before === change.after) return;
  if (change.before === null) {
    watch('remove', file.real);
    unlinkSync(file.real);
    syncFolder(dirname(file.real));
    return;
  }
  const old = readFound({ path: change.path, real: beforePath(folder, change.path) });
  if (old === undefined || revisionOf(old) !== change.before) return;
  writeFilesSafely([{ path: file.real, content: old }], watch);
}
