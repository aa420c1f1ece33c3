import { withEdits } from '../job/job.js';
import type { Job } from '../job/job.js';
import type { Desk } from '../work/desk.js';
import { browserStore } from './browser-store.js';
import { openDatabase } from './database.js';
import type { Database } from './database.js';
import { findBrowserJob, readDemo } from './find-browser-job.js';
import { findTable } from './find-table.js';
import { folderStore } from './folder-store.js';
import type { JobStore } from './job-store.js';
import { noJournal, openJournal } from './journal.js';
import type { Journal } from './journal.js';
import { warnWhileUnsafe } from './keep-state.js';
import { createKeeper } from './keeper.js';
import type { Keeper } from './keeper.js';
import { readAll } from './read-all.js';
import type { ReadAll } from './read-all.js';
import { storeErrorOf } from './store-error.js';
import { keepKey, tableKeys } from './table-key.js';
import { openTabs } from './tabs.js';
import type { Tabs } from './tabs.js';
import { UNKEPT, unkeptStore } from './unkept-store.js';

export interface OpenJob {
  readonly kind: 'open';
  readonly name: string;
  /** With what waited for its store when the last tab ended. */
  readonly job: Job;
  readonly store: JobStore;
  readonly keeper: Keeper;
  readonly tabs: Tabs;
  readonly database: Database;
  /** The job's number in the browser's storage; undefined for a folder's. */
  readonly browserJob: number | undefined;
  /** Files that could not be read, and why. */
  readonly left: ReadAll['left'];
  /** What an earlier tab had changed and somebody else too: [path, the own version's path beside it]. */
  readonly asides: readonly (readonly [string, string])[];
  /** Ends it; what is not saved stays in the journal. */
  close(): Promise<void>;
}

export type Opening =
  | OpenJob
  /** A table is there, but not for a page that doesn't know its key: its whole address has to be opened. */
  | { readonly kind: 'key needed' }
  | { readonly kind: 'out of reach'; readonly sentence: string };

export interface OpenInput {
  readonly desk: Pick<Desk, 'ask'>;
  /** A job of the browser's own storage; ignored where there is a folder. */
  readonly wanted?: number;
  /** The page's address. */
  readonly at?: string;
}

/** `hidebound table` writes it into the page that it serves. */
function isMarked(): boolean {
  return document.querySelector('meta[name="hidebound-table"]') !== null;
}

/** Opens the folder behind the page where there is one, else a job of the browser's own storage. */
export async function openJob({ desk, wanted, at = document.baseURI }: OpenInput): Promise<Opening> {
  const found = await findTable(at, tableKeys(), isMarked());
  if (found.kind === 'key needed' || found.kind === 'out of reach') return found;
  const database = openDatabase();
  try {
    if (found.kind === 'table') {
      const { key, folder } = found;
      keepKey(key);
      // Two folders of one name may have the same address at different times; their keys differ.
      return await openFrom(folderStore({ at, key }), `folder:${folder}:${key}`, { desk, database });
    }
    return await openFromBrowser({ desk, database, at, wanted });
  } catch (error) {
    return { kind: 'out of reach', sentence: storeErrorOf(error).message };
  }
}

interface OpenWith {
  readonly desk: Pick<Desk, 'ask'>;
  readonly database: Database;
}

async function openFromBrowser(
  input: OpenWith & { readonly at: string; readonly wanted: number | undefined },
): Promise<OpenJob> {
  const { desk, database, at, wanted } = input;
  let job: number;
  try {
    job = await findBrowserJob(database, { desk, at }, wanted);
  } catch (error) {
    return openUnkept(input, at, error);
  }
  const opened = await openFrom(browserStore(database, job), `browser:${job}`, input);
  return { ...opened, browserJob: job };
}

/** No room or no storage at all: one can look around, and save what one makes as a file. */
async function openUnkept(input: OpenWith, at: string, reason: unknown): Promise<OpenJob> {
  const { name, files } = await readDemo({ desk: input.desk, at });
  const read = new Map(await input.desk.ask('readFiles', files));
  const paths = [...read.keys()];
  const store = unkeptStore(name, paths, reason);
  const keeper = createKeeper({
    store,
    journal: noJournal(reason),
    desk: input.desk,
    revisions: new Map(paths.map((path) => [path, UNKEPT])),
  });
  return attended({
    ...input,
    name,
    store,
    keeper,
    id: 'unkept',
    job: { name, files: read },
    left: [],
    asides: [],
  });
}

async function openFrom(store: JobStore, id: string, { desk, database }: OpenWith): Promise<OpenJob> {
  const { name, files: listed } = await store.list();
  const { files, revisions, left } = await readAll(store, desk, listed);
  const journal = await journalFor(database, id);
  const keeper = createKeeper({ store, journal, desk, revisions });
  let job: Job = { name, files };
  const asides: (readonly [string, string])[] = [];
  const stop = keeper.hear({
    onOthers: (edits) => {
      job = withEdits(job, edits);
    },
    onAside: (path, aside) => asides.push([path, aside]),
  });
  await keeper.adopt();
  stop();
  return attended({ name, store, keeper, database, id, job, left, asides });
}

async function journalFor(database: Database, id: string): Promise<Journal> {
  try {
    return await openJournal(database, id);
  } catch (error) {
    return noJournal(error);
  }
}

/** With what goes on for as long as the job is open. */
function attended({
  id,
  ...opened
}: Omit<OpenJob, 'kind' | 'tabs' | 'close' | 'browserJob'> & { readonly id: string }): OpenJob {
  const { keeper, database } = opened;
  const tabs = openTabs(id);
  // The tab that held the pen may have ended with work that was not saved yet.
  const endPen = tabs.penHeld.watch((isHeld) => {
    if (!isHeld) return;
    void keeper.adopt();
    keeper.look();
  });
  const endWarning = warnWhileUnsafe(keeper.state);
  const retry = (): void => keeper.retry();
  addEventListener('online', retry);
  const close = async (): Promise<void> => {
    removeEventListener('online', retry);
    endPen();
    endWarning();
    tabs.close();
    await keeper.close();
    database.close();
  };
  return { kind: 'open', ...opened, tabs, browserJob: undefined, close };
}
