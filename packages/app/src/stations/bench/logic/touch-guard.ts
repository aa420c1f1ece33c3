/** A second touch sooner than this is the same knuckle coming down twice. */
export const TOUCH_GUARD_MS = 350;

/** Lets one touch through and holds back what follows it too soon, so that no piece is ticked by a slip. */
export interface TouchGuard {
  /** Whether a touch at this moment counts, ms on any clock that only goes on. */
  passes(atMs: number): boolean;
}

export function touchGuard(): TouchGuard {
  let last = -Infinity;
  return {
    passes: (atMs) => {
      if (atMs - last < TOUCH_GUARD_MS) return false;
      last = atMs;
      return true;
    },
  };
}
