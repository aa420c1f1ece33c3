import { createApp } from './app/app.js';
import type { App } from './app/app.js';
import type { Cell } from './app/cell.js';
import { keptPrefs } from './app/prefs.js';
import type { Prefs } from './app/prefs.js';
import { filesOfKind } from './job/job.js';
import { openShell } from './shell/shell.js';
import { letCalmNoticesLeave } from './shell/calm-notices.js';
import { failurePage } from './shell/failure-page.js';
import { keepOffline } from './shell/keep-offline.js';
import { refuseStrayFiles } from './shell/receive-files.js';
import { startPage } from './shell/start-page.js';
import { openJob } from './store/open-job.js';
import type { OpenJob } from './store/open-job.js';
import { openDesk } from './work/desk.js';
import { loadWords } from './words/words.js';

/** The first view stands by then, even on a slow line. */
const LEISURE_AFTER_MS = 1500;

await start();

/** The table, or a page that says why there is none, with the way to take one's work along. */
async function start(): Promise<void> {
  const root = document.querySelector<HTMLElement>('#table')!;
  const prefs = keptPrefs();
  try {
    await open(root, prefs);
  } catch (error) {
    console.error(error);
    await failurePage(root, await loadWords(prefs.get().language), prefs.get(), error);
  }
}

async function open(root: HTMLElement, prefs: Cell<Prefs>): Promise<void> {
  refuseStrayFiles();
  const desk = openDesk();
  const [words, opened] = await Promise.all([loadWords(prefs.get().language), openJob({ desk })]);
  if (opened.kind !== 'open') {
    startPage(root, words, prefs.get(), opened);
    return;
  }
  const { job, keeper, tabs, database, browserJob, store } = opened;
  const session = {
    kind: store.kind,
    database,
    browserJob,
    penHeld: tabs.penHeld,
    takePen: () => tabs.takePen(),
    retry: () => keeper.retry(),
  };
  const app = createApp({ job, prefs, words, desk, session, keeper });
  openShell(app, root);
  letCalmNoticesLeave(app);
  listen(app, opened);
  // The packages' sentences in her language are more than all other words: a first view goes without them.
  await leisure();
  await app.useLanguage().catch((error: unknown) => app.tellFailure(error));
  tellWhatWasFound(app, opened);
  // A table has its own files at hand; the app by itself opens without a network.
  if (session.kind === 'browser') keepOffline();
}

function leisure(): Promise<unknown> {
  return new Promise((done) => setTimeout(done, LEISURE_AFTER_MS));
}

/** What goes on elsewhere is shown here. */
function listen(app: App, { keeper, asides }: OpenJob): void {
  const tellAside = (path: string, aside: string): void =>
    app.tell({ tone: 'warning', text: app.say('shell.aside', { path, aside }) });
  keeper.hear({
    onOthers: (edits) => {
      app.takeOver(edits);
      app.tell({ tone: 'calm', text: app.say('shell.changedElsewhere', { n: edits.size }) });
    },
    onAside: tellAside,
  });
  for (const [path, aside] of asides) tellAside(path, aside);
}

/** What of the job could not be read. */
function tellWhatWasFound(app: App, { left }: OpenJob): void {
  for (const each of left) {
    const sentence = app.sentence(each);
    app.tell({ tone: 'warning', text: app.say('shell.left', { path: each.path, sentence }) });
  }
  const unread = filesOfKind(app.job.get(), 'unread');
  if (unread.length === 0) return;
  const sentence = app.sentence(unread[0]![1]);
  app.tell({ tone: 'warning', text: app.say('shell.unread', { n: unread.length, sentence }) });
}
