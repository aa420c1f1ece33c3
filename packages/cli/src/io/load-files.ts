import { dirname, isAbsolute, join } from 'node:path';
import { parseHide, parseLayout } from '@hidebound/leather';
import type { Hide, Layout, NamedHide } from '@hidebound/leather';
import { CliError } from '../cli-error.js';
import { refuseOtherKind } from './refuse-other-kind.js';
import type { FileKind } from './refuse-other-kind.js';
import { refuseTooDetailed } from './refuse-too-detailed.js';
import { SIZE_LIMIT_MB, readFileLimited } from './read-file.js';

/** Enough to see what kind of file it is. */
const HEAD_BYTES = 4096;

/** The text of a file of one kind. Bytes that are no UTF-8, or hold a zero, are refused: nothing that these files say is written so. */
export function readText(path: string, kind: FileKind): string {
  const bytes = readFileLimited(path, SIZE_LIMIT_MB.data);
  const text = decodeUtf8(bytes);
  if (text === undefined || text.includes('\0')) {
    // A PDF holds bytes that are no text, and says what it is all the same.
    refuseOtherKind(new TextDecoder().decode(bytes.subarray(0, HEAD_BYTES)), kind, path);
    throw new CliError('not-text', 'This is not a text file in UTF-8; check that it is the right file.', {
      file: path,
    });
  }
  refuseOtherKind(text, kind, path);
  return text;
}

function decodeUtf8(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

export function loadHide(path: string): Hide {
  const text = readText(path, 'hide');
  refuseTooDetailed(text, path);
  return parseHide(text, { file: path });
}

export function loadLayout(path: string): Layout {
  return parseLayout(readText(path, 'layout'), { file: path });
}

/** A name within a file means a place beside that file. */
export function besideFile(file: string, name: string): string {
  return isAbsolute(name) ? name : join(dirname(file), name);
}

/** The hides that a layout lies on, from the paths that it names. */
export function loadLayoutHides(layout: Layout, layoutPath: string): NamedHide[] {
  return layout.hides.map(({ file }) => ({ file, hide: loadHide(besideFile(layoutPath, file)) }));
}
