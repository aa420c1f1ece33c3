import type { FileRead } from './job-store.js';
import { bytesOf } from './keeping.js';
import type { Keeping } from './keeping.js';
import type { Waiting } from './waiting.js';

/**
 * Whose the store's file is that is not as a waiting change took it to be:
 * `settled`: it is the change itself; the store's answer got lost.
 * `own`: it came from here before the change was made, or it is gone, so that the change can take its place.
 * `theirs`: somebody else's.
 */
export type Verdict = 'settled' | 'own' | 'theirs';

/** @throws WorkError where the desk fails */
export async function judge(
  keeping: Keeping,
  { last, tried }: Waiting,
  stored: FileRead | undefined,
): Promise<Verdict> {
  if (isSame(await bytesOf(keeping, last), stored?.bytes)) return 'settled';
  for (const change of tried) if (isSame(await bytesOf(keeping, change), stored?.bytes)) return 'own';
  return stored === undefined ? 'own' : 'theirs';
}

function isSame(one: Uint8Array | undefined, other: Uint8Array | undefined): boolean {
  if (one === undefined || other === undefined) return one === other;
  return one.length === other.length && one.every((byte, i) => byte === other[i]);
}
