import type { LayablePiece, Layout, PieceCopy } from '@hidebound/leather';
import type { App } from '../../app/app.js';
import { cell } from '../../app/cell.js';
import type { Cell } from '../../app/cell.js';
import { openHoldDesk } from '../../work/hold.js';
import type { HoldDesk } from '../../work/hold.js';
import type { HeldAt, Inspection } from '../../work/hold-tasks.js';
import { openLayDesk } from '../../work/lay.js';
import type { LayDesk } from '../../work/lay.js';
import type { Laid, LayWish } from '../../work/lay-tasks.js';
import type { Broken } from '../../work/laying/found.js';

/** A moment of a run: what of the leather the best layout so far uses up. */
export interface CurvePoint {
  readonly elapsedMs: number;
  readonly usedUpMm2: number;
}

/** A run that lasts. */
export interface Run {
  readonly wish: LayWish;
  readonly layoutPath: string | undefined;
  readonly pieces: readonly LayablePiece[];
  readonly elapsedMs: number;
  readonly placed: number;
  readonly asked: number;
  readonly curve: readonly CurvePoint[];
  /** The best so far, where it is to be shown. */
  readonly placements: readonly Laid[] | undefined;
  /** The layout that lay there before: what it used up, and how many pieces it had laid. */
  readonly beforeMm2: number | undefined;
  readonly beforeLaid: number | undefined;
  /** It was proven, and of the order and the hides as they are: another one has to be better to take its place. */
  readonly isBeforeGood: boolean;
  readonly isStopping: boolean;
  readonly stop: () => void;
}

/** What is to be told of the last run. */
export interface RunEnd {
  readonly wish: LayWish;
  readonly found: boolean;
  readonly elapsedMs: number;
  readonly endedEarly: boolean;
  readonly curve: readonly CurvePoint[];
  readonly beforeMm2: number | undefined;
  readonly beforeLaid: number | undefined;
  /** What came of it. */
  readonly nowMm2: number | undefined;
  readonly nowLaid: number | undefined;
  /** What was laid and is worse than what lay there, which therefore stays. */
  readonly worse: Layout | undefined;
}

/** What was found of a layout when it was looked over as a whole. */
export interface LookedOver {
  readonly layout: Layout;
  readonly found: Inspection;
}

/** One copy in hand. */
export interface InHand {
  readonly copy: PieceCopy;
  readonly piece: LayablePiece;
  /** Where it lay; undefined for one that comes from the tray. */
  readonly from: HeldAt | undefined;
  readonly at: HeldAt;
  /** Undefined until the first verdict. */
  readonly broken: readonly Broken[] | undefined;
  /** `moving` under a pointer; `held`: it waits for what is decided; `settling`: it is being laid down. */
  readonly phase: 'moving' | 'held' | 'settling';
}

/** What this place of the job remembers while the app is open; what belongs to the job is in its files. */
export interface LayTable {
  readonly layDesk: LayDesk;
  /** For the piece in hand, and, apart from it so that neither waits, for whole layouts. */
  readonly holdDesk: HoldDesk;
  readonly checkDesk: HoldDesk;
  readonly run: Cell<Run | undefined>;
  readonly end: Cell<RunEnd | undefined>;
  readonly looked: Cell<LookedOver | undefined>;
  readonly hand: Cell<InHand | undefined>;
  /** Key of the copy that was chosen. */
  readonly chosen: Cell<string | undefined>;
  readonly snug: Cell<boolean>;
  /** Whether the hide's photo is seen below the pieces, where there is one. */
  readonly overPhoto: Cell<boolean>;
  /** Undefined: until stopped. */
  readonly seconds: Cell<number | undefined>;
  /** The layout that is compared with the one in front. */
  readonly other: Cell<string | undefined>;
}

const USUAL_SECONDS = 30;
const tables = new WeakMap<App, LayTable>();

export function layTable(app: App): LayTable {
  const known = tables.get(app);
  if (known !== undefined) return known;
  const table: LayTable = {
    layDesk: openLayDesk(),
    holdDesk: openHoldDesk(),
    checkDesk: openHoldDesk(),
    run: cell<Run | undefined>(undefined),
    end: cell<RunEnd | undefined>(undefined),
    looked: cell<LookedOver | undefined>(undefined),
    hand: cell<InHand | undefined>(undefined),
    chosen: cell<string | undefined>(undefined),
    snug: cell(true),
    overPhoto: cell(true),
    seconds: cell<number | undefined>(USUAL_SECONDS),
    other: cell<string | undefined>(undefined),
  };
  const { run, end, looked, chosen, snug, overPhoto, seconds, other } = table;
  for (const each of [run, end, looked, chosen, snug, overPhoto, seconds, other] as Cell<unknown>[])
    each.watch(() => app.redraw());
  tables.set(app, table);
  return table;
}
