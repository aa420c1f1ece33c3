import type { CopyState, FlawShape, Hide, SettingOut } from '@hidebound/leather';
import type { App } from '../../app/app.js';
import { cell } from '../../app/cell.js';
import type { Cell } from '../../app/cell.js';
import type { PlainEffect } from '../../drawing/hide-layer.js';
import { openBenchDesk } from '../../work/bench.js';
import type { BenchDesk } from '../../work/bench.js';
import type { Job } from '../../job/job.js';
import type { OrderCard } from '../../work/benching/cards.js';
import type { StockFit } from '../../work/benching/fits.js';
import type { MadePiece } from './logic/goods-of-job.js';
import type { StockSeen } from '../../work/benching/stock.js';
import type { LiftedPiece } from '../../work/bench-tasks.js';
import { touchGuard } from './logic/touch-guard.js';
import type { TouchGuard } from './logic/touch-guard.js';
import type { Told } from '../../words/told.js';

/** What lies on the bench's card. */
export type BenchPage = 'cutting' | 'articles' | 'stock';

/** A flaw that is being marked; without a shape until the leather was touched. */
export interface FlawInHand {
  readonly hide: string;
  readonly shape: FlawShape | undefined;
  readonly effect: PlainEffect;
  /** Across the next spot, and the next stroke. */
  readonly spotMm: number;
  readonly strokeMm: number;
}

/** What is told of the last thing that was done, until the next. */
export type Remark =
  | { readonly kind: 'ticked'; readonly number: string; readonly piece: string; readonly to: CopyState }
  | { readonly kind: 'laid'; readonly number: string; readonly piece: string; readonly hide: string }
  | { readonly kind: 'no room'; readonly n: number }
  /** The leather is looked over for what lies on the flaw. */
  | { readonly kind: 'marking' }
  | { readonly kind: 'flaw'; readonly lifted: readonly LiftedPiece[] };

/** The measures of one hide, and what they were taken from. */
export interface SetOut {
  readonly hide: Hide;
  readonly places: string;
  readonly out: SettingOut | undefined;
}

/** A piece that leather is looked for. */
export interface FitSought {
  readonly of: MadePiece;
  readonly count: number;
  /** What it was looked for in, and what came of it; absent while it is looked for, or before. */
  readonly found?: { readonly job: Job; readonly fits: readonly StockFit[] | Told };
  readonly isLooking?: boolean;
}

/** What the bench remembers while the app is open. */
export interface BenchTable {
  readonly desk: BenchDesk;
  readonly guard: TouchGuard;
  readonly page: Cell<BenchPage>;
  /** Key of the item in front; undefined: the first that is to be done. */
  readonly front: Cell<string | undefined>;
  /** Ticks that the worker has not answered yet, by the piece's key. */
  readonly pending: Cell<ReadonlyMap<string, CopyState>>;
  readonly remark: Cell<Remark | undefined>;
  readonly flaw: Cell<FlawInHand | undefined>;
  readonly setOut: Cell<SetOut | undefined>;
  /** Whether the screen stays lit; undefined while that is not known. */
  readonly staysAwake: Cell<boolean | undefined>;
  /** What orders and articles come to, by their paths, and the stock; each with the job that it was read from. */
  readonly cards: Cell<ReadonlyMap<string, { readonly job: Job; readonly made: OrderCard | Told }>>;
  readonly stock: Cell<{ readonly job: Job; readonly seen: StockSeen | Told } | undefined>;
  /** Jobs that are being read for these. */
  readonly asked: { readonly cards: Map<string, Job>; stock?: Job };
  /** Orders and articles besides the one in front that are looked at. */
  readonly opened: Cell<ReadonlySet<string>>;
  /** The piece that leather is looked for, and what was found. */
  readonly fit: Cell<FitSought | undefined>;
  /** Where offcuts are put, as it was told last. */
  readonly putAt: Cell<string>;
  /** The last tick, after which the next may be done. */
  queue: Promise<void>;
}

const tables = new WeakMap<App, BenchTable>();

export function benchTable(app: App): BenchTable {
  const known = tables.get(app);
  if (known !== undefined) return known;
  const table: BenchTable = {
    desk: openBenchDesk(),
    guard: touchGuard(),
    page: cell<BenchPage>('cutting'),
    front: cell<string | undefined>(undefined),
    pending: cell<ReadonlyMap<string, CopyState>>(new Map()),
    remark: cell<Remark | undefined>(undefined),
    flaw: cell<FlawInHand | undefined>(undefined),
    setOut: cell<SetOut | undefined>(undefined),
    staysAwake: cell<boolean | undefined>(undefined),
    cards: cell<ReadonlyMap<string, { readonly job: Job; readonly made: OrderCard | Told }>>(new Map()),
    stock: cell<{ readonly job: Job; readonly seen: StockSeen | Told } | undefined>(undefined),
    asked: { cards: new Map() },
    opened: cell<ReadonlySet<string>>(new Set()),
    fit: cell<FitSought | undefined>(undefined),
    putAt: cell(''),
    queue: Promise.resolve(),
  };
  const { page, front, pending, remark, flaw, setOut, staysAwake, cards, stock, opened, fit, putAt } = table;
  const cells = [page, front, pending, remark, flaw, setOut, staysAwake, cards, stock, opened, fit, putAt];
  for (const each of cells as Cell<unknown>[]) each.watch(() => app.redraw());
  tables.set(app, table);
  return table;
}
