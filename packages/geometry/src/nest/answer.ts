import type { NestAnswer, Placement, Unplaced } from '../types/problem.js';
import { bringBesideTogether } from './beside.js';
import { refKey } from './demand.js';
import type { Copy } from './demand.js';
import { isLaidBySets } from './first-layout.js';
import type { Layout } from './layout.js';
import { assignCopies } from './layout.js';
import type { Reasons } from './reasons.js';
import { reasonFor } from './reasons.js';
import type { Laid } from './sheet-state.js';

/** The answer that a state of the layout stands for. */
export function answerOf(
  layout: Layout,
  laid: readonly (Laid | undefined)[],
  reasons: Reasons,
  joins: number,
): NestAnswer {
  const slots = assignCopies(layout, laid);
  dropPartialSets(layout, slots);
  bringBesideTogether(layout, slots);
  const fixed = new Map(layout.problem.fixed.map((placement) => [refKey(placement), placement]));
  const placements: Placement[] = [];
  const unplaced: Unplaced[] = [];
  for (const copy of layout.demand.copies) {
    const place = slots[copy.index];
    const { item, set, copy: number } = copy.ref;
    const stays = fixed.get(refKey(copy.ref));
    if (stays !== undefined) {
      const { sheet, x, y, rotationDeg } = stays;
      placements.push({ item, set, copy: number, sheet, x, y, rotationDeg });
    } else if (place !== undefined) {
      const sheet = layout.problem.sheets[place.sheet]!.id;
      const { x, y, variant } = place;
      placements.push({ item, set, copy: number, sheet, x, y, rotationDeg: variant.rotationDeg });
    } else if (layout.demand.sets[copy.set]!.kind.sets !== 'many') {
      unplaced.push({ item, set, copy: number, reason: 'no-room' });
    }
  }
  return {
    placements,
    lanes: [],
    roughCuts: [],
    unplaced: withReasons(layout, slots, unplaced, reasons),
    joins,
  };
}

function dropPartialSets(layout: Layout, slots: (Laid | undefined)[]): void {
  for (const set of layout.demand.sets) {
    if (!isLaidBySets(layout, set)) continue;
    if (set.copies.every((copy) => slots[copy] !== undefined)) continue;
    for (const copy of set.copies) if (!layout.demand.copies[copy]!.isFixed) slots[copy] = undefined;
  }
}

function withReasons(
  layout: Layout,
  slots: readonly (Laid | undefined)[],
  unplaced: readonly Unplaced[],
  reasons: Reasons,
): Unplaced[] {
  if (unplaced.length === 0) return [];
  const byKey = new Map(layout.demand.copies.map((copy) => [refKey(copy.ref), copy]));
  return unplaced.map((one) => {
    const copy = byKey.get(refKey(one))!;
    const own = reasonFor(reasons, layout, copy.prepared);
    if (own !== 'no-room') return { ...one, reason: own };
    const set = layout.demand.sets[copy.set]!;
    const waits = isLaidBySets(layout, set) && isHeldBack(layout, slots, copy, reasons);
    return waits ? { ...one, reason: 'set-incomplete' } : one;
  });
}

/** Another piece of its set fits nowhere at all. */
function isHeldBack(
  layout: Layout,
  slots: readonly (Laid | undefined)[],
  copy: Copy,
  reasons: Reasons,
): boolean {
  return layout.demand.sets[copy.set]!.copies.some((other) => {
    if (slots[other] !== undefined || other === copy.index) return false;
    return reasonFor(reasons, layout, layout.demand.copies[other]!.prepared) !== 'no-room';
  });
}
