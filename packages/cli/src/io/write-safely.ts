import {
  accessSync,
  chmodSync,
  closeSync,
  constants,
  existsSync,
  fsyncSync,
  linkSync,
  openSync,
  realpathSync,
  renameSync,
  statSync,
  unlinkSync,
  writeSync,
} from 'node:fs';
import type { Stats } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { CliError } from '../cli-error.js';
import { partName, removeStaleParts } from './stale-parts.js';
import { systemCode, writeFailureWords } from './system-words.js';

/** A file that is to be written. */
export interface FileToWrite {
  readonly path: string;
  readonly content: string | Uint8Array;
  /** There must be no such file yet; one that is there is never written over. */
  readonly isNew?: boolean;
}

/** Called before each thing that is done to the disk: so that a test can end the process at any of them. */
export type DiskWatch = (action: string, path: string) => void;

export const NOBODY_WATCHES: DiskWatch = () => undefined;

/** A file whose new content lies beside it, whole and on the disk. */
export interface StagedFile {
  readonly asked: string;
  readonly part: string;
  readonly target: string;
  readonly isNew: boolean;
}

/**
 * Writes files so that each is, at any moment, its old self or its new self: the new content goes into a file beside
 * it (`NAME.PID.part`), is synced to the disk and then renamed over it. All are written beside before the first is
 * renamed, so that a full disk leaves every one as it was. What a killed run left beside a file is cleared away then. A device or pipe is written to directly.
 * Fails with a CliError `can-not-write`.
 */
export function writeFilesSafely(files: readonly FileToWrite[], watch: DiskWatch = NOBODY_WATCHES): void {
  const staged: StagedFile[] = [];
  try {
    for (const file of files) {
      const target = resolveTarget(file.path);
      if (target.stat !== undefined && !target.stat.isFile()) writeThrough(file);
      else staged.push(stage(file, target.path, target.stat, watch));
    }
    while (staged.length > 0) {
      moveStaged(staged[0]!, watch);
      staged.shift();
    }
  } finally {
    removeStaged(staged);
  }
}

/**
 * The first half of `writeFilesSafely`, for one who has something to do between the halves: all new contents beside
 * their files. Nothing is left where one fails, with a CliError `can-not-write`.
 */
export function stageFiles(
  files: readonly FileToWrite[],
  watch: DiskWatch = NOBODY_WATCHES,
): readonly StagedFile[] {
  const staged: StagedFile[] = [];
  try {
    for (const file of files) {
      const target = resolveTarget(file.path);
      staged.push(stage(file, target.path, target.stat, watch));
    }
    return staged;
  } catch (error) {
    removeStaged(staged);
    throw error;
  }
}

/** The second half, for one file. Fails with a CliError `can-not-write`; the staged content stays then. */
export function moveStaged(
  { asked, part, target, isNew }: StagedFile,
  watch: DiskWatch = NOBODY_WATCHES,
): void {
  attempt(asked, () => (isNew ? moveToNew(part, target, watch) : moveOver(part, target, watch)));
  watch('sync folder', dirname(target));
  syncFolder(dirname(target));
  removeStaleParts(target);
}

export function removeStaged(staged: readonly StagedFile[]): void {
  for (const { part } of staged) removeQuietly(part);
}

/** Takes a file away, for good. Fails with a CliError `can-not-write`. */
export function removeFile(path: string, watch: DiskWatch = NOBODY_WATCHES): void {
  attempt(path, () => {
    watch('remove', path);
    unlinkSync(path);
  });
  watch('sync folder', dirname(path));
  syncFolder(dirname(path));
}

/**
 * Says before any long work that a file could not be written: its folder is missing or read-only, or it is one of the
 * files that are being read. Fails with a CliError `can-not-write`, or `bad-use` for a file that is read.
 */
export function ensureWritable(path: string, readFiles: readonly string[]): void {
  refuseOverwriting([path], readFiles);
  const target = resolveTarget(path);
  if (target.stat?.isFile() === false) return;
  attempt(path, () => accessSync(dirname(resolve(target.path)), constants.W_OK));
}

/** What is read is never written over by what is made of it. Fails with a CliError `bad-use`. */
export function refuseOverwriting(paths: readonly string[], readFiles: readonly string[]): void {
  const read = new Set(readFiles.map(realPath));
  for (const path of paths) {
    if (!read.has(realPath(path))) continue;
    throw new CliError('bad-use', `${path} is being read and would be written over; give another name.`);
  }
}

function realPath(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return resolve(path);
  }
}

/** Follows links, so that a link stays one and the file behind it is replaced. */
function resolveTarget(path: string): { readonly path: string; readonly stat?: Stats } {
  let real: string;
  try {
    real = realpathSync(path);
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return { path };
    throw couldNotWrite(path, error);
  }
  const stat = attempt(path, () => statSync(real));
  if (stat.isDirectory())
    throw new CliError('can-not-write', 'This is a folder; give a file name.', { file: path });
  return { path: real, stat };
}

/** Permission bits of a file's mode. */
const MODE_BITS = 0o7777;

function stage(file: FileToWrite, target: string, old: Stats | undefined, watch: DiskWatch): StagedFile {
  const part = partName(target);
  try {
    watch('make', part);
    const handle = openSync(part, 'w');
    try {
      watch('write', part);
      writeWhole(handle, file.content);
      watch('sync', part);
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    if (old !== undefined) chmodSync(part, old.mode & MODE_BITS);
    return { asked: file.path, part, target, isNew: file.isNew === true };
  } catch (error) {
    removeQuietly(part);
    throw couldNotWrite(file.path, error);
  }
}

function moveOver(part: string, target: string, watch: DiskWatch): void {
  watch('rename', target);
  renameSync(part, target);
}

/** Codes of file systems that know no second name of a file. */
const NO_LINKS = new Set(['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK']);

/** A second name is only given where there is none yet, in one step; where files have one name only, it is looked first. */
function moveToNew(part: string, target: string, watch: DiskWatch): void {
  watch('link', target);
  try {
    linkSync(part, target);
  } catch (error) {
    if (!NO_LINKS.has(systemCode(error) ?? '') || existsSync(target)) throw error;
    moveOver(part, target, watch);
    return;
  }
  watch('remove', part);
  unlinkSync(part);
}

function writeThrough(file: FileToWrite): void {
  attempt(file.path, () => {
    const handle = openSync(file.path, 'w');
    try {
      writeWhole(handle, file.content);
    } finally {
      closeSync(handle);
    }
  });
}

function writeWhole(handle: number, content: string | Uint8Array): void {
  const bytes = typeof content === 'string' ? Buffer.from(content, 'utf8') : content;
  let written = 0;
  while (written < bytes.length) written += writeSync(handle, bytes, written);
}

function attempt<Result>(path: string, action: () => Result): Result {
  try {
    return action();
  } catch (error) {
    throw couldNotWrite(path, error);
  }
}

function couldNotWrite(path: string, error: unknown): CliError {
  return new CliError(
    'can-not-write',
    `It could not be written: ${writeFailureWords(error)}.${existsSync(path) ? ' What was there is untouched.' : ''}`,
    { file: path },
    { cause: error },
  );
}

/** Makes the rename itself last; some systems can't sync a folder, and lose nothing but that promise. */
export function syncFolder(folder: string): void {
  try {
    const handle = openSync(folder, 'r');
    try {
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
  } catch {
    // A folder that can't be opened or synced here: the content itself is already on the disk.
  }
}

export function removeQuietly(path: string): void {
  try {
    unlinkSync(path);
  } catch {
    // It was never made, or is gone already.
  }
}
