import { parseJobBundle, writeJobBundle } from '@hidebound/leather';
import type { BundledFile } from '@hidebound/leather';
import type { JobFile } from '../../job/job.js';
import type { RawFile } from '../desk-tasks.js';
import { writeFile } from './write-file.js';

/** All files of a job in one. */
export function writeBundle(job: {
  readonly name: string;
  readonly files: ReadonlyMap<string, JobFile>;
}): Uint8Array {
  const files = [...job.files].sort(([one], [other]) => (one < other ? -1 : 1));
  const bundled = files.map(([path, file]) => bundledFile(path, file));
  return new TextEncoder().encode(writeJobBundle({ name: job.name, files: bundled }));
}

export function readBundle({ path, bytes }: RawFile): {
  readonly name: string;
  readonly files: readonly RawFile[];
} {
  const { name, files } = parseJobBundle(new TextDecoder().decode(bytes), { file: path });
  return {
    name,
    files: files.map(({ path, encoding, content }) => ({
      path,
      bytes: encoding === 'base64' ? fromBase64(content) : new TextEncoder().encode(content),
    })),
  };
}

const TEXT_KINDS = new Set<JobFile['kind']>(['hide', 'order', 'article', 'layout', 'text']);

function bundledFile(path: string, file: JobFile): BundledFile {
  const bytes = writeFile(file);
  const isText = TEXT_KINDS.has(file.kind) || isUtf8(bytes);
  return {
    path,
    kind: bundledKind(path, file),
    encoding: isText ? 'utf8' : 'base64',
    content: isText ? new TextDecoder().decode(bytes) : toBase64(bytes),
  };
}

function bundledKind(path: string, { kind }: JobFile): BundledFile['kind'] {
  if (kind === 'text') return /(^|\/)workshop\.ya?ml$/i.test(path) ? 'workshop' : 'journal';
  return kind === 'unread' ? 'pattern' : kind;
}

/** Text that comes back as the same bytes: a mark at its start would be lost. */
function isUtf8(bytes: Uint8Array): boolean {
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) return false;
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return true;
  } catch {
    return false;
  }
}

/** More bytes than this at once would be too many arguments of one call. */
const CHUNK = 0x8000;

function toBase64(bytes: Uint8Array): string {
  let binary = '';
  for (let i = 0; i < bytes.length; i += CHUNK)
    binary += String.fromCharCode(...bytes.subarray(i, i + CHUNK));
  return btoa(binary);
}

function fromBase64(text: string): Uint8Array {
  return Uint8Array.from(atob(text), (character) => character.charCodeAt(0));
}
