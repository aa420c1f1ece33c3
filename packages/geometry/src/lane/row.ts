import type { LaneSite } from './lane-site.js';
import { alongRoom, ruleHolds, spansOf, wayOf } from './lane-site.js';
import { RULE_STEP_MM } from './constants.js';
import type { Spans } from './spans.js';
import { reversedSpans } from './spans.js';
import type { StrapKind, StrapShape } from './strap-kind.js';

/** How many straps of a kind are still to be laid. */
export interface StockEntry {
  readonly kind: StrapKind;
  readonly count: number;
}

/** One strap in its row. */
export interface SeatedStrap {
  readonly kind: StrapKind;
  readonly shape: StrapShape;
  /** Its origin, along the lane. */
  readonly u: number;
}

/** Where a row is to be filled. `t` is u seen from the lane's open end: t = openSign * u. */
export interface RowSeat {
  /** The row's lesser side, across. */
  readonly lowV: number;
  readonly widthMm: number;
  /** 1: the lane is open at small u; -1: at great u. */
  readonly openSign: 1 | -1;
  /** No strap reaches beyond, in t. */
  readonly limitT: number;
}

export interface FilledRow {
  readonly lowV: number;
  readonly widthMm: number;
  readonly straps: readonly SeatedStrap[];
  /** From the open end on. */
  readonly startT: number;
  readonly endT: number;
  readonly laidMm: number;
}

/**
 * Fills one row from the open end on: urgent straps first, then the longest that are left, each at the first place
 * that takes it, past flaws and beside the others. Straps of another width are left out.
 */
export function fillRow(site: LaneSite, seat: RowSeat, stock: readonly StockEntry[]): FilledRow {
  const taken: number[] = [];
  const straps: SeatedStrap[] = [];
  let laidMm = 0;
  for (const { kind, count } of stock) {
    if (kind.lane.widthMm !== seat.widthMm) continue;
    const shape = wayOf(site, kind);
    if (shape === undefined) continue;
    const v = seat.lowV + seat.widthMm / 2;
    const found = spansOf(site, kind, shape, v);
    const spans = seat.openSign > 0 ? found : reversedSpans(found);
    for (let i = 0; i < count; i++) {
      const t = firstPlace(site, kind, shape, v, seat, spans, taken);
      if (t === undefined) break;
      const [before, after] = extentT(shape, seat.openSign);
      taken.push(t + before, t + after);
      straps.push({ kind, shape, u: seat.openSign * t });
      laidMm += kind.lengthMm;
    }
  }
  let startT = Infinity;
  let endT = -Infinity;
  for (let i = 0; i < taken.length; i += 2) {
    startT = Math.min(startT, taken[i]!);
    endT = Math.max(endT, taken[i + 1]!);
  }
  straps.sort((a, b) => a.u - b.u);
  return { lowV: seat.lowV, widthMm: seat.widthMm, straps, startT, endT, laidMm };
}

/** How far a strap reaches from its origin, seen from the open end. */
function extentT(shape: StrapShape, openSign: 1 | -1): readonly [number, number] {
  return openSign > 0 ? [shape.minU, shape.maxU] : [-shape.maxU, -shape.minU];
}

function firstPlace(
  site: LaneSite,
  kind: StrapKind,
  shape: StrapShape,
  v: number,
  seat: RowSeat,
  spans: Spans,
  taken: readonly number[],
): number | undefined {
  const [before, after] = extentT(shape, seat.openSign);
  const room = alongRoom(site);
  for (let s = 0; s < spans.length; s += 2) {
    const last = Math.min(spans[s + 1]!, seat.limitT - after);
    let t = spans[s]!;
    while (t <= last) {
      const past = pastTaken(taken, t + before, t + after, room);
      if (past !== undefined) t = past - before;
      else if (ruleHolds(site, kind, shape, seat.openSign * t, v)) return t;
      else t += RULE_STEP_MM;
    }
  }
  return undefined;
}

/** What sums of lengths may lose in their last bits: far above that, far below the grid. */
const SAME_MM = 1e-7;

/** Where the first strap in the way leaves room again; undefined if none is in the way. */
function pastTaken(taken: readonly number[], from: number, to: number, room: number): number | undefined {
  for (let i = 0; i < taken.length; i += 2) {
    if (from < taken[i + 1]! + room - SAME_MM && to + room > taken[i]! + SAME_MM) return taken[i + 1]! + room;
  }
  return undefined;
}
