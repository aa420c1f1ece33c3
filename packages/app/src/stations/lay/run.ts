import type { Layout } from '@hidebound/leather';
import type { App } from '../../app/app.js';
import { filesOfKind } from '../../job/job.js';
import type { JobFile } from '../../job/job.js';
import type { LayOutput, LayProgress, LayWish } from '../../work/lay-tasks.js';
import { layoutPathOf } from '../../work/laying/layout-paths.js';
import { readOrderInFront } from './order-read.js';
import { presentLayout } from './present.js';
import type { Present } from './present.js';
import type { CurvePoint, LayTable, Run } from './table.js';
import { isWorse } from './worse.js';

/**
 * Lays, until the time is over or someone stops it; the layout is written when it ends. Time in seconds; undefined: until
 * stopped.
 */
export async function startRun(
  app: App,
  table: LayTable,
  wish: LayWish,
  seconds: number | undefined = table.seconds.get(),
): Promise<void> {
  const { order: orderPath } = app.place.get();
  if (orderPath === undefined || table.run.get() !== undefined) return;
  const present = presentLayout(app);
  const { port1: handle, port2: stop } = new MessageChannel();
  table.hand.set(undefined);
  table.end.set(undefined);
  table.run.set({
    wish,
    layoutPath: present?.path,
    pieces: [],
    elapsedMs: 0,
    placed: 0,
    asked: 0,
    curve: [],
    placements: undefined,
    beforeMm2: present?.layout.yield.total.usedUpMm2,
    beforeLaid: present?.layout.placements.length,
    isBeforeGood: isGood(table, present),
    isStopping: false,
    stop: () => {
      table.run.update((now) => (now === undefined ? now : { ...now, isStopping: true }));
      handle.postMessage('stop');
    },
  });
  try {
    const read = await readOrderInFront(app)!;
    const output = await table.layDesk.ask(
      'lay',
      {
        wish,
        orderPath,
        read,
        files: filesToLay(app.job.get().files, present?.path),
        ...(present === undefined ? {} : { layoutPath: present.path }),
        ...(seconds === undefined ? {} : { seconds }),
        workers: Math.max(1, (navigator.hardwareConcurrency || 2) - 1),
        stop,
      },
      { onProgress: (progress) => hear(table, progress), handOver: [stop] },
    );
    finish(app, table, output, present?.path ?? layoutPathOf(orderPath));
  } catch (error) {
    app.tellFailure(error);
  } finally {
    handle.close();
    table.run.set(undefined);
  }
}

/** Pictures and patterns are not needed any more; of layouts only the one of which something stays. */
function filesToLay(files: ReadonlyMap<string, JobFile>, layout: string | undefined) {
  return new Map(
    [...files].filter(([path, { kind }]) => kind === 'hide' || kind === 'text' || path === layout),
  );
}

function hear(table: LayTable, progress: LayProgress): void {
  table.run.update((run) => (run === undefined ? run : runAfter(run, progress)));
}

export function runAfter(run: Run, progress: LayProgress): Run {
  switch (progress.kind) {
    case 'begun':
      return { ...run, pieces: progress.pieces };
    case 'better':
      return { ...run, placements: progress.placements };
    case 'going': {
      const { elapsedMs, placed, asked, usedUpMm2 } = progress;
      return { ...run, elapsedMs, placed, asked, curve: withPoint(run.curve, { elapsedMs, usedUpMm2 }) };
    }
  }
}

/** Where nothing changed the last point is moved on: the curve has a point for each change, and one for now. */
function withPoint(curve: readonly CurvePoint[], point: CurvePoint): readonly CurvePoint[] {
  if (point.usedUpMm2 === 0) return curve;
  const [before, last] = [curve.at(-2), curve.at(-1)];
  const isLevel = before?.usedUpMm2 === point.usedUpMm2 && last?.usedUpMm2 === point.usedUpMm2;
  return isLevel ? [...curve.slice(0, -1), point] : [...curve, point];
}

function finish(app: App, table: LayTable, output: LayOutput, path: string): void {
  const { layout, elapsedMs, endedEarly } = output;
  const run = table.run.get()!;
  const { wish, curve, beforeMm2, beforeLaid } = run;
  const worse = layout !== undefined && isWorse(run, layout) ? layout : undefined;
  table.end.set({
    wish,
    found: layout !== undefined,
    elapsedMs,
    endedEarly,
    curve,
    beforeMm2,
    beforeLaid,
    nowMm2: layout?.yield.total.usedUpMm2,
    nowLaid: layout?.placements.length,
    worse,
  });
  if (layout !== undefined && worse === undefined) takeLayout(app, wish, path, layout);
}

function takeLayout(app: App, wish: LayWish, path: string, layout: Layout): void {
  app.change(
    app.say(`lay.change.${wish === 'go on' ? 'goOn' : wish}`),
    new Map([[path, { kind: 'layout', layout }]]),
  );
  app.place.update((now) => ({ ...now, layout: path }));
  showHideWithPieces(app);
}

/** The one that was found worse is taken all the same. */
export function takeWorse(app: App, table: LayTable): void {
  const end = table.end.get();
  const path = presentLayout(app)?.path;
  if (end?.worse === undefined || path === undefined) return;
  takeLayout(app, end.wish, path, end.worse);
  table.end.set({ ...end, worse: undefined });
}

function isGood(table: LayTable, present: Present | undefined): boolean {
  const looked = table.looked.get();
  if (looked === undefined || looked.layout !== present?.layout) return false;
  const { verdict, isOlderOrder, changedHides } = looked.found;
  return verdict.proven && !isOlderOrder && changedHides.length === 0;
}

/** The hide in front is one that pieces came to lie on. */
function showHideWithPieces(app: App): void {
  const { layout } = presentLayout(app)!;
  const used = new Set(layout.placements.map(({ hide }) => hide));
  const hides = filesOfKind(app.job.get(), 'hide').filter(([, { hide }]) => used.has(hide.id));
  const isShown = hides.some(([path]) => path === app.place.get().hide);
  const first = hides.find(([, { hide }]) => hide.id === layout.hides.find(({ id }) => used.has(id))?.id);
  if (!isShown && first !== undefined) app.place.update((now) => ({ ...now, hide: first[0] }));
}
