import { kindOfPath } from './kind-of-path.js';
import type { JobFile } from './job.js';

/** A file as a job file holds it (see docs/files.md). */
export interface InBundle {
  readonly path: string;
  readonly kind: Exclude<JobFile['kind'], 'text' | 'unread'> | 'workshop' | 'journal';
  readonly encoding: 'utf8' | 'base64';
  readonly content: string;
}

/** Bytes by their path, or as what they are held for. Needs nothing of the packages, so that it works when all else fails. */
export function inBundle(
  path: string,
  bytes: Uint8Array,
  kind: JobFile['kind'] | undefined = kindOfPath(path),
): InBundle {
  const isText = isUtf8(bytes);
  return {
    path,
    kind: kindInBundle(path, kind),
    encoding: isText ? 'utf8' : 'base64',
    content: isText ? new TextDecoder().decode(bytes) : toBase64(bytes),
  };
}

function kindInBundle(path: string, kind: JobFile['kind'] | undefined): InBundle['kind'] {
  if (kind === 'text') return /(^|\/)workshop\.ya?ml$/i.test(path) ? 'workshop' : 'journal';
  return kind === undefined || kind === 'unread' ? 'pattern' : kind;
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
