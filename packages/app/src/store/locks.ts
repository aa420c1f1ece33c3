/**
 * Web Locks, where the browser has them (it does on https and on this computer's own address). A lock is given back
 * however its tab ends.
 */
function lockManager(): LockManager | undefined {
  return typeof navigator === 'undefined' ? undefined : navigator.locks;
}

/** Holds a lock that nobody else asks for until it is let go; settled once it is held. */
export function holdLock(name: string): Promise<() => void> {
  const locks = lockManager();
  if (locks === undefined) return Promise.resolve(() => undefined);
  return new Promise((held, failed) => {
    locks
      .request(name, () => new Promise<void>((letGo) => held(letGo)))
      .catch((error: unknown) => failed(error instanceof Error ? error : new Error(String(error))));
  });
}

/**
 * Does something where the lock's holder is gone, and keeps others from doing the same meanwhile; else does nothing.
 * Without locks nobody is known to be alive: work is then rather done twice than left.
 */
export async function whileGone(name: string, what: () => Promise<void>): Promise<void> {
  const locks = lockManager();
  if (locks === undefined) {
    await what();
    return;
  }
  await locks.request(name, { ifAvailable: true }, async (lock) => {
    if (lock !== null) await what();
  });
}

export interface LockTaking {
  /** Called when the lock is given to this tab. */
  readonly onHeld: () => void;
  /** Called when another tab took it. */
  readonly onLost: () => void;
}

export interface TakenLock {
  /** Takes it away from whoever holds it. */
  take(): void;
  close(): void;
}

/** A lock that this tab waits for, can take away from another, and gets back when that one ends. */
export function standInLine(name: string, { onHeld, onLost }: LockTaking): TakenLock {
  const locks = lockManager();
  if (locks === undefined) {
    onHeld();
    return { take: () => undefined, close: () => undefined };
  }
  const closing = new AbortController();
  let letGo: (() => void) | undefined;
  let isHeld = false;
  let isInLine = false;
  const hold = (): Promise<void> => {
    if (closing.signal.aborted) return Promise.resolve();
    isHeld = true;
    onHeld();
    return new Promise((resolve) => {
      letGo = resolve;
    });
  };
  const wait = (): void => {
    if (isInLine) return;
    isInLine = true;
    const granted = (): Promise<void> => {
      isInLine = false;
      return hold();
    };
    locks.request(name, { signal: closing.signal }, granted).catch(lost);
  };
  // A stolen lock's request is rejected, and so is one that is given up by its signal.
  const lost = (): void => {
    if (closing.signal.aborted || !isHeld) return;
    isHeld = false;
    onLost();
    wait();
  };
  wait();
  return {
    take: () => {
      if (isHeld || closing.signal.aborted) return;
      locks.request(name, { steal: true }, hold).catch(lost);
    },
    close: () => {
      closing.abort();
      letGo?.();
    },
  };
}
