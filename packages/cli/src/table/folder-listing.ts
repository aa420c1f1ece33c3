import { createHash } from 'node:crypto';
import { readdirSync, realpathSync, statSync } from 'node:fs';
import type { BigIntStats, Dirent } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { isAllowedPath, isKnownName, isOpenFolder } from './allowed-path.js';
import { isWithin } from './find-file.js';
import { TABLE_LIMITS } from './limits.js';
import { revisionOf } from './revision.js';
import type { SavedFile } from './save-files.js';

export interface FolderListing {
  readonly files: readonly SavedFile[];
  /** True if there are more than are listed. */
  readonly isMore: boolean;
  /** Files that are larger than what is read, by their paths. */
  readonly tooLarge: readonly string[];
  /** Another one for other paths or other contents. */
  readonly stamp: string;
  /** Every folder that was looked into. */
  readonly folders: readonly string[];
}

/** Lists the files of a folder's job; knows from one time to the next what has not changed. */
export type ListFolder = () => Promise<FolderListing>;

/**
 * Makes the function that lists a folder, whose path must be free of links. Listings that are asked for at the same
 * time share one look.
 */
export function folderLister(folder: string): ListFolder {
  let known: ReadonlyMap<string, KnownFile> = new Map();
  let underWay: Promise<FolderListing> | undefined;
  const list = async (): Promise<FolderListing> => {
    const walked = walk(folder);
    const found: KnownFile[] = [];
    for (const { path, real } of walked.files) {
      const file = await look(path, real, known.get(path));
      if (file !== undefined) found.push(file);
    }
    known = new Map(found.map((file) => [file.path, file]));
    const files = found.map(({ path, size, revision }) => ({ path, size, revision }));
    const { isMore, tooLarge, folders } = walked;
    return { files, isMore, tooLarge, folders, stamp: stampOf(files) };
  };
  return () =>
    (underWay ??= list().finally(() => {
      underWay = undefined;
    }));
}

function stampOf(files: readonly SavedFile[]): string {
  const hash = createHash('sha256');
  for (const { path, revision } of files) hash.update(`${path}\n${revision}\n`);
  return hash.digest('hex').slice(0, 32);
}

interface KnownFile extends SavedFile {
  /** Size, times and number on the disk: another one for a file that was written to since. */
  readonly mark: string;
  /** False where it was written to just before it was read: a later write may leave the same mark. */
  readonly isSettled: boolean;
}

/** File systems tell times in steps of up to two seconds. */
const STEP_OF_TIMES_NS = 2_000_000_000n;

async function look(
  path: string,
  real: string,
  known: KnownFile | undefined,
): Promise<KnownFile | undefined> {
  try {
    const stat = statSync(real, { bigint: true });
    const mark = markOf(stat);
    if (known?.isSettled === true && known.mark === mark) return known;
    const bytes = await readFile(real);
    const now = BigInt(Date.now()) * 1_000_000n;
    const newest = stat.mtimeNs > stat.ctimeNs ? stat.mtimeNs : stat.ctimeNs;
    const isSettled = now - newest > STEP_OF_TIMES_NS;
    return { path, size: bytes.length, revision: revisionOf(bytes), mark, isSettled };
  } catch {
    // Gone since the folder was read, or not to be read by this person: no file of the job.
    return undefined;
  }
}

function markOf({ size, mtimeNs, ctimeNs, ino, dev }: BigIntStats): string {
  return [size, mtimeNs, ctimeNs, ino, dev].join(' ');
}

interface Walked {
  readonly files: { readonly path: string; readonly real: string }[];
  readonly folders: string[];
  readonly tooLarge: string[];
  isMore: boolean;
  namesLeft: number;
}

function walk(folder: string): Walked {
  const walked: Walked = {
    files: [],
    folders: [],
    tooLarge: [],
    isMore: false,
    namesLeft: TABLE_LIMITS.namesLookedAt,
  };
  walkInto(folder, [], walked);
  walked.files.sort((one, other) => (one.path < other.path ? -1 : 1));
  return walked;
}

/** Files of a folder before those of the folders in it, so that what is left out is what lies deepest. */
function walkInto(folder: string, parts: readonly string[], walked: Walked): void {
  const at = join(folder, ...parts);
  walked.folders.push(at);
  const entries = entriesOf(at);
  walked.namesLeft -= entries.length;
  if (walked.namesLeft < 0) {
    walked.isMore = true;
    return;
  }
  for (const entry of entries) addFile(folder, [...parts, entry.name], entry, walked);
  if (parts.length === TABLE_LIMITS.foldersDeep) return;
  for (const entry of entries) {
    if (entry.isDirectory() && isOpenFolder(entry.name)) walkInto(folder, [...parts, entry.name], walked);
  }
}

function entriesOf(folder: string): readonly Dirent[] {
  try {
    return readdirSync(folder, { withFileTypes: true }).sort((one, other) =>
      one.name < other.name ? -1 : 1,
    );
  } catch {
    // Gone, or not to be read by this person.
    return [];
  }
}

function addFile(folder: string, parts: readonly string[], entry: Dirent, walked: Walked): void {
  const path = parts.join('/');
  if (!isKnownName(entry.name) || !isAllowedPath(path)) return;
  const real = realFileOf(folder, join(folder, ...parts), entry);
  if (real === undefined) return;
  if (real.size > TABLE_LIMITS.fileBytes) walked.tooLarge.push(path);
  else if (walked.files.length >= TABLE_LIMITS.files) walked.isMore = true;
  else walked.files.push({ path, real: real.path });
}

/** Undefined for what is no file, and for links that lead out of the folder or to what is no file of the job. */
function realFileOf(
  folder: string,
  path: string,
  entry: Dirent,
): { readonly path: string; readonly size: number } | undefined {
  if (!entry.isFile() && !entry.isSymbolicLink()) return undefined;
  try {
    const real = entry.isFile() ? path : realpathSync(path);
    if (!entry.isFile() && !isWithin(folder, real)) return undefined;
    const stat = statSync(real);
    return stat.isFile() ? { path: real, size: stat.size } : undefined;
  } catch {
    return undefined;
  }
}
