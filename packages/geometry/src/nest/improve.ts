import type { Random } from '../number/random.js';
import type { CostTables } from './cost.js';
import { costOf } from './cost.js';
import type { Wanted } from './first-layout.js';
import { tryToLay } from './first-layout.js';
import { improvingEffort } from './insert.js';
import type { Layout } from './layout.js';
import { layCopyAgain, liftCopy } from './layout.js';
import { roughlyBySize, shuffled } from './order.js';
import type { Laid } from './sheet-state.js';

/** What the improvement carries from step to step. */
export interface Improvement {
  readonly layout: Layout;
  readonly wanted: Wanted;
  readonly tables: CostTables;
  readonly random: Random;
  /** By item: 1 if it doesn't fit even an empty sheet, so that looking for a place is in vain. */
  readonly hopeless: Uint8Array;
  cost: number;
  best: number;
  /** What lay where when the cost was best. */
  bestLaid: (Laid | undefined)[];
  stepsSinceBest: number;
}

/** A layout that is worse than the best by no more than this is gone on from. */
const WORSE_ALLOWED = 0.004;
/** After so many steps without a better layout, the best one is taken up again. */
const STEPS_BEFORE_RETURN = 60;
/** Most pieces that one step takes off. */
const MOST_LIFTED = 9;
/** Most missing pieces that one step tries to lay. */
const MOST_MISSING = 3;
/** Share of the steps that also look for exact fits, which takes longer. */
const EXACT_FIT_SHARE = 0.25;

export function startImprovement(
  layout: Layout,
  wanted: Wanted,
  tables: CostTables,
  random: Random,
  hopeless: Uint8Array,
): Improvement {
  const cost = costOf(layout, tables, wanted.copies);
  return {
    layout,
    wanted,
    tables,
    random,
    hopeless,
    cost,
    best: cost,
    bestLaid: [...layout.laid],
    stepsSinceBest: 0,
  };
}

/**
 * One step: takes some pieces off, lays them and some missing ones again in another order and at other angles, and
 * keeps the result unless it is much worse. Yields after each piece.
 */
export function* improveStep(one: Improvement): Generator<undefined, void> {
  const { layout, wanted, random } = one;
  const missing = shuffled(missingCopies(one), random).slice(0, MOST_MISSING);
  const lifted = chooseLifted(one).map((copy) => liftCopy(layout, copy));
  const present = new Map(lifted.map((laid) => [laid.copy, laid.variant.rotationDeg]));
  const effort = improvingEffort(random, 0.6 * random.next(), random.next() < EXACT_FIT_SHARE);
  const added: number[] = [];
  let lost = 0;
  for (const copy of reorder(one, [...present.keys()], missing)) {
    if (tryToLay(layout, copy, effort, undefined, present.get(copy))) added.push(copy);
    else if (present.has(copy)) lost++;
    yield;
    // Pieces that lay and find no place again are only worth it for missing pieces that did.
    if (lost > missing.length) break;
  }
  const cost = lost > missing.length ? Infinity : costOf(layout, one.tables, wanted.copies);
  if (cost <= one.best + WORSE_ALLOWED) keep(one, cost);
  else undo(one, added, lifted);
  if (++one.stepsSinceBest > STEPS_BEFORE_RETURN) {
    restore(layout, one.bestLaid);
    one.cost = one.best;
    one.stepsSinceBest = 0;
  }
}

function keep(one: Improvement, cost: number): void {
  one.cost = cost;
  if (cost >= one.best) return;
  one.best = cost;
  one.bestLaid = [...one.layout.laid];
  one.stepsSinceBest = 0;
}

function undo(one: Improvement, added: readonly number[], lifted: readonly Laid[]): void {
  for (const copy of added) liftCopy(one.layout, copy);
  for (const laid of lifted) layCopyAgain(one.layout, laid);
}

/** Makes the layout what it was, touching only what differs. */
export function restore(layout: Layout, laid: readonly (Laid | undefined)[]): void {
  for (let copy = 0; copy < laid.length; copy++) {
    if (layout.laid[copy] !== laid[copy] && layout.laid[copy] !== undefined) liftCopy(layout, copy);
  }
  for (const one of laid) {
    if (one !== undefined && layout.laid[one.copy] !== one) layCopyAgain(layout, one);
  }
}

function missingCopies({ layout, wanted, hopeless }: Improvement): number[] {
  const missing: number[] = [];
  for (let copy = 0; copy < wanted.copies.length; copy++) {
    if (wanted.copies[copy] !== 1 || layout.laid[copy] !== undefined) continue;
    if (hopeless[layout.demand.copies[copy]!.prepared.index] === 0) missing.push(copy);
  }
  return missing;
}

/** Which pieces to take off: those at the far end, a cluster, or both. */
function chooseLifted(one: Improvement): number[] {
  const { layout, random } = one;
  const movable = layout.laid.filter(
    (laid): laid is Laid => laid !== undefined && !layout.demand.copies[laid.copy]!.isFixed,
  );
  if (movable.length === 0) return [];
  const most = Math.min(MOST_LIFTED, movable.length);
  const chosen = new Set<number>();
  const draw = random.next();
  if (draw < 0.55) {
    const farthest = farthestOf(movable, random);
    chosen.add(farthest.copy);
    const beside = draw < 0.2 ? farthest : movable[random.integer(movable.length)]!;
    addNearest(chosen, movable, beside, 1 + random.integer(most));
  } else {
    addNearest(chosen, movable, movable[random.integer(movable.length)]!, 1 + random.integer(most));
  }
  return [...chosen];
}

/** One of the few that reach farthest on the last sheet that is used. */
function farthestOf(movable: readonly Laid[], random: Random): Laid {
  let last = -1;
  for (const { sheet } of movable) if (sheet > last) last = sheet;
  const sheet = random.next() < 0.8 ? last : movable[random.integer(movable.length)]!.sheet;
  const own = movable.filter((laid) => laid.sheet === sheet);
  own.sort((a, b) => b.standing.maxX - a.standing.maxX || a.copy - b.copy);
  return own[random.integer(Math.min(3, own.length))]!;
}

function addNearest(chosen: Set<number>, movable: readonly Laid[], to: Laid, count: number): void {
  const near = movable
    .filter(({ sheet }) => sheet === to.sheet)
    .map((laid) => ({ copy: laid.copy, distance: centreDistance(laid, to) }));
  near.sort((a, b) => a.distance - b.distance || a.copy - b.copy);
  for (const { copy } of near.slice(0, count)) chosen.add(copy);
}

/** Between the middles of the boxes. */
function centreDistance({ standing: a }: Laid, { standing: b }: Laid): number {
  const dx = (a.minX + a.maxX - b.minX - b.maxX) / 2;
  const dy = (a.minY + a.maxY - b.minY - b.maxY) / 2;
  return Math.sqrt(dx * dx + dy * dy);
}

function reorder(one: Improvement, lifted: readonly number[], missing: readonly number[]): number[] {
  const { layout, random } = one;
  const draw = random.next();
  if (missing.length > 0 && draw < 0.4) {
    return [...roughlyBySize(layout, missing, random, 0.5), ...roughlyBySize(layout, lifted, random, 0.5)];
  }
  const all = [...lifted, ...missing];
  return draw < 0.75 ? roughlyBySize(layout, all, random, 1) : shuffled(all, random);
}
