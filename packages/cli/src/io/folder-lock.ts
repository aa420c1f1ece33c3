import { randomUUID } from 'node:crypto';
import {
  mkdirSync,
  readdirSync,
  renameSync,
  rmSync,
  rmdirSync,
  statSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs';
import { hostname, uptime } from 'node:os';
import { join } from 'node:path';
import { CliError } from '../cli-error.js';
import { isAlive } from './stale-parts.js';
import { systemCode, writeFailureWords } from './system-words.js';
import { NOBODY_WATCHES } from './write-safely.js';
import type { DiskWatch } from './write-safely.js';

/** What is locked: the name of the folder that says who works on it, and what it is called. */
export interface LockName {
  /** The lock holds one empty file, which is named after its owner. */
  readonly lock: string;
  /** Within "is changing …": "this stock". */
  readonly what: string;
}

/** As long as nobody would take the program to hang; a step takes far less than a second. */
const WAIT_MS = 10_000;
const LOOK_EVERY_MS = 25;

export interface LockOptions {
  readonly waitMs?: number;
  readonly watch?: DiskWatch;
  /** Told what was cleared away. */
  readonly tell?: (sentence: string) => void;
}

interface Owner {
  readonly name: string;
  readonly pid: number;
  readonly host: string;
}

/**
 * Does something while no other command changes the same files of a folder.
 *
 * The lock is a folder that is renamed into place with its owner's file in it: a folder is never renamed over one that
 * holds something, so that of several only one succeeds. The lock of a process that is gone is opened by removing that
 * owner's file, by its name: a lock that somebody else has taken in the meantime holds another name, and stays.
 * Fails with a CliError where another process keeps it for too long.
 */
export async function withFolderLock<Result>(
  folder: string,
  name: LockName,
  action: () => Result | Promise<Result>,
  { waitMs = WAIT_MS, watch = NOBODY_WATCHES, tell = () => undefined }: LockOptions = {},
): Promise<Result> {
  const mine = ownName();
  const own = join(folder, `${name.lock}.${mine}`);
  const lock = join(folder, name.lock);
  try {
    watch('make folder', own);
    mkdirSync(own);
    watch('make', join(own, mine));
    writeFileSync(join(own, mine), '');
    const tries = Math.ceil(waitMs / LOOK_EVERY_MS);
    for (let i = 0; !takes({ own, lock, what: name.what }, watch, tell); i++) {
      if (i >= tries) throw busy(folder, name);
      await new Promise((resolve) => setTimeout(resolve, LOOK_EVERY_MS));
    }
  } catch (error) {
    rmSync(own, { recursive: true, force: true });
    throw error instanceof CliError ? error : couldNotLock(folder, error);
  }
  try {
    removeOldTries(folder, name);
    return await action();
  } finally {
    watch('remove', join(lock, mine));
    openLock(lock, mine);
  }
}

/** True if the lock is taken now. A lock without a living owner is opened, and taken at the next look. */
function takes(
  { own, lock, what }: { readonly own: string; readonly lock: string; readonly what: string },
  watch: DiskWatch,
  tell: (sentence: string) => void,
): boolean {
  for (let look = 0; look < LOOKS_AT_ONCE; look++) {
    try {
      watch('rename', lock);
      renameSync(own, lock);
      return true;
    } catch (error) {
      if (!ALREADY_THERE.has(systemCode(error) ?? '')) throw error;
    }
    const owners = ownersOf(lock);
    if (owners === undefined) continue;
    const gone = owners.filter((owner) => isGone(owner, join(lock, owner.name)));
    if (gone.length < owners.length) return false;
    for (const { name, pid } of gone) {
      tell(
        `A command that was ended half-way (process ${pid}) still held ${what}; its lock is cleared away.`,
      );
      watch('remove', join(lock, name));
      quietly(() => unlinkSync(join(lock, name)));
    }
    // Not every system renames over an empty folder.
    quietly(() => rmdirSync(lock));
  }
  return false;
}

/** Enough to find the lock open after it was opened, and few enough never to hang. */
const LOOKS_AT_ONCE = 20;

/** What systems say of a folder that can't be renamed over another one. */
const ALREADY_THERE = new Set(['ENOTEMPTY', 'EEXIST', 'EPERM', 'EACCES', 'EBUSY']);

function ownersOf(lock: string): readonly Owner[] | undefined {
  try {
    return readdirSync(lock).map(ownerOf);
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return undefined;
    throw error;
  }
}

/** "PID.RANDOM.HOST". */
function ownName(): string {
  return `${process.pid}.${randomUUID()}.${hostWord()}`;
}

function ownerOf(name: string): Owner {
  const [pid = '', , ...host] = name.split('.');
  return { name, pid: Number(pid), host: host.join('.') };
}

function hostWord(): string {
  return hostname().replace(/[^A-Za-z0-9.-]/g, '-');
}

/** Clocks of files and of the system may differ by this much. */
const CLOCK_SLACK_MS = 5000;

/**
 * True if the owner can't be working any more: its process is gone, was started before this machine was, or has the
 * number of this process, which takes no lock twice. Nothing is known of other machines.
 */
function isGone({ pid, host }: Owner, path: string): boolean {
  if (host !== hostWord() || !Number.isSafeInteger(pid) || pid < 1) return false;
  if (pid === process.pid || !isAlive(pid)) return true;
  try {
    return statSync(path).mtimeMs < Date.now() - uptime() * 1000 - CLOCK_SLACK_MS;
  } catch {
    return false;
  }
}

function openLock(lock: string, mine: string): void {
  quietly(() => unlinkSync(join(lock, mine)));
  quietly(() => rmdirSync(lock));
}

/** What commands left that were killed while they waited. */
function removeOldTries(folder: string, { lock }: LockName): void {
  for (const name of readdirSync(folder)) {
    if (!name.startsWith(`${lock}.`)) continue;
    const owner = ownerOf(name.slice(lock.length + 1));
    if (owner.pid === process.pid || !isGone(owner, join(folder, name))) continue;
    quietly(() => rmSync(join(folder, name), { recursive: true, force: true }));
  }
}

function busy(folder: string, { lock, what }: LockName): CliError {
  const [owner] = ownersOf(join(folder, lock)) ?? [];
  const who = owner === undefined ? '' : ` (process ${owner.pid} on ${owner.host})`;
  return new CliError(
    'can-not-write',
    `Another command${who} is changing ${what}; run this one again when that one is done, or delete the folder ${lock} in it if nothing is running.`,
    { file: folder },
  );
}

function couldNotLock(folder: string, error: unknown): CliError {
  return new CliError('can-not-write', `It could not be written: ${writeFailureWords(error)}.`, {
    file: folder,
  });
}

/** Somebody else was faster, or it is gone already: the next look tells. */
function quietly(action: () => void): void {
  try {
    action();
  } catch (error) {
    if (systemCode(error) === undefined) throw error;
  }
}
