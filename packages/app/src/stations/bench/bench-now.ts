import { pieceCopyKey } from '@hidebound/leather';
import type { CopyState, Hide, Layout } from '@hidebound/leather';
import type { App } from '../../app/app.js';
import { hideAt, pathBeside } from '../../job/job.js';
import { presentLayout } from '../lay/present.js';
import { nextOpen, progressOf, workItems } from './logic/order-of-work.js';
import type { Progress, WorkItem } from './logic/order-of-work.js';
import { benchTable } from './table.js';

/** What is worked on at the bench. */
export interface BenchNow {
  readonly path: string;
  /** With the ticks that are under way. */
  readonly layout: Layout;
  readonly items: readonly WorkItem[];
  /** Undefined where all is done. */
  readonly item: WorkItem | undefined;
  readonly progress: Progress;
}

interface Worked {
  readonly pending: ReadonlyMap<string, CopyState>;
  readonly layout: Layout;
  readonly items: readonly WorkItem[];
  readonly progress: Progress;
}

const worked = new WeakMap<Layout, Worked>();

export function benchNow(app: App): BenchNow | undefined {
  const present = presentLayout(app);
  if (present === undefined) return undefined;
  const { front, pending } = benchTable(app);
  const { layout, items, progress } = workedOut(present.layout, pending.get());
  const key = front.get();
  const item = items.find((each) => each.key === key) ?? nextOpen(items, undefined);
  return { path: present.path, layout, items, item, progress };
}

function workedOut(own: Layout, pending: ReadonlyMap<string, CopyState>): Worked {
  const known = worked.get(own);
  if (known?.pending === pending) return known;
  const layout = withPending(own, pending);
  const made = { pending, layout, items: workItems(layout), progress: progressOf(layout) };
  worked.set(own, made);
  return made;
}

function withPending(layout: Layout, pending: ReadonlyMap<string, CopyState>): Layout {
  if (pending.size === 0) return layout;
  const placements = layout.placements.map((placement) => {
    const state = placement.state === 'spoiled' ? undefined : pending.get(pieceCopyKey(placement));
    return state === undefined ? placement : { ...placement, state };
  });
  return { ...layout, placements };
}

/** The path of a layout's hide; undefined where the job does not have it. */
export function hidePathOf(
  app: App,
  { path, layout }: Pick<BenchNow, 'path' | 'layout'>,
  id: string,
): string | undefined {
  const entry = layout.hides.find((each) => each.id === id);
  if (entry === undefined) return undefined;
  const found = pathBeside(path, entry.file);
  return hideAt(app.job.get(), found) === undefined ? undefined : found;
}

export function hideOfItem(app: App, now: BenchNow): Hide | undefined {
  return now.item === undefined ? undefined : hideAt(app.job.get(), hidePathOf(app, now, now.item.hide));
}
