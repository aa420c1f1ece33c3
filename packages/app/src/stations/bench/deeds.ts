import { pieceCopyKey } from '@hidebound/leather';
import type { CopyState, Layout } from '@hidebound/leather';
import type { App } from '../../app/app.js';
import { layoutAt } from '../../job/job.js';
import { PLAIN_EFFECTS } from '../hide/marks/logic/flaws.js';
import { hidesOf } from '../lay/present.js';
import { startRun } from '../lay/run.js';
import { layTable } from '../lay/table.js';
import { benchNow, hidePathOf } from './bench-now.js';
import { USUAL_SPOT_MM, USUAL_STROKE_MM } from './logic/found-shape.js';
import { neighbour, nextOpen } from './logic/order-of-work.js';
import type { WorkItem } from './logic/order-of-work.js';
import { benchTable } from './table.js';

/** At the bench someone stands and waits: a few pieces find their place sooner than a whole layout does. */
const LOOK_SECONDS = 8;

/** Ticks the piece in front. A cut one makes way for the next. */
export function tickFront(app: App, to: CopyState): void {
  const table = benchTable(app);
  const now = benchNow(app);
  const item = now?.item;
  if (now === undefined || item?.kind !== 'piece' || item.placement.state === to) return;
  const { key, number, placement } = item;
  table.pending.update((all) => new Map(all).set(key, to));
  table.remark.set({ kind: 'ticked', number, piece: placement.piece, to });
  table.front.set(to === 'cut' ? nextOpen(benchNow(app)!.items, key)?.key : key);
  const label = app.say(`bench.change.${to}`, { number, piece: placement.piece });
  const { path } = now;
  table.queue = table.queue.then(async () => {
    try {
      const layout = layoutAt(app.job.get(), path);
      if (layout === undefined) return;
      const ticked = await table.desk.ask('tick', {
        layout,
        hides: hidesOf(app, { path, layout }),
        number,
        to,
      });
      app.change(label, new Map([[path, { kind: 'layout', layout: ticked.layout }]]));
    } catch (error) {
      table.remark.set(undefined);
      app.tellFailure(error);
    } finally {
      table.pending.update((all) => new Map([...all].filter(([each]) => each !== key)));
    }
  });
  app.changesAfter(table.queue);
}

/** Goes on without ticking: to what is to be done next, or at the end of it to the neighbour. */
export function goNext(app: App): boolean {
  const now = benchNow(app);
  if (now?.item === undefined) return false;
  const { items, item } = now;
  if (goTo(app, nextOpen(items, item.key) ?? neighbour(items, item.key, 1))) return true;
  // Behind the last one lies the end, where it is told what is left to do.
  benchTable(app).front.set(undefined);
  return true;
}

/** One thing back in the order of cutting, also to what is done. */
export function goBack(app: App): boolean {
  const now = benchNow(app);
  if (now === undefined) return false;
  return goTo(app, now.item === undefined ? now.items.at(-1) : neighbour(now.items, now.item.key, -1));
}

export function goTo(app: App, item: WorkItem | undefined): boolean {
  if (item === undefined) return false;
  const table = benchTable(app);
  table.remark.set(undefined);
  table.front.set(item.key);
  return true;
}

/** Finds a new place for what lies nowhere; all else stays where it is. */
export async function layMissing(app: App): Promise<void> {
  const table = benchTable(app);
  await table.queue;
  const before = benchNow(app)?.layout;
  if (before === undefined || before.unplaced.length === 0) return;
  table.remark.set(undefined);
  await startRun(app, layTable(app), 'missing', LOOK_SECONDS);
  const after = benchNow(app);
  if (after === undefined || after.layout === before) return;
  const found = firstLaid(before, after.layout);
  const item = after.items.find(({ key }) => key === found);
  if (item?.kind !== 'piece') {
    table.remark.set({ kind: 'no room', n: after.layout.unplaced.length });
    return;
  }
  table.front.set(item.key);
  table.remark.set({ kind: 'laid', number: item.number, piece: item.placement.piece, hide: item.hide });
}

/** The key of a copy that had no place before. */
function firstLaid(before: Layout, after: Layout): string | undefined {
  const still = new Set(after.unplaced.map(pieceCopyKey));
  return before.unplaced.map(pieceCopyKey).find((key) => !still.has(key));
}

/** Begins to mark a flaw on the hide in front. */
export function beginFlaw(app: App): boolean {
  const item = benchNow(app)?.item;
  if (item === undefined) return false;
  benchTable(app).flaw.set({
    hide: item.hide,
    shape: undefined,
    effect: 'never',
    spotMm: USUAL_SPOT_MM,
    strokeMm: USUAL_STROKE_MM,
  });
  return true;
}

/** Writes the flaw onto its hide; pieces that can't be cut there any more wait for being laid again. */
export async function keepFlaw(app: App): Promise<void> {
  const table = benchTable(app);
  const flaw = table.flaw.get();
  if (flaw?.shape === undefined) return;
  const { shape, effect } = flaw;
  table.flaw.set(undefined);
  table.remark.set({ kind: 'marking' });
  await table.queue;
  const now = benchNow(app);
  const path = now === undefined ? undefined : hidePathOf(app, now, flaw.hide);
  if (now === undefined || path === undefined) {
    table.remark.set(undefined);
    return;
  }
  const { layout } = now;
  try {
    const done = await table.desk.ask('flaw', {
      layout,
      hides: hidesOf(app, { path: now.path, layout }),
      hide: flaw.hide,
      flaw: { shape, effect: PLAIN_EFFECTS[effect], text: app.say('bench.flaw.found') },
    });
    app.change(
      app.say('bench.change.flaw'),
      new Map([
        [path, { kind: 'hide', hide: done.hide } as const],
        [now.path, { kind: 'layout', layout: done.layout } as const],
      ]),
    );
    table.remark.set({ kind: 'flaw', lifted: done.lifted });
  } catch (error) {
    table.remark.set(undefined);
    app.tellFailure(error);
  }
}
