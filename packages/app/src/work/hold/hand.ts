import { judgeMove, snapTo } from '@hidebound/geometry/live';
import type { Bench, SheetPlace } from '@hidebound/geometry/live';
import { copyRefOf } from '@hidebound/leather';
import type { PieceCopy } from '@hidebound/leather';
import type { HeldAt, Settled } from '../hold-tasks.js';
import { brokenByMove } from '../laying/found.js';
import type { Broken } from '../laying/found.js';
import { roundedAt } from './hand-layout.js';
import { benchFor } from './open-table.js';
import type { OpenTable } from './open-table.js';

/** One copy in hand over an open table. */
export interface InHand {
  readonly table: OpenTable;
  readonly bench: Bench;
  readonly copy: PieceCopy;
}

/** Undefined for a copy that the order does not have. */
export function takeInHand(table: OpenTable, copy: PieceCopy): InHand | undefined {
  const isKnown = table.problem.items.some(({ id }) => id === copyRefOf(copy).item);
  return isKnown ? { table, bench: benchFor(table, copy), copy } : undefined;
}

export function judge({ table, bench, copy }: InHand, at: HeldAt): Broken[] {
  const ref = copyRefOf(copy);
  return brokenByMove(judgeMove(bench, ref, placeOf(roundedAt(at))), copy, ref, table.items);
}

/** Let go: into contact where something is near enough, else right there. */
export function settle(hand: InHand, at: HeldAt, snugMm: number): Settled {
  const place = placeOf(roundedAt(at));
  const snap = snugMm > 0 ? snapTo(hand.bench, copyRefOf(hand.copy), place, snugMm) : undefined;
  if (snap === undefined) return { at: roundedAt(at), isSnug: false, broken: judge(hand, at) };
  const { sheet, x, y, rotationDeg } = snap.place;
  return { at: { hide: sheet, x, y, rotationDeg }, isSnug: true, broken: [] };
}

function placeOf({ hide, x, y, rotationDeg }: HeldAt): SheetPlace {
  return { sheet: hide, x, y, rotationDeg };
}
