import type { Copy, SetOfCopies } from './demand.js';
import type { Layout } from './layout.js';
import type { Laid } from './sheet-state.js';

/** What two faces on different sheets count as apart, mm: farther than any two places of one hide. */
const OTHER_SHEET_MM = 20_000;

/** Rounds over all copies; each shortens the distances or ends it. */
const MOST_ROUNDS = 8;

/**
 * Faces that end up side by side come from leather close together, where that costs nothing: places of equal copies
 * are exchanged between sets, in place, while that shortens the distances within the sets. No piece moves.
 */
export function bringBesideTogether(layout: Layout, slots: (Laid | undefined)[]): void {
  const { copies, sets } = layout.demand;
  for (const list of exchangeable(layout)) {
    for (let round = 0; round < MOST_ROUNDS; round++) {
      let isBetter = false;
      for (const a of list) {
        for (const b of list) {
          if (b.index <= a.index || b.set === a.set || !mayExchange(layout, a, b, slots)) continue;
          const both = [sets[a.set]!, sets[b.set]!];
          const before = apart(both, copies, slots);
          exchange(slots, a, b);
          if (apart(both, copies, slots) < before) isBetter = true;
          else exchange(slots, a, b);
        }
      }
      if (!isBetter) break;
    }
  }
}

/** Copies of each item that stands beside another one, and that may trade places with its like. */
function exchangeable(layout: Layout): Copy[][] {
  const lists = new Map<number, Copy[]>();
  for (const copy of layout.demand.copies) {
    const { kind } = layout.demand.sets[copy.set]!;
    const isBeside = kind.beside.some((pair) => pair.includes(copy.prepared.item.id));
    if (!isBeside || copy.isFixed || copy.partner >= 0) continue;
    const list = lists.get(copy.prepared.index) ?? [];
    list.push(copy);
    lists.set(copy.prepared.index, list);
  }
  return [...lists.values()];
}

/** What a set shares stays shared. */
function mayExchange(layout: Layout, a: Copy, b: Copy, slots: readonly (Laid | undefined)[]): boolean {
  const [atA, atB] = [slots[a.index], slots[b.index]];
  if (atA === undefined || atB === undefined) return false;
  const { keep } = layout.demand.sets[a.set]!.kind;
  if (keep === 'nothing' || atA.sheet === atB.sheet) return true;
  const { sheets } = layout.problem;
  return keep !== 'sheet' && sheets[atA.sheet]!.lot === sheets[atB.sheet]!.lot;
}

function exchange(slots: (Laid | undefined)[], a: Copy, b: Copy): void {
  const atA = slots[a.index];
  slots[a.index] = slots[b.index];
  slots[b.index] = atA;
}

/** Sum over the sets' pairs of faces of the distance to the nearest partner, mm. */
function apart(
  sets: readonly SetOfCopies[],
  copies: readonly Copy[],
  slots: readonly (Laid | undefined)[],
): number {
  let sum = 0;
  for (const set of sets) {
    for (const [one, other] of set.kind.beside) {
      const placesOf = (item: string): Laid[] =>
        set.copies
          .filter((copy) => copies[copy]!.prepared.item.id === item)
          .map((copy) => slots[copy])
          .filter((laid) => laid !== undefined);
      const others = placesOf(other);
      if (others.length === 0) continue;
      for (const laid of placesOf(one)) sum += Math.min(...others.map((place) => between(laid, place)));
    }
  }
  return sum;
}

function between(a: Laid, b: Laid): number {
  if (a.sheet !== b.sheet) return OTHER_SHEET_MM;
  const dx = a.x - b.x;
  const dy = a.y - b.y;
  return Math.sqrt(dx * dx + dy * dy);
}
