import { cell } from '../app/cell.js';
import type { Watched } from '../app/cell.js';
import type { Edits } from '../job/job.js';
import type { Desk } from '../work/desk.js';
import { adoptLeft } from './adopt-left.js';
import type { JobStore } from './job-store.js';
import { journalLine } from './journal-line.js';
import type { Journal } from './journal.js';
import { isSameState, keepState } from './keep-state.js';
import type { HeldUp, KeepState } from './keep-state.js';
import { move } from './keeping.js';
import type { KeeperListener, Keeping } from './keeping.js';
import { lookAround } from './look-around.js';
import { pauseBefore } from './pauses.js';
import { saveWaiting } from './save-waiting.js';
import { reasonFor } from './store-error.js';
import { withChange } from './waiting.js';

/** Keeps what the app changes: in the journal at once, then in the store, and never over somebody else's work. */
export interface Keeper {
  readonly state: Watched<KeepState>;
  /** One step of the app's. */
  keep(edits: Edits): void;
  /** Tries again now what could not be saved. It is tried again by itself too, with growing pauses. */
  retry(): void;
  /** Looks for changes that others made. The store's own word does the same by itself. */
  look(): void;
  /** Takes over what tabs of this job left that were closed or killed. */
  adopt(): Promise<void>;
  /** Settled once nothing is under way: all is saved, or waits for a later try. */
  idle(): Promise<void>;
  /** One listens at a time; what happens while nobody does is told to the next. Gives back what ends the listening. */
  hear(listener: KeeperListener): () => void;
  /** Stops trying. What is not saved stays in the journal for the next time. */
  close(): Promise<void>;
}

export interface KeeperInput {
  readonly store: JobStore;
  readonly journal: Journal;
  readonly desk: Pick<Desk, 'ask'>;
  /** Revision of each file that the app was opened with. */
  readonly revisions: ReadonlyMap<string, string>;
  /** Waits before a try after so many failures; ends early when the signal says so. */
  readonly pause?: (failures: number, signal: AbortSignal) => Promise<void>;
}

export function createKeeper({ store, journal, desk, revisions, pause = pauseBefore }: KeeperInput): Keeper {
  const state = cell<KeepState>({ kind: 'saved' });
  const told = telling();
  let lastOrder = 0;
  const keeping: Keeping = {
    store,
    desk,
    line: journalLine(journal),
    known: new Map(revisions),
    files: new Map(),
    heldUp: new Map(),
    nextOrder: () => ++lastOrder,
    onOthers: (edits) => told.tell((listener) => listener.onOthers(edits)),
    onAside: (path, aside) => told.tell((listener) => listener.onAside(path, aside)),
  };
  let work: Promise<void> = Promise.resolve();
  let isLookDue = false;
  let isClosed = false;
  let reach: HeldUp | undefined;
  let failures = 0;
  let waking: AbortController | undefined;

  const settle = (): void => {
    const next = keepState(keeping, reach);
    if (!isSameState(state.get(), next)) state.set(next);
  };
  const run = async (): Promise<void> => {
    if (isClosed) return;
    await keeping.line.flushed();
    if (reach === undefined) await saveAndLook();
    settle();
    if (keeping.heldUp.size > 0 || reach !== undefined || keeping.line.failure() !== undefined) tryLater();
    else failures = 0;
  };
  const saveAndLook = async (): Promise<void> => {
    await saveWaiting(keeping);
    reach = [...keeping.heldUp.values()].find(({ reason }) => reason === 'out of reach');
    if (!isLookDue || reach !== undefined) return;
    isLookDue = false;
    try {
      await lookAround(keeping);
    } catch (error) {
      isLookDue = true;
      reach = reasonFor(error);
    }
  };
  const request = (): void => {
    // A fault of the program must not end the keeping: the work is in the journal, and is tried again.
    work = work.then(run).catch(tryLater);
  };
  const tryAgain = (): void => {
    keeping.heldUp.clear();
    reach = undefined;
    if (keeping.line.failure() !== undefined) keeping.line.retry();
    request();
  };
  const tryLater = (): void => {
    if (waking !== undefined || isClosed) return;
    waking = new AbortController();
    void pause(++failures, waking.signal).then(() => {
      waking = undefined;
      if (!isClosed) tryAgain();
    });
  };
  const look = (): void => {
    isLookDue = true;
    request();
  };
  const unwatch = store.watch(look);

  return {
    state,
    keep: (edits) => {
      if (edits.size === 0) return;
      note(keeping, journal.writer, edits);
      state.set({ kind: 'saving' });
      request();
    },
    retry: () => {
      failures = 0;
      if (waking === undefined) tryAgain();
      else waking.abort();
    },
    look,
    adopt: async () => {
      const left = await journal.adopt(keeping.nextOrder).catch(() => []);
      const adopting = work.then(async () => {
        for (const changes of left) await adoptLeft(keeping, changes);
      });
      work = adopting;
      if (left.length > 0) request();
      await adopting;
    },
    idle: async () => {
      let seen;
      do {
        seen = work;
        await work;
        await keeping.line.flushed();
      } while (seen !== work);
    },
    hear: told.hear,
    close: async () => {
      isClosed = true;
      unwatch();
      waking?.abort();
      await work;
      await keeping.line.flushed();
      journal.close();
    },
  };
}

/** Each file's new content, as one step where there are several. */
function note(keeping: Keeping, writer: number, edits: Edits): void {
  let step: string | undefined;
  for (const [path, file] of edits) {
    const order = keeping.nextOrder();
    const strand = `${writer}:${order}`;
    step ??= strand;
    const base = keeping.known.get(path) ?? null;
    const change = { order, path, base, file, strand, steps: edits.size > 1 ? [step] : [] };
    keeping.heldUp.delete(path);
    move(keeping, path, withChange(keeping.files.get(path), change));
  }
}

interface Telling {
  tell(what: (listener: KeeperListener) => void): void;
  readonly hear: Keeper['hear'];
}

function telling(): Telling {
  let listener: KeeperListener | undefined;
  let untold: ((listener: KeeperListener) => void)[] = [];
  return {
    tell: (what) => {
      if (listener === undefined) untold.push(what);
      else what(listener);
    },
    hear: (next) => {
      listener = next;
      const missed = untold;
      untold = [];
      for (const what of missed) what(next);
      return () => {
        if (listener === next) listener = undefined;
      };
    },
  };
}
