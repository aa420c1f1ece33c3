import { watch } from 'node:fs';
import type { FSWatcher } from 'node:fs';
import type { FolderListing, ListFolder } from './folder-listing.js';
import { TABLE_TIMES } from './limits.js';

export interface FolderChanges {
  /** The folder as it is when it is no longer as `stamp` says, or when the time is over or the signal given. */
  readonly after: (stamp: string, signal: AbortSignal) => Promise<FolderListing>;
  /** Something was saved: whoever waits looks at once. */
  readonly touch: () => void;
  readonly close: () => void;
}

/** More folders than this are looked through by the clock alone: each watch takes of what the system has few of. */
const MOST_WATCHED = 200;

/**
 * Hears of changes in a folder from the system, and looks through it by the clock while somebody waits: not every
 * file system tells.
 */
export function watchFolder(list: ListFolder): FolderChanges {
  const watchers = new Map<string, FSWatcher>();
  const waiting = new Set<() => void>();
  let settling: NodeJS.Timeout | undefined;
  const touch = (): void => {
    for (const wake of [...waiting]) wake();
  };
  const hear = (): void => {
    settling ??= setTimeout(() => {
      settling = undefined;
      touch();
    }, TABLE_TIMES.settle);
  };
  const look = async (): Promise<FolderListing> => {
    const listing = await list();
    watchAll(watchers, listing.folders.slice(0, MOST_WATCHED), hear);
    return listing;
  };
  const after = async (stamp: string, signal: AbortSignal): Promise<FolderListing> => {
    const end = performance.now() + TABLE_TIMES.longPoll;
    for (;;) {
      const listing = await look();
      const leftMs = end - performance.now();
      if (listing.stamp !== stamp || leftMs <= 0 || signal.aborted) return listing;
      await woken(waiting, Math.min(leftMs, TABLE_TIMES.slowScan), signal);
    }
  };
  const close = (): void => {
    clearTimeout(settling);
    watchAll(watchers, [], hear);
    touch();
  };
  return { after, touch, close };
}

function woken(waiting: Set<() => void>, ms: number, signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    const wake = (): void => {
      clearTimeout(timer);
      waiting.delete(wake);
      signal.removeEventListener('abort', wake);
      resolve();
    };
    const timer = setTimeout(wake, ms);
    waiting.add(wake);
    signal.addEventListener('abort', wake);
  });
}

/** Watches these folders and no others. */
function watchAll(watchers: Map<string, FSWatcher>, folders: readonly string[], hear: () => void): void {
  const wanted = new Set(folders);
  for (const [folder, watcher] of watchers) {
    if (wanted.has(folder)) continue;
    watcher.close();
    watchers.delete(folder);
  }
  for (const folder of wanted) {
    if (watchers.has(folder)) continue;
    try {
      const watcher = watch(folder, { persistent: false }, hear);
      // Gone, or the system has no more watches: the clock does it.
      watcher.on('error', () => undefined);
      watchers.set(folder, watcher);
    } catch {
      return;
    }
  }
}
