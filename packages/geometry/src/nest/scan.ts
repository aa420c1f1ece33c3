/**
 * Looks for places on the lattice: for every row the smallest column at which a turned item is free, found by
 * jumping from obstacle to obstacle. Kernel code on flat arrays.
 */
import type { Lattice } from './raster.js';
import { NOWHERE, recall, remember } from './scan-memo.js';
import type { SheetState } from './sheet-state.js';
import { layerFor } from './sheet-state.js';
import type { ScanRuns, Variant } from './variant.js';

/** A place on the lattice, to be made exact. */
export interface Proposal {
  readonly variant: Variant;
  readonly column: number;
  readonly row: number;
  /** Lower is better; mm along u, with what was added for waste. */
  readonly score: number;
}

/** How places are weighed against each other. */
export interface ScanTaste {
  /** Weight of the mean empty length behind the piece. */
  readonly behind: number;
  /** What a piece on leather that is better than it needs costs, in mm. */
  readonly goodLeatherMm: number;
  /** False where the rules about direction, thickness and pairs can't hold; absent: everywhere. */
  readonly accepts?: ((variant: Variant, u: number, v: number) => boolean) | undefined;
  /** What is accepted depends on more than the variant and the sheet: on where a partner lies. */
  readonly isPassing: boolean;
}

/** Columns to step on where a place is free but not accepted. */
const REFUSED_STEP_MM = 12;

interface ActiveRuns {
  readonly count: number;
  /** row * columns + first column, and length - 1, of each run; and the jumps to look in. */
  readonly offset: Int32Array;
  readonly first: Int32Array;
  readonly last: Int32Array;
  readonly jumps: readonly Int32Array[];
}

/** The best places of one variant on one sheet, one for each end of each stretch of rows that are alike. */
export function scanPlaces(
  state: SheetState,
  variant: Variant,
  taste: ScanTaste,
  runs: ScanRuns = variant.runs,
): Proposal[] {
  const { lattice } = state.space;
  const active = activeRuns(state, variant, runs);
  const lowRow = -runs.minRow;
  const highRow = lattice.rows - 1 - runs.maxRow;
  const lowColumn = -runs.minColumn;
  const highColumn = lattice.columns - 1 - runs.maxColumn;
  if (highRow < lowRow || highColumn < lowColumn) return [];
  const window: Window = { lowRow, highRow, lowColumn, highColumn };
  const firstFree = firstFreeColumns(state, variant, runs, active, window, taste);
  if (firstFree === undefined) return [];
  const minds = state.space.strictest !== undefined && taste.goodLeatherMm > 0;
  const found = proposals(variant, runs, active, firstFree, lowRow, lattice, { ...taste, everyEnd: minds });
  return withLeather(state, runs, found, taste);
}

/** Rows and columns at which a variant's runs stay on the lattice. */
interface Window {
  readonly lowRow: number;
  readonly highRow: number;
  readonly lowColumn: number;
  readonly highColumn: number;
}

/** For each row of the window the first column that is free and accepted, or -1; undefined if none has one. */
function firstFreeColumns(
  state: SheetState,
  variant: Variant,
  runs: ScanRuns,
  active: ActiveRuns,
  window: Window,
  taste: ScanTaste,
): Int32Array | undefined {
  const { lattice } = state.space;
  const { lowRow, highRow, lowColumn, highColumn } = window;
  const known = recall(state.memos, state.marks, runs);
  if (known === NOWHERE) return undefined;
  const firstFree = new Int32Array(highRow - lowRow + 1);
  const { accepts } = taste;
  const step = Math.max(1, Math.round(REFUSED_STEP_MM / lattice.pitch));
  let culprit = 0;
  let isAny = false;
  const out: Out = { column: 0 };
  for (let row = lowRow; row <= highRow; row++) {
    let column = known === undefined ? lowColumn : known[row - lowRow]!;
    if (column < 0) column = highColumn + 1;
    while (column <= highColumn) {
      culprit = nextFree(active, row * lattice.columns, column, culprit, highColumn, out);
      column = out.column;
      if (column > highColumn || accepts === undefined) break;
      const u = lattice.minX + column * lattice.pitch;
      if (accepts(variant, u, lattice.minY + row * lattice.pitch)) break;
      column += step;
    }
    if (column <= highColumn) isAny = true;
    firstFree[row - lowRow] = column > highColumn ? -1 : column;
  }
  if (!taste.isPassing) remember(state.memos, state.marks, runs, isAny ? firstFree : NOWHERE);
  return isAny ? firstFree : undefined;
}

/** Written by `nextFree`: one object a scan, so that the innermost loop makes none. */
interface Out {
  column: number;
}

/**
 * Moves the column on until every run is free, or beyond `highColumn`. Returns the run that was last in the way:
 * it is the likeliest to be in the way again.
 */
function nextFree(
  active: ActiveRuns,
  rowBase: number,
  from: number,
  culprit: number,
  highColumn: number,
  out: Out,
): number {
  const { count, offset, first, last, jumps } = active;
  let column = from;
  let free = 0;
  let i = culprit < count ? culprit : 0;
  let blame = i;
  while (free < count) {
    const end = column + last[i]!;
    const value = jumps[i]![rowBase + offset[i]! + end]!;
    if (value > end) {
      column = value - first[i]!;
      free = 0;
      blame = i;
    } else if (value >= column + first[i]!) {
      column = value + 1 - first[i]!;
      free = 0;
      blame = i;
    } else {
      free++;
      if (++i === count) i = 0;
      continue;
    }
    if (column > highColumn) break;
  }
  out.column = column;
  return blame;
}

function activeRuns(state: SheetState, variant: Variant, runs: ScanRuns): ActiveRuns {
  const { columns } = state.space.lattice;
  const body = layerFor(state, variant.prepared.group).jump;
  const offset: number[] = [];
  const first: number[] = [];
  const last: number[] = [];
  const jumps: Int32Array[] = [];
  for (let i = 0; i < runs.row.length; i++) {
    const need = runs.need[i]!;
    const jump = need < 0 ? body : state.space.needs[variant.needs[need]!.needClass]!.layer?.jump;
    if (jump === undefined) continue;
    offset.push(runs.row[i]! * columns);
    first.push(runs.first[i]!);
    last.push(runs.last[i]!);
    jumps.push(jump);
  }
  return {
    count: offset.length,
    offset: Int32Array.from(offset),
    first: Int32Array.from(first),
    last: Int32Array.from(last),
    jumps,
  };
}

function proposals(
  variant: Variant,
  runs: ScanRuns,
  active: ActiveRuns,
  firstFree: Int32Array,
  lowRow: number,
  lattice: Lattice,
  taste: ScanTaste & { readonly everyEnd: boolean },
): Proposal[] {
  const found: Proposal[] = [];
  const n = firstFree.length;
  let i = 0;
  while (i < n) {
    const column = firstFree[i]!;
    let j = i;
    while (j + 1 < n && firstFree[j + 1] === column) j++;
    const before = i === 0 ? -1 : firstFree[i - 1]!;
    const after = j === n - 1 ? -1 : firstFree[j + 1]!;
    const isLow = (before < 0 || before > column) && (after < 0 || after > column);
    // Where leather counts, a place farther on may be worth more than the lower one beside it.
    if (column >= 0 && (isLow || taste.everyEnd)) {
      for (const at of i === j ? [i] : [i, j]) {
        const row = at + lowRow;
        found.push({
          variant,
          column,
          row,
          score: scoreOf(variant, runs, active, column, row, lattice, taste),
        });
      }
    }
    i = j + 1;
  }
  return found;
}

function scoreOf(
  variant: Variant,
  runs: ScanRuns,
  active: ActiveRuns,
  column: number,
  row: number,
  lattice: Lattice,
  taste: ScanTaste,
): number {
  let behind = 0;
  for (let i = 0; i < runs.bodyCount; i++) {
    const at = column + active.first[i]! - 1;
    if (at < 0) continue;
    const value = active.jumps[i]![row * lattice.columns + active.offset[i]! + at]!;
    if (value < at) behind += at - value;
  }
  const u = lattice.minX + column * lattice.pitch;
  return u + variant.body.maxX + (taste.behind * behind * lattice.pitch) / runs.bodyCount;
}

/** Adds the cost of good leather: the share of a piece's rows whose middle lies on leather for the strictest need. */
function withLeather(
  state: SheetState,
  runs: ScanRuns,
  found: readonly Proposal[],
  taste: ScanTaste,
): Proposal[] {
  const { strictest, needs, lattice } = state.space;
  const layer = strictest === undefined ? undefined : needs[strictest]!.layer;
  if (layer === undefined || taste.goodLeatherMm === 0) return [...found];
  return found.map((proposal) => {
    let good = 0;
    for (let i = 0; i < runs.bodyCount; i++) {
      const column = proposal.column + ((runs.first[i]! + runs.last[i]!) >> 1);
      if (layer.count[(proposal.row + runs.row[i]!) * lattice.columns + column] === 0) good++;
    }
    return { ...proposal, score: proposal.score + (taste.goodLeatherMm * good) / runs.bodyCount };
  });
}
