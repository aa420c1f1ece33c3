import { TABLE_LIMITS } from './limits.js';

/** Kinds of files that belong to a job, by their names. */
const KINDS: readonly RegExp[] = [
  /\.(hide|layout|job)\.json$/i,
  /\.(order|article|hints)\.ya?ml$/i,
  /\.(svg|pdf|dxf|jpe?g|png|webp)$/i,
  // By their own names, or set aside under a like one ("workshop-mine.yaml").
  /^workshop(-[^/]*)?\.ya?ml$/i,
  /^(stock\.journal|reference-sheets)(-[^/]*)?\.json$/i,
  // What hides were before and after they were taken from the stock, by the sums of their contents.
  /^[0-9a-f]{64}\.json$/,
];

/** Letters that no name of a job's file needs: controls, halves of letters, and what turns the direction of reading. */
const UNSEEN = /[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\u202A-\u202E\u2066-\u2069]/u;
const DRIVE = /^[A-Za-z]:/;

/** Names that Windows keeps for devices, with any ending; ¹²³ count as digits there. */
const RESERVED = /^(con|prn|aux|nul|conin\$|conout\$|(com|lpt)[0-9¹²³])( *\.|$)/i;
const NOT_PORTABLE = /[<>:"|?*]/;

/** True if a file's own name says that it belongs to a job. */
export function isKnownName(name: string): boolean {
  return KINDS.some((kind) => kind.test(name));
}

/** True if a folder may hold files of a job: not hidden, not a program's own, and not named as a file is. */
export function isOpenFolder(name: string): boolean {
  return isPlainPart(name) && name.toLowerCase() !== 'node_modules' && !isKnownName(name);
}

/** A part of a path that leads nowhere else and can be shown. */
function isPlainPart(name: string): boolean {
  return (
    name !== '' &&
    !name.startsWith('.') &&
    !name.includes('\\') &&
    !UNSEEN.test(name) &&
    Buffer.byteLength(name) <= TABLE_LIMITS.nameBytes
  );
}

/**
 * True if a path ("patterns/front.svg") can be that of a file of a job: within the folder by its words alone, few
 * folders deep, nothing hidden, of a kind that is known. Where it leads on the disk is another question.
 */
export function isAllowedPath(path: string): boolean {
  if (path.length > TABLE_LIMITS.pathLetters || DRIVE.test(path)) return false;
  const parts = path.split('/');
  const name = parts.pop()!;
  if (parts.length > TABLE_LIMITS.foldersDeep || !parts.every(isOpenFolder)) return false;
  if (process.platform === 'win32' && !isPortablePath(path)) return false;
  return isPlainPart(name) && isKnownName(name);
}

/** True if every system that people use takes these names, so that a job can go from one to another. */
export function isPortablePath(path: string): boolean {
  return path
    .split('/')
    .every((part) => !RESERVED.test(part) && !NOT_PORTABLE.test(part) && !/[. ]$|^ /.test(part));
}
