import type { Article, OrderFile, OrderPiece, PatternReading } from '@hidebound/leather';
import type { App } from '../../app/app.js';
import type { Point } from '@hidebound/geometry';
import { filesOfKind, orderAt, pathBeside } from '../../job/job.js';
import type { Edits, FileOf, JobFile } from '../../job/job.js';
import { namedFrom } from '../../work/patterns/named-from.js';
import { openPatterns } from '../../work/patterns.js';
import type { PatternDesk } from '../../work/patterns.js';
import type { Board, BoardInput, PatternShown, ShownSuit } from '../../work/patterns-tasks.js';
import { readingOf } from './order/readings.js';
import { toldError } from '../../words/told.js';
import type { Told } from '../../words/told.js';

/** What lies in front of her: all pieces, one of them, pattern files that were brought in, or a form. */
export type Chosen =
  | { readonly kind: 'all' }
  | { readonly kind: 'piece'; readonly article: number; readonly piece: number }
  | { readonly kind: 'patterns'; readonly paths: readonly string[] }
  | { readonly kind: 'numbers' };

/** A place of a pattern file, in its own frame, mm. */
export interface Measured {
  readonly path: string;
  readonly from: Point;
  readonly to?: Point;
}

/** What a new article is called, until its first piece makes it one. */
export interface Draft {
  readonly name: string;
  readonly goods: string;
  readonly sets: number;
}

/** What this place remembers while the visit lasts. Nothing of it belongs to the job. */
export interface Bench {
  chosen: Chosen;
  board: Board | undefined;
  /** How patterns are read, as it was said before there was an order to write it to. */
  readings: readonly PatternReading[];
  /** The read patterns, by path. */
  readonly shown: Map<string, { readonly key: string; readonly from: JobFile; shown?: PatternShown }>;
  /** Numbers of all pages of a file, from when all of them were read. */
  readonly allPages: Map<string, readonly number[]>;
  suit: readonly ShownSuit[] | 'asked' | undefined;
  suitRefused: Told | undefined;
  measured: Measured | undefined;
  /** How long what was measured is in truth, as far as it was said. */
  trueMm: number | undefined;
  tool: 'measure' | 'face' | undefined;
  /** Pieces of patterns that are not to be taken: "path#name". */
  readonly left: Set<string>;
  draft: Draft | undefined;
  /** Article that new pieces go to; undefined: a new one. */
  into: number | undefined;
  leather: string | undefined;
  /** The piece by numbers that is being made. */
  numbers: OrderPiece | undefined;
  /** Lines painted around what is seen, in the frame of the chosen piece, mm. */
  rings: readonly (readonly Point[])[];
  readonly desk: PatternDesk;
  boardKey: readonly unknown[];
}

const benches = new WeakMap<App, Bench>();

export function benchOf(app: App): Bench {
  const known = benches.get(app);
  if (known !== undefined) return known;
  const bench: Bench = {
    chosen: { kind: 'all' },
    board: undefined,
    readings: [],
    shown: new Map(),
    allPages: new Map(),
    suit: undefined,
    suitRefused: undefined,
    measured: undefined,
    trueMm: undefined,
    tool: undefined,
    left: new Set(),
    draft: undefined,
    into: 0,
    leather: undefined,
    numbers: undefined,
    rings: [],
    desk: openPatterns(),
    boardKey: [],
  };
  benches.set(app, bench);
  return bench;
}

export function choose(app: App, chosen: Chosen): void {
  const bench = benchOf(app);
  bench.chosen = chosen;
  bench.tool = undefined;
  bench.measured = undefined;
  bench.rings = [];
  app.redraw();
}

export function orderOf(app: App): OrderFile | undefined {
  return orderAt(app.job.get(), app.place.get().order);
}

/** Changes the order as one step; an order of nothing is taken away. */
export function editOrder(
  app: App,
  label: string,
  edit: (order: OrderFile) => OrderFile | undefined,
  more: Edits = new Map(),
): void {
  const path = app.place.get().order;
  const order = orderOf(app);
  if (path === undefined || order === undefined) return;
  const next = edit(order);
  const file: JobFile | undefined = next === undefined ? undefined : { kind: 'order', order: next };
  app.change(label, new Map([...more, [path, next === order ? app.job.get().files.get(path) : file]]));
}

/** The article that an order's reference names. */
export function articleFile(app: App, file: string): Article | undefined {
  const path = app.place.get().order;
  const found = path === undefined ? undefined : app.job.get().files.get(pathBeside(path, file));
  return found?.kind === 'article' ? found.article : undefined;
}

/** As the order names a file of the job. */
export function nameInOrder(app: App, path: string): string {
  const order = app.place.get().order;
  return order === undefined ? path : namedFrom(order, path);
}

export function boardInput(app: App): BoardInput | undefined {
  const path = app.place.get().order;
  if (path === undefined) return undefined;
  const job = app.job.get();
  const kinds = new Set<JobFile['kind']>(['order', 'article', 'text', 'hide']);
  const { desk } = benchOf(app);
  return {
    path,
    files: new Map([...job.files].filter(([, file]) => kinds.has(file.kind))),
    patterns: filesOfKind(job, 'pattern').map(([at, file]) => desk.known(at, file)),
  };
}

/** Reads the order's pieces anew where something changed that they come from. */
export function readBoardSoon(app: App): void {
  const bench = benchOf(app);
  const { files } = app.job.get();
  const kinds = new Set<JobFile['kind']>(['article', 'text', 'pattern']);
  const path = app.place.get().order;
  const key = [path, orderOf(app), ...[...files].flatMap((each) => (kinds.has(each[1].kind) ? each : []))];
  const isSame = key.length === bench.boardKey.length && key.every((each, i) => each === bench.boardKey[i]);
  if (isSame) return;
  bench.boardKey = key;
  bench.suit = undefined;
  const input = boardInput(app);
  if (input === undefined || orderOf(app) === undefined) {
    bench.board = undefined;
    return;
  }
  bench.desk.ask('readBoard', input).then(
    (board) => {
      if (bench.boardKey !== key) return;
      bench.board = board;
      app.redraw();
    },
    (error: unknown) => app.tellFailure(error),
  );
}

/** A pattern as the order has it read; undefined while it is being read. */
export function shownPattern(app: App, path: string): PatternShown | undefined {
  const bench = benchOf(app);
  const file = app.job.get().files.get(path);
  if (file?.kind !== 'pattern') return undefined;
  const reading = readingFor(app, path);
  const key = JSON.stringify(reading);
  const known = bench.shown.get(path);
  if (known !== undefined && known.key === key && known.from === file) return known.shown;
  // What was seen before stays until it is read anew.
  const entry = { key, from: file, ...(known?.shown === undefined ? {} : { shown: known.shown }) };
  bench.shown.set(path, entry);
  void readShown(app, path, file, reading);
  return entry.shown;
}

async function readShown(
  app: App,
  path: string,
  file: FileOf<'pattern'>,
  reading: PatternReading,
): Promise<void> {
  const { desk, shown } = benchOf(app);
  try {
    const answer = await desk.ask('readPattern', { pattern: desk.known(path, file), reading });
    const entry = shown.get(path);
    if (entry?.from === file && entry.key === JSON.stringify(reading)) entry.shown = answer;
    app.redraw();
  } catch (error) {
    app.tellFailure(error);
  }
}

export function readingFor(app: App, path: string): PatternReading {
  const order = orderOf(app);
  const file = nameInOrder(app, path);
  return readingOf(order ?? { patterns: benchOf(app).readings }, file);
}

export function askSuit(app: App): void {
  const bench = benchOf(app);
  const input = boardInput(app);
  if (bench.suit !== undefined || input === undefined) return;
  bench.suit = 'asked';
  bench.suitRefused = undefined;
  bench.desk.ask('suit', input).then(
    (suit) => {
      bench.suit = suit;
      app.redraw();
    },
    (error: unknown) => {
      bench.suit = [];
      bench.suitRefused = toldError(error);
      app.redraw();
    },
  );
}
