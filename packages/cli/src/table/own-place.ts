import { existsSync, lstatSync, mkdirSync, realpathSync, unlinkSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { CliError } from '../cli-error.js';
import { systemCode, writeFailureWords } from '../io/system-words.js';
import { syncFolder, writeFilesSafely } from '../io/write-safely.js';
import type { DiskWatch } from '../io/write-safely.js';

/** The folder within a job's folder where the table keeps what is its own. */
export const OWN_FOLDER = '.hidebound';

/** Nobody else's to read: it holds the key, and old versions of the files. */
const OWN_MODE = 0o700;

/**
 * Makes a folder of the table's own, if it is not there, and gives its path. A folder of a job may come from anybody:
 * where a link stands in the place of one of these folders, nothing is written through it.
 * Fails with a CliError `can-not-write`.
 */
export function ownFolder(folder: string, parts: readonly string[], watch: DiskWatch): string {
  const path = join(folder, OWN_FOLDER, ...parts);
  try {
    makeFolders(path, watch, OWN_MODE);
    if (realpathSync(path) === join(realpathSync(folder), OWN_FOLDER, ...parts)) return path;
  } catch (error) {
    throw new CliError('can-not-write', `It could not be written: ${writeFailureWords(error)}.`, undefined, {
      cause: error,
    });
  }
  throw new CliError(
    'can-not-write',
    `It could not be written: ${[OWN_FOLDER, ...parts].join('/')} in the folder is a link; delete that link.`,
  );
}

/** Makes a folder and those above it that are missing, each of them lasting. */
export function makeFolders(path: string, watch: DiskWatch, mode?: number): void {
  if (existsSync(path)) return;
  makeFolders(dirname(path), watch, mode);
  watch('make folder', path);
  try {
    mkdirSync(path, mode === undefined ? {} : { mode });
  } catch (error) {
    if (systemCode(error) !== 'EEXIST') throw error;
  }
  syncFolder(dirname(path));
}

/** Writes a file of the table's own; a link in its place is removed, not followed. */
export function writeOwn(path: string, content: string | Uint8Array, watch: DiskWatch): void {
  if (isLink(path)) unlinkSync(path);
  writeFilesSafely([{ path, content }], watch);
}

export function isLink(path: string): boolean {
  try {
    return lstatSync(path).isSymbolicLink();
  } catch {
    return false;
  }
}
