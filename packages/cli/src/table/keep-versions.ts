import { existsSync, readdirSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { removeFile } from '../io/write-safely.js';
import type { DiskWatch } from '../io/write-safely.js';
import { TABLE_LIMITS } from './limits.js';
import { OWN_FOLDER, ownFolder, writeOwn } from './own-place.js';

const KEPT = 'kept';
const BEFORE = 'before';

/** Where the content that a file had before its last change is. */
export function beforePath(folder: string, path: string): string {
  return join(folder, OWN_FOLDER, BEFORE, ...path.split('/'));
}

/** Keeps the content that a file has now, before it is changed or taken away. */
export function keepBefore(folder: string, path: string, bytes: Uint8Array, watch: DiskWatch): void {
  const at = ownFolder(folder, [BEFORE, ...foldersOf(path)], watch);
  writeOwn(join(at, basename(path)), bytes, watch);
}

/**
 * Keeps the content that a file had when work on it began, under the time at which that was. Of many the oldest go.
 * `now`: by the clock of the place.
 */
export function keepOfToday(
  folder: string,
  path: string,
  kept: { readonly bytes: Uint8Array; readonly now: Date },
  watch: DiskWatch,
): void {
  const at = ownFolder(folder, [KEPT, ...path.split('/')], watch);
  writeOwn(join(at, freeName(at, civilName(kept.now))), kept.bytes, watch);
  const names = readdirSync(at).filter(isCivilName).sort(byAge);
  for (const name of names.slice(0, -TABLE_LIMITS.keptVersions)) removeFile(join(at, name), watch);
}

function foldersOf(path: string): readonly string[] {
  const folders = dirname(path);
  return folders === '.' ? [] : folders.split('/');
}

/** "2026-03-02 14.05.09": a colon can't be in a name everywhere. */
function civilName(now: Date): string {
  const two = (part: number): string => String(part).padStart(2, '0');
  const day = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  return `${day} ${[now.getHours(), now.getMinutes(), now.getSeconds()].map(two).join('.')}`;
}

const CIVIL_NAME = /^(\d{4}-\d\d-\d\d \d\d\.\d\d\.\d\d)(?: (\d+))?$/;

function isCivilName(name: string): boolean {
  return CIVIL_NAME.test(name);
}

function byAge(one: string, other: string): number {
  const [, time = '', number = '1'] = CIVIL_NAME.exec(one) ?? [];
  const [, otherTime = '', otherNumber = '1'] = CIVIL_NAME.exec(other) ?? [];
  if (time !== otherTime) return time < otherTime ? -1 : 1;
  return Number(number) - Number(otherNumber);
}

/** Two within one second. */
function freeName(folder: string, name: string): string {
  for (let number = 1; ; number++) {
    const free = number === 1 ? name : `${name} ${number}`;
    if (!existsSync(join(folder, free))) return free;
  }
}
