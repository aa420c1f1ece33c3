import { createHash } from 'node:crypto';

/** What tells one content of a file from another: its SHA-256, as hexadecimal digits. */
export function revisionOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}
