import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { CliError } from '../cli-error.js';
import { readFailureWords, systemCode } from './system-words.js';

const BYTES_PER_MB = 1_000_000;

/** Largest files that are read, in MB of 1,000,000 bytes: far above what people draw or write by hand, far below what fills the memory. */
export const SIZE_LIMIT_MB = { pattern: 50, data: 50, photo: 200 } as const;

/**
 * A whole file, refused by its size before any of it is read. A pipe or device, which has no size, is read up to the
 * limit and refused beyond it.
 */
export function readFileLimited(path: string, limitMb: number): Uint8Array {
  const handle = openForReading(path);
  try {
    const stat = fstatSync(handle);
    if (stat.isDirectory()) {
      throw new CliError('is-a-folder', 'This is a folder; give a file.', { file: path });
    }
    if (stat.size > limitMb * BYTES_PER_MB) throw tooLarge(path, stat.size, limitMb);
    return readAll(handle, path, limitMb);
  } catch (error) {
    if (error instanceof CliError) throw error;
    throw new CliError('can-not-read', `It can't be read: ${readFailureWords(error)}.`, { file: path });
  } finally {
    closeSync(handle);
  }
}

function openForReading(path: string): number {
  try {
    return openSync(path, 'r');
  } catch (error) {
    if (systemCode(error) === 'ENOENT') {
      throw new CliError('no-such-file', 'There is no such file; correct the name or the folder.', {
        file: path,
      });
    }
    throw new CliError('can-not-read', `It can't be read: ${readFailureWords(error)}.`, { file: path });
  }
}

const CHUNK_BYTES = 1 << 16;

function readAll(handle: number, path: string, limitMb: number): Uint8Array {
  const chunks: Uint8Array[] = [];
  let total = 0;
  for (;;) {
    const chunk = new Uint8Array(CHUNK_BYTES);
    const count = readSync(handle, chunk, 0, CHUNK_BYTES, null);
    if (count === 0) return joined(chunks, total);
    chunks.push(chunk.subarray(0, count));
    total += count;
    if (total > limitMb * BYTES_PER_MB) throw tooLarge(path, undefined, limitMb);
  }
}

/** Plain bytes of their own: Node's kind of them is refused by some libraries, and may share its memory. */
function joined(chunks: readonly Uint8Array[], total: number): Uint8Array {
  const all = new Uint8Array(total);
  let at = 0;
  for (const chunk of chunks) {
    all.set(chunk, at);
    at += chunk.length;
  }
  return all;
}

function tooLarge(path: string, bytes: number | undefined, limitMb: number): CliError {
  const size = bytes === undefined ? `more than ${limitMb}` : String(Math.ceil(bytes / BYTES_PER_MB));
  return new CliError(
    'too-large',
    `The file has ${size} MB, and at most ${limitMb} MB are read; check that it is the right file, or split it.`,
    { file: path },
  );
}
