import { patternRotations, allowsHalfTurn } from '../lattice/pattern-rotations.js';
import type { Repeat } from '../lattice/repeat.js';
import { repeatsOf } from '../lattice/repeats-of.js';
import { trimBestRepeat } from '../lattice/trim.js';
import type { TrimmedRepeat, TrimOptions } from '../lattice/trim.js';
import { atan2Deg } from '../number/trigonometry.js';
import { regionBox } from '../shape/ring.js';
import {
  LATTICE_ANGLES,
  LATTICE_LEAST_COPIES,
  LATTICE_REPEATS,
  LATTICE_SHARE,
  LATTICE_WORK,
} from './constants.js';
import type { Copy } from './demand.js';
import { isFreeAt } from './exact-place.js';
import { isLaidBySets, tryToLay } from './first-layout.js';
import { FIRST_EFFORT } from './insert.js';
import type { Layout } from './layout.js';
import { layCopy, liftCopy, variantOf } from './layout.js';
import { inOrder } from './order.js';
import type { PreparedItem } from './prepared-item.js';
import { rulesHold } from './rules.js';

/** Items of which so many are wanted that a repeat is worth a try, the ones that need most leather first. */
export function repeatedItems(layout: Layout): PreparedItem[] {
  const copies = layout.demand.copies.filter((copy) => isLoose(layout, copy));
  const total = copies.reduce((sum, { prepared }) => sum + prepared.areaMm2, 0);
  const counts = new Map<PreparedItem, number>();
  for (const { prepared } of copies) counts.set(prepared, (counts.get(prepared) ?? 0) + 1);
  const repeated = [...counts].filter(([, count]) => count >= LATTICE_LEAST_COPIES);
  const covered = repeated.reduce((sum, [{ areaMm2 }, count]) => sum + count * areaMm2, 0);
  if (covered < LATTICE_SHARE * total) return [];
  const area = ([{ areaMm2 }, count]: [PreparedItem, number]): number => areaMm2 * count;
  return repeated.sort((a, b) => area(b) - area(a) || a[0].index - b[0].index).map(([prepared]) => prepared);
}

/** Bound by nothing but its own rules. */
function isLoose({ demand }: Layout, copy: Copy): boolean {
  const { kind } = demand.sets[copy.set]!;
  return !copy.isFixed && copy.partner < 0 && kind.keep === 'nothing';
}

/**
 * Another first layout: what is wanted many times goes down in repeats, one item after the other, and the rest as
 * ever. Whatever lay is taken off. Yields after each piece or repeat; work is bounded.
 */
export function* layRepeats(layout: Layout, items: readonly PreparedItem[]): Generator<undefined, void> {
  for (const copy of layout.demand.copies) {
    if (!copy.isFixed && layout.laid[copy.index] !== undefined) liftCopy(layout, copy.index);
  }
  for (const prepared of items) {
    const repeats = repeatsFor(layout, prepared);
    yield;
    for (const sheet of layout.allowed[prepared.index]!) {
      const open = openCopies(layout, prepared);
      if (open.length < LATTICE_LEAST_COPIES) break;
      layRepeat(layout, prepared, repeats, sheet, open);
      yield;
    }
  }
  const rest = layout.demand.copies.filter(
    (copy) => layout.laid[copy.index] === undefined && !isLaidBySets(layout, layout.demand.sets[copy.set]!),
  );
  for (const copy of inOrder(
    layout,
    rest.map(({ index }) => index),
  )) {
    tryToLay(layout, copy, FIRST_EFFORT);
    yield;
  }
}

function openCopies(layout: Layout, prepared: PreparedItem): Copy[] {
  return layout.demand.copies.filter(
    (copy) => copy.prepared === prepared && layout.laid[copy.index] === undefined && isLoose(layout, copy),
  );
}

function repeatsFor({ problem }: Layout, { item }: PreparedItem): Repeat[] {
  const { gap } = problem.distances;
  return repeatsOf(item.region, { gap, mayHalfTurn: allowsHalfTurn(item.angleRule), most: LATTICE_REPEATS });
}

function layRepeat(
  layout: Layout,
  prepared: PreparedItem,
  repeats: readonly Repeat[],
  sheet: number,
  open: readonly Copy[],
): void {
  const trimmed = trimBestRepeat(repeats, (repeat) =>
    trimOptions(layout, prepared, repeat, sheet, open.length),
  );
  trimmed?.pieces.forEach(({ x, y, rotationDeg }, k) => {
    layCopy(layout, open[k]!.index, {
      variant: variantOf(layout, prepared, sheet, rotationDeg),
      sheet,
      x,
      y,
    });
  });
}

function trimOptions(
  layout: Layout,
  prepared: PreparedItem,
  repeat: Repeat,
  sheet: number,
  count: number,
): TrimOptions {
  const { item } = prepared;
  const { region, useFrom } = layout.problem.sheets[sheet]!;
  const ahead = atan2Deg(useFrom.y, useFrom.x);
  const rotations = patternRotations(repeat, {
    rule: item.angleRule,
    directionDeg: layout.fields[sheet]!.directions[0] ?? 0,
    sidesDeg: [ahead, ahead + 90],
    most: LATTICE_ANGLES,
  });
  return {
    rotationsDeg: rotations,
    box: regionBox(region),
    useFrom,
    count,
    ring: item.region.outer,
    fits: (x, y, rotationDeg) => mayLie(layout, prepared, sheet, { x, y, rotationDeg }),
    work: LATTICE_WORK,
  };
}

function mayLie(
  layout: Layout,
  prepared: PreparedItem,
  sheet: number,
  { x, y, rotationDeg }: TrimmedRepeat['pieces'][number],
): boolean {
  const variant = variantOf(layout, prepared, sheet, rotationDeg);
  const state = layout.sheets[sheet]!;
  if (!isFreeAt(state, variant, x, y)) return false;
  return rulesHold({ variant, x, y }, state.space.sheet, undefined);
}
