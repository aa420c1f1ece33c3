import type { TrialRounds } from '@hidebound/leather';
import type { App } from '../../app/app.js';
import { WorkError } from '../../work/task.js';
import { openMakeBench } from '../../work/make.js';
import type { MakeBench } from '../../work/make.js';
import type { MadeSheet, MakeChoices, MakeWish, SheetName } from '../../work/make-tasks.js';
import { firstChoices } from './first-choices.js';
import { missingFor, sheetRow } from './sheets.js';
import { jobFor } from './job-for.js';
import { toldError } from '../../words/told.js';

/** A sheet that was drawn, with addresses for its pages. */
export interface ShownSheet {
  readonly made: MadeSheet;
  readonly urls: readonly string[];
}

export interface Trying {
  readonly end: AbortController;
  readonly startedMs: number;
  readonly trials: number;
}

/** What lies on the bench of sheets in this visit. */
export interface MakeTable {
  readonly bench: MakeBench;
  sheet: SheetName | undefined;
  choices: MakeChoices;
  shown: ShownSheet | undefined;
  /** Why the sheet could not be made. */
  refusal: Error | undefined;
  isDrawing: boolean;
  page: number;
  isText: boolean;
  /** Of the PDF that is ready to be printed. */
  printUrl: string | undefined;
  isPrinting: boolean;
  isSaving: boolean;
  /** The warning about scaling was checked off in this visit. */
  isScaleMinded: boolean;
  rounds: TrialRounds | undefined;
  wasStopped: boolean;
  trying: Trying | undefined;
  /** The wish that was drawn last. */
  drawn: MakeWish | undefined;
}

const tables = new WeakMap<App, MakeTable>();

export function makeTable(app: App): MakeTable {
  const known = tables.get(app);
  if (known !== undefined) return known;
  const table: MakeTable = {
    bench: openMakeBench(),
    sheet: undefined,
    choices: firstChoices(app.measures()),
    shown: undefined,
    refusal: undefined,
    isDrawing: false,
    page: 0,
    isText: false,
    printUrl: undefined,
    isPrinting: false,
    isSaving: false,
    isScaleMinded: false,
    rounds: undefined,
    wasStopped: false,
    trying: undefined,
    drawn: undefined,
  };
  tables.set(app, table);
  app.job.watch(() => drawAgain(app));
  app.place.watch(() => drawAgain(app));
  return table;
}

/** Takes a sheet in hand, or lays it away. */
export function chooseSheet(app: App, sheet: SheetName | undefined): void {
  const table = makeTable(app);
  table.sheet = sheet;
  table.page = 0;
  layAway(table);
  table.drawn = undefined;
  drawAgain(app);
  app.redraw();
}

export function choose(app: App, change: Partial<MakeChoices>): void {
  const table = makeTable(app);
  table.choices = { ...table.choices, ...change };
  drawAgain(app);
  app.redraw();
}

/** What is asked for now; undefined where no sheet is in hand or something is missing for it. */
export function wishOf(app: App): MakeWish | undefined {
  const { sheet, choices, rounds, wasStopped } = makeTable(app);
  if (sheet === undefined || missingFor(app, sheetRow(sheet)) !== undefined) return undefined;
  const job = jobFor(app, { sheet, choices });
  const tried = sheet === 'buying' && rounds !== undefined ? { rounds, wasStopped } : {};
  return { sheet, job, choices, ...tried };
}

/** Draws what is in hand, if anything about it changed; what is asked while the worker draws is drawn next. */
export function drawAgain(app: App): void {
  const table = makeTable(app);
  if (app.place.get().name !== 'make' || table.isDrawing) return;
  const wish = wishOf(app);
  if (wish === undefined || (table.drawn !== undefined && isSameWish(table.drawn, wish))) return;
  if (
    table.drawn !== undefined &&
    table.drawn.job.files.get(wish.job.order ?? '') !== wish.job.files.get(wish.job.order ?? '')
  ) {
    // Trials were for the order as it was.
    table.rounds = undefined;
    table.trying?.end.abort();
  }
  table.drawn = wish;
  table.isDrawing = true;
  layAwayPrint(table);
  table.bench.ask('draw', wish).then(
    (made) => drew(app, wish, made),
    (error: unknown) => drew(app, wish, error),
  );
}

function drew(app: App, wish: MakeWish, outcome: unknown): void {
  const table = makeTable(app);
  table.isDrawing = false;
  if (table.sheet === wish.sheet) {
    layAway(table);
    if (outcome instanceof Error) table.refusal = outcome;
    else {
      const made = outcome as MadeSheet;
      table.shown = { made, urls: made.pages.map(({ svg }) => urlOf(svg, 'image/svg+xml')) };
      table.page = Math.min(table.page, Math.max(0, made.pages.length - 1));
    }
  }
  app.redraw();
  drawAgain(app);
}

/** In the language of the screen. */
export function refusalWords(app: App, error: Error): string {
  const isRefusal = error instanceof WorkError && error.failure.isRefusal;
  const sentence = app.sentence(toldError(error));
  return isRefusal ? sentence : app.say('shell.failed', { sentence });
}

export function urlOf(content: string | Uint8Array, type: string): string {
  const part = typeof content === 'string' ? content : content.slice();
  return URL.createObjectURL(new Blob([part], { type }));
}

function layAway(table: MakeTable): void {
  for (const url of table.shown?.urls ?? []) URL.revokeObjectURL(url);
  table.shown = undefined;
  table.refusal = undefined;
  layAwayPrint(table);
}

export function layAwayPrint(table: MakeTable): void {
  if (table.printUrl !== undefined) URL.revokeObjectURL(table.printUrl);
  table.printUrl = undefined;
  table.isPrinting = false;
}

function isSameWish(one: MakeWish, other: MakeWish): boolean {
  return (
    one.sheet === other.sheet &&
    one.choices === other.choices &&
    one.rounds === other.rounds &&
    one.wasStopped === other.wasStopped &&
    one.job.order === other.job.order &&
    one.job.layout === other.job.layout &&
    one.job.files.size === other.job.files.size &&
    [...one.job.files].every(([path, file]) => other.job.files.get(path) === file)
  );
}
