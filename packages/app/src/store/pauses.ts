const FIRST_PAUSE_MS = 1000;
/** Long enough to cost nothing, short enough that work is seen to be safe soon after the cause is gone. */
const LONGEST_PAUSE_MS = 30_000;

/** How long to wait before the next try, after so many that failed: 1, 2, 4 … 30 seconds. */
export function pauseMs(failures: number): number {
  return Math.min(LONGEST_PAUSE_MS, FIRST_PAUSE_MS * 2 ** Math.min(failures - 1, 10));
}

/** Waits that long; ends early when the signal says so. */
export function pauseBefore(failures: number, signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    const done = (): void => {
      clearTimeout(timer);
      signal.removeEventListener('abort', done);
      resolve();
    };
    const timer = setTimeout(done, pauseMs(failures));
    signal.addEventListener('abort', done);
  });
}
