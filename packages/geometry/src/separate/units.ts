import type { Copy, SetOfCopies } from '../nest/demand.js';
import { refKey } from '../nest/demand.js';
import { isLaidBySets } from '../nest/first-layout.js';
import type { Layout } from '../nest/layout.js';
import type { NestAnswer, UnplacedReason } from '../types/problem.js';
import type { Unit } from './hunt.js';

/** Copies in a world at most: the tables of pairs grow with their square. */
const MOST_COPIES = 1500;

/** Sets beyond the laid ones that are tried, of each kind of which as many as fit are wanted. */
const SETS_AHEAD = 1;

/**
 * The copies that a search is about: all of them, or where as many sets as fit are wanted the laid ones and a few
 * more; none that fits nowhere. None at all if they are too many to search.
 */
export function copiesFor(layout: Layout, answer: NestAnswer): Copy[] {
  const { copies, sets } = layout.demand;
  const placed = new Set(answer.placements.map(refKey));
  const hopeless = new Set(answer.unplaced.filter(({ reason }) => !MAY_CHANGE.has(reason)).map(refKey));
  const isIn = new Uint8Array(copies.length);
  const ahead = new Map<number, number>();
  for (const set of sets) {
    if (isLaidBySets(layout, set) && !set.copies.some((copy) => placed.has(refKey(copies[copy]!.ref)))) {
      const count = ahead.get(set.kindIndex) ?? 0;
      if (count >= SETS_AHEAD) continue;
      ahead.set(set.kindIndex, count + 1);
    }
    for (const copy of set.copies) isIn[copy] = 1;
  }
  const chosen = copies.filter(
    (copy, i) =>
      isIn[i] === 1 &&
      (placed.has(refKey(copy.ref)) || (!hopeless.has(refKey(copy.ref)) && mayBeLaid(layout, copy))),
  );
  return chosen.length > MOST_COPIES ? [] : chosen;
}

/** Reasons that a better layout may do away with; the others hold on empty sheets too. */
const MAY_CHANGE: ReadonlySet<UnplacedReason> = new Set(['no-room', 'set-incomplete', 'not-tried']);

function mayBeLaid(layout: Layout, copy: Copy): boolean {
  return layout.allowed[copy.prepared.index]!.length > 0;
}

/** Each step of priority outweighs all pieces below it, up to this many steps. */
const PRIORITY_BASE = 1000;
const MOST_PRIORITY_STEPS = 3;

/** What is laid together or not at all: whole sets where sets are laid, else single copies. */
export function unitsOf(layout: Layout, copies: readonly Copy[]): Unit[] {
  const { sets } = layout.demand;
  const bySet = new Map<number, number[]>();
  const units: Unit[] = [];
  copies.forEach((copy, i) => {
    if (copy.isFixed) return;
    if (!isLaidBySets(layout, sets[copy.set]!)) units.push({ pieces: [i], worth: worthOf(layout, copy) });
    else if (bySet.has(copy.set)) bySet.get(copy.set)!.push(i);
    else bySet.set(copy.set, [i]);
  });
  for (const [set, pieces] of bySet) {
    // A set that lost a copy to a place where it can't lie will not be whole.
    if (pieces.length < freeCopies(layout, sets[set]!)) continue;
    units.push({ pieces, worth: worthOfSet(layout, sets[set]!) });
  }
  return units;
}

function freeCopies(layout: Layout, set: SetOfCopies): number {
  return set.copies.filter((copy) => !layout.demand.copies[copy]!.isFixed).length;
}

function worthOf(layout: Layout, { prepared }: Copy): number {
  const { mode } = layout.problem.objective;
  if (mode === 'fill') return prepared.item.value > 0 ? prepared.item.value : prepared.areaMm2 * TINY;
  const priorities = layout.problem.items.map(({ priority }) => priority);
  return stepWorth(priorities, prepared.item.priority) * (1 + TINY * prepared.areaMm2);
}

/** Of a mm², so that larger pieces count a little more. */
const TINY = 1e-9;

function worthOfSet(layout: Layout, { kind }: SetOfCopies): number {
  const priorities = layout.problem.setKinds.map(({ priority }) => priority);
  return stepWorth(priorities, kind.priority) * (1 + TINY * kind.value);
}

function stepWorth(priorities: readonly number[], priority: number): number {
  const steps = [...new Set(priorities)].sort((a, b) => a - b).indexOf(priority);
  let worth = 1;
  for (let i = 0; i < Math.min(steps, MOST_PRIORITY_STEPS); i++) worth *= PRIORITY_BASE;
  return worth;
}
