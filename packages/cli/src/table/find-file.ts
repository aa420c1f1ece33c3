import { closeSync, constants, fstatSync, lstatSync, openSync, readSync, realpathSync } from 'node:fs';
import type { Stats } from 'node:fs';
import { dirname, join, sep } from 'node:path';
import { pathFrom } from '../io/path-from.js';
import { systemCode } from '../io/system-words.js';
import { isAllowedPath, isPortablePath } from './allowed-path.js';
import { TABLE_LIMITS } from './limits.js';
import { TableRefusal } from './refusal.js';

/** Where a path of a job is on the disk, links followed. */
export interface FoundFile {
  readonly path: string;
  readonly real: string;
  /** Absent where there is no such file yet. */
  readonly stat?: Stats;
}

/**
 * The file of a path within a folder, whose own path must be free of links. A link is followed, and what it leads to
 * must itself be a file of the job within the folder.
 * Fails with a TableRefusal 422 for a path that may not be used.
 */
export function findFile(folder: string, path: string): FoundFile {
  if (!isAllowedPath(path)) throw notAllowed(path);
  const asked = join(folder, ...path.split('/'));
  const real = realPathOf(asked);
  if (real === undefined) {
    if (!isPortablePath(path)) throw notAllowed(path);
    return { path, real: newPathOf(folder, asked, path) };
  }
  if (!isWithin(folder, real)) throw leadsOut(path);
  const stat = lstatSync(real);
  if (!stat.isFile()) throw new TableRefusal(422, 'not-a-file', `${path} is no file; choose another name.`);
  return { path, real, stat };
}

/** True if a path without links is that of a file of the job in the folder. */
export function isWithin(folder: string, real: string): boolean {
  return real.startsWith(folderStart(folder)) && isAllowedPath(pathFrom(folder, real));
}

/** "/" and "C:\" end in their separator, other folders don't. */
function folderStart(folder: string): string {
  return folder.endsWith(sep) ? folder : `${folder}${sep}`;
}

/** Undefined where there is nothing of that name; a link that leads nowhere is refused. */
function realPathOf(asked: string): string | undefined {
  try {
    return realpathSync(asked);
  } catch (error) {
    if (systemCode(error) === 'ENOENT' && !isThere(asked)) return undefined;
    throw new TableRefusal(
      422,
      'path-leads-nowhere',
      'A part of this path leads nowhere or is a file; choose another name.',
    );
  }
}

/** Also true of a link that leads nowhere. */
function isThere(path: string): boolean {
  try {
    lstatSync(path);
    return true;
  } catch (error) {
    return systemCode(error) !== 'ENOENT';
  }
}

/** A new file lies in the nearest folder that is there, as its links lead; the folders between are made. */
function newPathOf(folder: string, asked: string, path: string): string {
  const rest: string[] = [];
  for (let at = asked; ; at = dirname(at)) {
    const real = at === asked ? undefined : realPathOf(at);
    if (real !== undefined) {
      if (!lstatSync(real).isDirectory()) throw notAllowed(path);
      const target = join(real, ...rest);
      if (!isWithin(folder, target)) throw leadsOut(path);
      return target;
    }
    rest.unshift(at.slice(dirname(at).length).replace(/^[/\\]/, ''));
  }
}

function notAllowed(path: string): TableRefusal {
  const shown = JSON.stringify(path.slice(0, 80));
  return new TableRefusal(
    422,
    'path-not-allowed',
    `${shown} can't be the name of a file of the job; use plain names within the folder, at most ${TABLE_LIMITS.foldersDeep} folders deep, that end as files of a job do (.hide.json, .order.yaml, .svg …).`,
  );
}

function leadsOut(path: string): TableRefusal {
  return new TableRefusal(
    422,
    'path-leads-out',
    `${path} leads out of the folder or to what is no file of the job; choose another name.`,
  );
}

/**
 * The content of a file that was found, undefined where it is gone. A link that has taken its place meanwhile is not
 * followed. Fails with a TableRefusal 413 for one that is too large.
 */
export function readFound({ path, real }: FoundFile): Uint8Array | undefined {
  const handle = openFound(real);
  if (handle === undefined) return undefined;
  try {
    const { size } = fstatSync(handle);
    if (size > TABLE_LIMITS.fileBytes) throw tooLarge(path);
    const bytes = new Uint8Array(size);
    let at = 0;
    while (at < size) {
      const count = readSync(handle, bytes, at, size - at, null);
      if (count === 0) break;
      at += count;
    }
    return at === size ? bytes : bytes.slice(0, at);
  } finally {
    closeSync(handle);
  }
}

/** A pipe that has taken the file's place would hold up everything, so opening does not wait. */
const OPEN_FLAGS = constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0);

function openFound(real: string): number | undefined {
  try {
    return openSync(real, OPEN_FLAGS);
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return undefined;
    throw error;
  }
}

export function tooLarge(path: string): TableRefusal {
  return new TableRefusal(
    413,
    'too-large',
    `${path} is larger than ${TABLE_LIMITS.fileBytes / 1e6} MB, the most that the table takes; make it smaller.`,
  );
}
