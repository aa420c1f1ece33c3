import { randomBytes, timingSafeEqual } from 'node:crypto';
import {
  closeSync,
  constants,
  fstatSync,
  fsyncSync,
  openSync,
  readFileSync,
  renameSync,
  unlinkSync,
  writeSync,
} from 'node:fs';
import { join } from 'node:path';
import { systemCode } from '../io/system-words.js';
import { NOBODY_WATCHES, syncFolder } from '../io/write-safely.js';
import { revisionOf } from './revision.js';
import { ownFolder } from './own-place.js';

const KEY_BYTES = 16;
const KEY_FILE = 'table-key';
const KEY_MODE = 0o600;
const OTHERS = 0o077;

/** A key that nobody can guess, as letters that stand in an address. */
export function newKey(): string {
  return randomBytes(KEY_BYTES).toString('base64url');
}

/**
 * The key of a folder's table. It is kept, so that an open page goes on when the table is opened again. A folder that
 * came from elsewhere may bring a key that somebody else knows, so one counts only in the very file into which it was
 * written here, which nobody else may read.
 * Fails with a CliError or a system error where nothing can be kept in the folder.
 */
export function keyOfFolder(folder: string): string {
  const own = ownFolder(folder, [], NOBODY_WATCHES);
  return keptKey(join(own, KEY_FILE)) ?? keepNewKey(own);
}

function keptKey(path: string): string | undefined {
  let handle: number;
  try {
    handle = openSync(path, constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0));
  } catch (error) {
    if (['ENOENT', 'ELOOP', 'EACCES'].includes(systemCode(error) ?? '')) return undefined;
    throw error;
  }
  try {
    const stat = fstatSync(handle);
    const isOurs =
      process.getuid === undefined || (stat.uid === process.getuid() && (stat.mode & OTHERS) === 0);
    if (!stat.isFile() || !isOurs) return undefined;
    const [key = '', mark] = readFileSync(handle, 'utf8').split('\n');
    return mark === fileMark(handle) && /^[A-Za-z0-9_-]{22}$/.test(key) ? key : undefined;
  } finally {
    closeSync(handle);
  }
}

function keepNewKey(own: string): string {
  const key = newKey();
  const fresh = join(own, `${KEY_FILE}.${process.pid}.part`);
  unlinkQuietly(fresh);
  const handle = openSync(fresh, 'wx', KEY_MODE);
  try {
    writeSync(handle, `${key}\n${fileMark(handle)}\n`);
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
  renameSync(fresh, join(own, KEY_FILE));
  syncFolder(own);
  return key;
}

/** Which file it is on the disk: a copy of it, on this or on another disk, is another one. */
function fileMark(handle: number): string {
  return String(fstatSync(handle, { bigint: true }).ino);
}

function unlinkQuietly(path: string): void {
  try {
    unlinkSync(path);
  } catch {
    // There was none.
  }
}

/** Compares in a time that does not tell how much of it was right: digests are of one length. */
export function isSameKey(given: string, key: string): boolean {
  const digest = (text: string): Buffer => Buffer.from(revisionOf(Buffer.from(text)), 'hex');
  return timingSafeEqual(digest(given), digest(key));
}
