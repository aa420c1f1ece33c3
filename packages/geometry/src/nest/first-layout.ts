import type { SetOfCopies } from './demand.js';
import type { Effort } from './insert.js';
import { FIRST_EFFORT, SECOND_EFFORT, findPlace } from './insert.js';
import type { Layout } from './layout.js';
import { layCopy, layCopyAgain, liftCopy, sheetsFor } from './layout.js';
import { inOrder } from './order.js';
import type { Laid } from './sheet-state.js';
import type { Item } from '../types/problem.js';

/** True if the kind's sets are laid whole or not at all, one after the other. */
export function isLaidBySets(layout: Layout, set: SetOfCopies): boolean {
  return layout.problem.objective.mode === 'sets' || set.kind.sets === 'many';
}

function liftSet(layout: Layout, set: SetOfCopies): void {
  for (const copy of set.copies) {
    if (layout.laid[copy] !== undefined && !layout.demand.copies[copy]!.isFixed) liftCopy(layout, copy);
  }
}

/** The first layout: yields after each piece. */
export function* layFirst(layout: Layout): Generator<undefined, void> {
  const { sets } = layout.demand;
  const atOnce: SetOfCopies[] = [];
  const oneByOne: SetOfCopies[] = [];
  for (const set of sets) {
    const hasFixed = set.copies.some((copy) => layout.demand.copies[copy]!.isFixed);
    if (isLaidBySets(layout, set) && !hasFixed) oneByOne.push(set);
    else atOnce.push(set);
  }
  yield* layUnits(layout, atOnce);
  yield* growSets(layout, oneByOne);
}

/** Lays required sets: what is bound together set by set, all other copies in one order. */
function* layUnits(layout: Layout, sets: readonly SetOfCopies[]): Generator<undefined, void> {
  const loose: number[] = [];
  const boundByFirst = new Map<number, Bound>();
  for (const set of sets) {
    const copies = isBound(layout, set) ? inOrder(layout, bindingCopies(layout, set)) : [];
    if (copies.length > 0) boundByFirst.set(copies[0]!, { set, copies });
    loose.push(...set.copies.filter((copy) => !copies.includes(copy)));
  }
  for (const copy of inOrder(layout, [...loose, ...boundByFirst.keys()])) {
    const bound = boundByFirst.get(copy);
    if (bound !== undefined) yield* layBoundSet(layout, bound);
    else if (layout.laid[copy] === undefined) {
      tryToLay(layout, copy, FIRST_EFFORT);
      yield;
    }
  }
  yield* lookAgain(
    layout,
    sets.flatMap((set) => set.copies),
  );
}

/** Copies of a set that are laid together. */
interface Bound {
  readonly set: SetOfCopies;
  readonly copies: readonly number[];
}

/**
 * Copies that a set holds to one share. Lots are compared within a group: those of the first copy's group are held
 * together, the others follow the first of theirs. Where only faces share a lot, no other piece is held.
 */
function bindingCopies({ demand }: Layout, { kind, copies }: SetOfCopies): number[] {
  const itemOf = (copy: number): Item => demand.copies[copy]!.prepared.item;
  const held = copies.filter((copy) => kind.keep !== 'faceLot' || itemOf(copy).isFace);
  if (kind.keep === 'sheet' || held.length === 0) return held;
  const { group } = itemOf(held[0]!);
  return held.filter((copy) => itemOf(copy).group === group);
}

/** Its copies must share something that not all sheets have in common. */
function isBound(layout: Layout, set: SetOfCopies): boolean {
  if (set.kind.keep === 'nothing') return false;
  return shares(layout, set).length > 1;
}

/** What a set can share: the sheets, or the lots, each as the sheets that it stands for. */
function shares(layout: Layout, set: SetOfCopies): number[][] {
  const { sheets } = layout.problem;
  if (set.kind.keep === 'sheet') return sheets.map((_, i) => [i]);
  const lots = [...new Set(sheets.map(({ lot }) => lot))];
  return lots.map((lot) => sheets.flatMap((sheet, i) => (sheet.lot === lot ? [i] : [])));
}

/** A second, closer look for what found no place. Where one copy finds none, its like will not either. */
function* lookAgain(layout: Layout, copies: readonly number[]): Generator<undefined, void> {
  const hopeless = new Set<number>();
  for (const copy of inOrder(layout, copies)) {
    const { prepared } = layout.demand.copies[copy]!;
    if (layout.laid[copy] !== undefined || hopeless.has(prepared.index)) continue;
    if (!tryToLay(layout, copy, SECOND_EFFORT)) {
      yield;
      if (!layBothAgain(layout, copy)) hopeless.add(prepared.index);
    }
    yield;
  }
}

/**
 * Where the partner of a pair took a place that has none beside it for the other: the other goes first, to some other
 * place, and the partner beside it. Both are laid, or all stays.
 */
function layBothAgain(layout: Layout, copy: number): boolean {
  const { partner } = layout.demand.copies[copy]!;
  if (partner < 0 || layout.laid[partner] === undefined || layout.demand.copies[partner]!.isFixed)
    return false;
  if (!tryToLay(layout, copy, { ...SECOND_EFFORT, withoutPartner: true })) return false;
  const lifted = liftCopy(layout, partner);
  if (tryToLay(layout, partner, SECOND_EFFORT)) return true;
  liftCopy(layout, copy);
  layCopyAgain(layout, lifted);
  return false;
}

/** Tries each sheet or lot until one takes all that the set binds; else keeps the one that takes the most. */
function* layBoundSet(layout: Layout, { set, copies }: Bound): Generator<undefined, void> {
  const open = inOrder(layout, copies).filter((copy) => layout.laid[copy] === undefined);
  const hasMate = open.length < copies.length;
  let most = -1;
  let best: readonly Laid[] = [];
  for (const share of hasMate ? [layout.problem.sheets.map((_, i) => i)] : shares(layout, set)) {
    if (yield* layWithin(layout, set, open, share)) return;
    const lifted = open
      .filter((copy) => layout.laid[copy] !== undefined)
      .map((copy) => liftCopy(layout, copy));
    const area = lifted.reduce((sum, { variant }) => sum + variant.prepared.areaMm2, 0);
    if (area <= most) continue;
    most = area;
    best = lifted;
  }
  for (const laid of best) layCopyAgain(layout, laid);
}

/** Lays what it can; true if all lie that the set binds, so that no other share would take more. */
function* layWithin(
  layout: Layout,
  set: SetOfCopies,
  open: readonly number[],
  share: readonly number[],
): Generator<undefined, boolean> {
  const binding = bindingCopies(layout, set);
  let isWhole = true;
  for (const copy of open) {
    const isBinding = binding.includes(copy);
    const isLaid = tryToLay(layout, copy, FIRST_EFFORT, isBinding ? share : undefined);
    if (isBinding && !isLaid) isWhole = false;
    yield;
  }
  return isWhole;
}

/** Lays sets of each kind one after the other, until one doesn't fit. */
function* growSets(layout: Layout, sets: readonly SetOfCopies[]): Generator<undefined, void> {
  const full = new Set<number>();
  const order = [...sets].sort(
    (a, b) => b.kind.priority - a.kind.priority || b.kind.value - a.kind.value || a.index - b.index,
  );
  for (const set of order) {
    if (full.has(set.kindIndex)) continue;
    if (isBound(layout, set)) {
      yield* layBoundSet(layout, { set, copies: set.copies });
    } else {
      for (const copy of inOrder(layout, set.copies)) {
        if (layout.laid[copy] === undefined && !tryToLay(layout, copy, FIRST_EFFORT)) break;
        yield;
      }
    }
    if (set.copies.every((copy) => layout.laid[copy] !== undefined)) continue;
    liftSet(layout, set);
    full.add(set.kindIndex);
  }
}

/** Lays a copy on the first of its sheets that takes it. */
export function tryToLay(layout: Layout, copy: number, effort: Effort, within?: readonly number[]): boolean {
  const one = layout.demand.copies[copy]!;
  for (const sheet of sheetsFor(layout, one)) {
    if (within !== undefined && !within.includes(sheet)) continue;
    const place = findPlace(layout, one, sheet, effort);
    if (place === undefined) continue;
    layCopy(layout, copy, place);
    return true;
  }
  return false;
}
