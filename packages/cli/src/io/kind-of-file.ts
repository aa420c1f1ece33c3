import { SIZE_LIMIT_MB, readFileLimited } from './read-file.js';
import { kindOf } from './refuse-other-kind.js';

/** Enough to find the format line. */
const HEAD_BYTES = 4096;

/** Whether a command that reads layouts and orders was given a layout. What tells nothing is taken for an order. */
export function isLayoutFile(path: string): boolean {
  const head = readFileLimited(path, SIZE_LIMIT_MB.data).subarray(0, HEAD_BYTES);
  return kindOf(new TextDecoder().decode(head)) === 'layout';
}
