import type { App } from '../../app/app.js';
import { benchTable } from './table.js';

/** Keeps the screen lit while the bench is open; taken again each time the page is seen again. Gives back what ends it. */
export function stayAwake(app: App): () => void {
  const { staysAwake } = benchTable(app);
  let lock: WakeLockSentinel | undefined;
  let isClosed = false;
  const take = async (): Promise<void> => {
    if (document.visibilityState !== 'visible') return;
    if (!('wakeLock' in navigator)) {
      staysAwake.set(false);
      return;
    }
    try {
      const got = await navigator.wakeLock.request('screen');
      if (isClosed) {
        await got.release();
        return;
      }
      lock = got;
      staysAwake.set(true);
    } catch {
      // A low battery, or a page that may not: it is told on the card.
      if (!isClosed) staysAwake.set(false);
    }
  };
  const takeAgain = (): void => void take();
  document.addEventListener('visibilitychange', takeAgain);
  void take();
  return () => {
    isClosed = true;
    document.removeEventListener('visibilitychange', takeAgain);
    lock?.release().catch(() => undefined);
  };
}
