/** The system's error code of a failed call, such as ENOSPC; undefined where it has none. */
export function systemCode(error: unknown): string | undefined {
  if (!(error instanceof Error) || !('code' in error)) return undefined;
  return typeof error.code === 'string' ? error.code : undefined;
}

const WRITE_WORDS: Readonly<Record<string, string>> = {
  ENOSPC: 'the disk is full; free some space and run it again',
  EDQUOT: 'your share of the disk is used up; free some space and run it again',
  EFBIG: 'the file would be larger than the system allows; raise that limit or choose another place',
  EROFS: 'the folder is read-only; choose another one',
  EACCES: 'you have no right to write there; choose another folder or change its rights',
  EPERM: 'the system does not let you write there; choose another folder or change its rights',
  ENOENT: 'the folder does not exist; make it first or choose another one',
  ENOTDIR: 'a part of its path is a file, not a folder; choose another path',
  EEXIST: 'another file of this name is there already; move it away and run it again',
  EISDIR: 'this is a folder; give a file name',
  ENAMETOOLONG: 'the name is too long; choose a shorter one',
  EMFILE: 'too many files are open; close some programs and run it again',
};

const READ_WORDS: Readonly<Record<string, string>> = {
  EACCES: 'you have no right to read it; change its rights',
  EPERM: 'the system does not let you read it; change its rights',
  ENOTDIR: 'a part of its path is a file, not a folder; correct the path',
  ELOOP: 'its links lead in a circle; give the file itself',
  ENAMETOOLONG: 'the name is too long; correct the path',
};

/** Why a file could not be written, and what to do. */
export function writeFailureWords(error: unknown): string {
  return wordsFrom(WRITE_WORDS, error);
}

/** Why a file could not be read, and what to do. */
export function readFailureWords(error: unknown): string {
  return wordsFrom(READ_WORDS, error);
}

function wordsFrom(table: Readonly<Record<string, string>>, error: unknown): string {
  const code = systemCode(error);
  const words = code === undefined ? undefined : table[code];
  return words ?? `the system says ${code ?? 'nothing more'}; try another place`;
}
