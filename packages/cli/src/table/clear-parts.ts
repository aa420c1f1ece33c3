import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { removeStaleParts } from '../io/stale-parts.js';
import { isKnownName, isOpenFolder } from './allowed-path.js';
import { TABLE_LIMITS } from './limits.js';
import { OWN_FOLDER } from './own-place.js';

const PART = /^(.+)\.[1-9]\d*\.part$/;

/** Clears away the half-written contents that ended processes left beside files of the job, and beside kept versions. */
export function clearParts(folder: string): void {
  clearIn(folder, isKnownName, TABLE_LIMITS.foldersDeep);
  // Kept versions lie two folders deeper: in the place of their kind, and in a folder for each file.
  clearIn(
    join(folder, OWN_FOLDER),
    () => true,
    TABLE_LIMITS.foldersDeep + 2,
    () => true,
  );
}

function clearIn(
  folder: string,
  isOurs: (name: string) => boolean,
  deep: number,
  isOpen: (name: string) => boolean = isOpenFolder,
): void {
  for (const entry of entriesOf(folder)) {
    const target = PART.exec(entry.name)?.[1];
    if (entry.isFile() && target !== undefined && isOurs(target)) removeStaleParts(join(folder, target));
    if (entry.isDirectory() && deep > 0 && isOpen(entry.name))
      clearIn(join(folder, entry.name), isOurs, deep - 1, isOpen);
  }
}

function entriesOf(folder: string) {
  try {
    return readdirSync(folder, { withFileTypes: true });
  } catch {
    return [];
  }
}
