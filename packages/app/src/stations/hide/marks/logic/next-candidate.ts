import type { FlawCandidate } from '@hidebound/leather';

/** The one after this, in the file's order and round again, but for those that were put off; undefined where none is left. */
export function nextToLookAt(
  candidates: readonly FlawCandidate[],
  now: string,
  later: readonly string[],
): FlawCandidate | undefined {
  const at = candidates.findIndex(({ id }) => id === now);
  const inOrder = [...candidates.slice(at + 1), ...candidates.slice(0, Math.max(at, 0))];
  return inOrder.find(({ id }) => id !== now && !later.includes(id));
}
