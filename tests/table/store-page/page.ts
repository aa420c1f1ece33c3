import type { JobFile } from '../../../packages/app/src/job/job.js';
import { browserStore } from '../../../packages/app/src/store/browser-store.js';
import {
  binJob,
  createFirstJob,
  createJob,
  fetchBack,
  listBin,
  listJobs,
  renameJob,
  throwAway,
} from '../../../packages/app/src/store/browser-jobs.js';
import { openDatabase } from '../../../packages/app/src/store/database.js';
import { openJournal } from '../../../packages/app/src/store/journal.js';
import { createKeeper } from '../../../packages/app/src/store/keeper.js';
import type { Keeper } from '../../../packages/app/src/store/keeper.js';
import { openTabs } from '../../../packages/app/src/store/tabs.js';
import type { Tabs } from '../../../packages/app/src/store/tabs.js';
import type { Desk } from '../../../packages/app/src/work/desk.js';

/** A desk without a worker: files are texts. */
const desk: Pick<Desk, 'ask'> = {
  ask: (task, input) => {
    if (task === 'writeFile') {
      const { file } = input as unknown as { file: { text: string } };
      return Promise.resolve(new TextEncoder().encode(file.text) as never);
    }
    const files = input as unknown as readonly { path: string; bytes: Uint8Array }[];
    const read = files.map(({ path, bytes }) => [
      path,
      { kind: 'text', text: new TextDecoder().decode(bytes) },
    ]);
    return Promise.resolve(read as never);
  },
};

const database = openDatabase();
let keeper: Keeper | undefined;
let tabs: Tabs | undefined;
const texts = new Map<string, string>();
const asides: (readonly [string, string])[] = [];
/** The last number that this tab was told to be kept. */
let kept = 0;

function raw(files: Readonly<Record<string, string>>) {
  return Object.entries(files).map(([path, text]) => ({ path, bytes: new TextEncoder().encode(text) }));
}

/** What a test does in a page of real Chromium. */
export const storePage = {
  first: async (files: Readonly<Record<string, string>>) =>
    (await createFirstJob(database, 'Satchel', raw(files)))?.name,
  create: async (files: Readonly<Record<string, string>>) =>
    (await createJob(database, 'Satchel', raw(files))).id,
  names: async () => (await listJobs(database)).map(({ name }) => name).sort(),
  binned: async () => (await listBin(database)).map(({ name }) => name),
  rename: (id: number, name: string) => renameJob(database, id, name),
  bin: (id: number) => binJob(database, id),
  fetchBack: (id: number) => fetchBack(database, id),
  throwAway: (id: number) => throwAway(database, id),
  stored: async (job: number) => {
    const store = browserStore(database, job);
    const entries: [string, string][] = [];
    for (const { path } of (await store.list()).files)
      entries.push([path, new TextDecoder().decode((await store.read(path))!.bytes)]);
    return Object.fromEntries(entries);
  },
  before: (job: number, path: string) =>
    database.read(['before'], async (transaction) => {
      const content = await transaction.objectStore('before').get([job, path]);
      return content && new TextDecoder().decode(content.bytes);
    }),
  save: async (job: number, writes: readonly { path: string; base: string | null; text: string }[]) =>
    browserStore(database, job).save(
      writes.map(({ path, base, text }) => ({ path, base, bytes: new TextEncoder().encode(text) })),
    ),
  revision: async (job: number, path: string) => (await browserStore(database, job).read(path))?.revision,
  /** Opens a job as the app does. */
  open: async (job: number) => {
    const store = browserStore(database, job);
    const revisions = new Map<string, string>();
    for (const { path } of (await store.list()).files) {
      const read = (await store.read(path))!;
      revisions.set(path, read.revision);
      texts.set(path, new TextDecoder().decode(read.bytes));
    }
    const journal = await openJournal(database, `browser:${job}`);
    keeper = createKeeper({ store, journal, desk, revisions });
    keeper.hear({
      onOthers: (edits) => {
        for (const [path, file] of edits) {
          if (file?.kind === 'text') texts.set(path, file.text);
          else texts.delete(path);
        }
      },
      onAside: (path, aside) => asides.push([path, aside]),
    });
    await keeper.adopt();
    tabs = openTabs(`browser:${job}`);
    return Object.fromEntries(texts);
  },
  change: async (path: string, text: string) => {
    const file: JobFile = { kind: 'text', text };
    texts.set(path, text);
    keeper!.keep(new Map([[path, file]]));
    await keeper!.idle();
    return keeper!.state.get();
  },
  /** Counts up in a file without end, a change each few milliseconds; `kept` is the last that was told to be kept. */
  count: (path: string, from: number) => {
    let number = from;
    keeper!.state.watch(({ kind }) => {
      if (kind === 'saved' || kind === 'waiting') kept = number;
    });
    setInterval(() => {
      const text = String(++number);
      texts.set(path, text);
      keeper!.keep(new Map([[path, { kind: 'text', text }]]));
    }, 4);
  },
  kept: () => kept,
  idle: () => keeper!.idle(),
  texts: () => Object.fromEntries(texts),
  asides: () => asides,
  /** Changes that no store has heard of, as when the tab ends between journal and store. */
  leaveInJournal: async (job: number, path: string, text: string, base: string) => {
    const journal = await openJournal(database, `browser:${job}`);
    await journal.write([{ order: 1, path, base, file: { kind: 'text', text }, strand: 'x', steps: [] }], []);
  },
  waiting: () => database.read(['changes'], (transaction) => transaction.objectStore('changes').count()),
  penHeld: () => tabs!.penHeld.get(),
  takePen: () => tabs!.takePen(),
};

declare global {
  interface Window {
    storePage: typeof storePage;
  }
}
window.storePage = storePage;
