import type { History } from '../job/history.js';
import { NO_HISTORY, changeJob, redoStep, undoStep } from '../job/history.js';
import type { Changed } from '../job/history.js';
import { withEdits } from '../job/job.js';
import type { Edits, Job } from '../job/job.js';
import type { Keeper } from '../store/keeper.js';
import type { Desk } from '../work/desk.js';
import { WorkError } from '../work/task.js';
import { measuresFor } from '../words/measures.js';
import type { Measures } from '../words/measures.js';
import { loadSentences } from '../words/sentences.js';
import { toldError } from '../words/told.js';
import type { Told, WriteFinding } from '../words/told.js';
import { loadWords, wordsFor } from '../words/words.js';
import type { WordKey, WordParams, WordTable } from '../words/words.js';
import { cell } from './cell.js';
import type { Cell, Watched } from './cell.js';
import { FIRST_PLACE } from './place.js';
import type { Place, PlaceName } from './place.js';
import type { Prefs } from './prefs.js';
import type { KeepState } from '../store/keep-state.js';
import type { Session } from './session.js';
import { settlePlace } from './settle-place.js';

/** Something that is told once and can be put away. */
export interface Notice {
  readonly id: number;
  readonly tone: 'calm' | 'warning' | 'error';
  readonly text: string;
  readonly action?: { readonly label: string; readonly run: () => void };
}

/** All that the frame and the places of the job share. */
export interface App {
  readonly job: Watched<Job>;
  readonly history: Watched<History>;
  readonly place: Cell<Place>;
  readonly prefs: Cell<Prefs>;
  /** How safe the work is. */
  readonly saved: Watched<KeepState>;
  readonly session: Session;
  readonly notices: Watched<readonly Notice[]>;
  /** All that was told on this visit, the last first; the oldest are forgotten when there are many. */
  readonly said: Watched<readonly Notice[]>;
  readonly desk: Desk;
  /**
   * One change, one step to undo. The label stands after "Undo:". Saved at once. A tab that only looks on changes
   * nothing, and says so.
   */
  change(label: string, edits: Edits): void;
  /** Changes made elsewhere (another tab, another program): no step to undo. */
  takeOver(edits: Edits): void;
  undo(): void;
  redo(): void;
  /** Work that ends in a change soon: undoing waits for it, so that it takes back what was done last. */
  changesAfter(work: Promise<unknown>): void;
  /** The job's name as it is shown. */
  rename(name: string): void;
  goTo(name: PlaceName): void;
  say(key: WordKey, params?: WordParams): string;
  /** What a package found, in the language of the screen. */
  sentence(told: Told): string;
  measures(): Measures;
  tell(notice: Omit<Notice, 'id'>): void;
  /** Tells what a worker or a package refused, in its own words. */
  tellFailure(error: unknown): void;
  putAway(id: number): void;
  /** The panels are drawn anew: for state of a place's own that no cell holds. */
  redraw(): void;
  readonly redraws: Watched<number>;
  /** Loads the words of a language before they are used. */
  useLanguage(): Promise<void>;
}

export interface AppInput {
  readonly job: Job;
  readonly prefs: Cell<Prefs>;
  readonly words: WordTable;
  readonly desk: Desk;
  readonly session: Session;
  readonly keeper: Pick<Keeper, 'state' | 'keep'>;
}

const MOST_SAID = 50;

export function createApp({ job: first, prefs, words: firstWords, desk, session, keeper }: AppInput): App {
  const job = cell(first);
  const history = cell(NO_HISTORY);
  const place = cell(settlePlace(FIRST_PLACE, first));
  const notices = cell<readonly Notice[]>([]);
  const said = cell<readonly Notice[]>([]);
  const redraws = cell(0);
  let words = firstWords;
  let write: WriteFinding | undefined;
  let measures = measuresFor(prefs.get(), navigator.languages);
  let lastNotice = 0;
  prefs.watch((value) => {
    measures = measuresFor(value, navigator.languages);
  });

  const tellLookingOn = (): void =>
    app.tell({
      tone: 'warning',
      text: app.say('shell.looksOn'),
      action: { label: app.say('shell.workHere'), run: () => session.takePen() },
    });
  const take = (changed: Changed | undefined): void => {
    if (changed === undefined) return;
    if (!session.penHeld.get()) {
      tellLookingOn();
      return;
    }
    keeper.keep(changed.edits);
    history.set(changed.history);
    job.set(changed.job);
    place.update((now) => settlePlace(now, changed.job));
  };

  let working: Promise<unknown> | undefined;
  const afterWork = (act: () => void): void => {
    if (working === undefined) act();
    else void working.then(act);
  };

  const app: App = {
    job,
    history,
    place,
    prefs,
    saved: keeper.state,
    session,
    notices,
    said,
    desk,
    redraws,
    change: (label, edits) => take(changeJob(job.get(), history.get(), label, edits)),
    takeOver: (edits) => {
      job.update((now) => withEdits(now, edits));
      place.update((now) => settlePlace(now, job.get()));
    },
    undo: () => afterWork(() => take(undoStep(job.get(), history.get()))),
    redo: () => afterWork(() => take(redoStep(job.get(), history.get()))),
    changesAfter: (work) => {
      const all = Promise.allSettled([working, work]);
      working = all;
      void all.then(() => {
        if (working === all) working = undefined;
      });
    },
    rename: (name) => job.update((now) => ({ ...now, name })),
    goTo: (name) => place.update((now) => ({ ...now, name })),
    say: (key, params) => wordsFor(words, measures.locale, key, params),
    sentence: ({ sentence, finding }) => (finding && write?.(finding)) ?? sentence,
    measures: () => measures,
    tell: (notice) => {
      const told: Notice = { ...notice, id: ++lastNotice };
      // What is told again is told once.
      const others = (all: readonly Notice[]) => all.filter(({ text }) => text !== told.text);
      said.update((all) => [told, ...others(all)].slice(0, MOST_SAID));
      notices.update((all) => [...others(all), told]);
    },
    tellFailure: (error) => {
      if (error instanceof WorkError && error.failure.code === 'stopped') return;
      const sentence = app.sentence(toldError(error));
      const isRefusal = error instanceof WorkError && error.failure.isRefusal;
      app.tell({ tone: 'error', text: isRefusal ? sentence : app.say('shell.failed', { sentence }) });
    },
    putAway: (id) => notices.update((all) => all.filter((notice) => notice.id !== id)),
    redraw: () => redraws.update((count) => count + 1),
    useLanguage: async () => {
      const { language } = prefs.get();
      const locale = measuresFor(prefs.get(), navigator.languages).locale;
      [words, write] = await Promise.all([loadWords(language), loadSentences(language, locale)]);
      app.redraw();
    },
  };
  return app;
}
