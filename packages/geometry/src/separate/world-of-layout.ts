import { roomAround } from '../rough/kept-apart.js';
import type { Copy } from '../nest/demand.js';
import type { Layout } from '../nest/layout.js';
import type { PreparedItem } from '../nest/prepared-item.js';
import type { Random } from '../number/random.js';
import type { Distances, Item, SetKind } from '../types/problem.js';
import { anglesOf } from './angles.js';
import { LOOSE_EASE_SHARE, TIGHT_EASE_MM } from './constants.js';
import { shapesOf } from './kinds.js';
import type { Mate } from './rules.js';
import { placeRules } from './rules.js';
import { buildSepSheet } from './sheet-grounds.js';
import type { Kind, SepSheet, World } from './world.js';
import { createWorld } from './world.js';

/** What stays the same whichever copies are in the world. */
export interface Scene {
  readonly layout: Layout;
  readonly distances: Distances;
  readonly kinds: readonly Kind[];
  readonly sheets: readonly SepSheet[];
  /** Insets of the contours, the loosest first; one where every sheet is more than a box. */
  readonly eases: readonly number[];
}

/** Yields after each sheet and item. `distances` are those that were asked for: the layout's own leave room for the largest rough cut. */
export function* buildScene(layout: Layout, distances: Distances): Generator<undefined, Scene> {
  const { problem, prepared } = layout;
  const sheets: SepSheet[] = [];
  for (const sheet of problem.sheets) {
    sheets.push(buildSepSheet(sheet, distances, prepared.needs));
    yield;
  }
  const hasGround = sheets.some(({ grounds }) => grounds[0] !== undefined);
  const strictNeeds = new Set(
    prepared.needs.map((_, c) => c).filter((c) => sheets.some(({ grounds }) => grounds[1 + c] !== undefined)),
  );
  const eases =
    hasGround || strictNeeds.size > 0 ? [TIGHT_EASE_MM] : [looseEase(prepared.items), TIGHT_EASE_MM];
  const { gap } = distances;
  const farthest = Math.max(gap, distances.betweenGroups ?? 0) / 2;
  const hasGroups = prepared.groups.length > 1;
  const kinds: Kind[] = [];
  for (const one of prepared.items) {
    const room = Math.max(farthest, roomAround(one.item));
    kinds.push({
      shapes: shapesOf(one, {
        pairGrowth: gap / 2,
        farGrowth: hasGroups ? room : gap / 2,
        edgeGrowth: Math.max(0, roomAround(one.item) - distances.edge),
        hasGround,
        strictNeeds,
        eases,
      }),
      angles: anglesOf(one.item.angleRule, layout.fields),
      group: one.group,
    });
    yield;
  }
  return { layout, distances, kinds, sheets, eases };
}

function looseEase(items: readonly PreparedItem[]): number {
  const mean = items.reduce((sum, { areaMm2 }) => sum + areaMm2, 0) / items.length;
  return Math.max(TIGHT_EASE_MM, LOOSE_EASE_SHARE * Math.sqrt(mean));
}

/** A world of some copies, in which nothing lies yet; those in `still` will not move from where they are put. */
export function worldOf(
  scene: Scene,
  copies: readonly Copy[],
  still: ReadonlySet<number>,
  random: Random,
): World {
  const pieceOf = new Map(copies.map((copy, piece) => [copy.index, piece]));
  const mates = copies.map((copy): Mate | undefined => {
    const piece = pieceOf.get(copy.partner);
    if (piece === undefined) return undefined;
    return { piece, mirrored: (copy.isMirrored ? copy : copies[piece]!).prepared };
  });
  const prepared = copies.map((copy) => copy.prepared);
  const made: { world?: World } = {};
  const rules = placeRules(scene.layout, prepared, mates, () => made.world!);
  made.world = createWorld({
    kinds: scene.kinds,
    kindOf: prepared.map(({ index }) => index),
    sheets: scene.sheets.map((sheet) => ({ ...sheet })),
    mayLie: copies.map(() => []),
    isFixed: copies.map(({ index }) => still.has(index)),
    random,
    ...(rules === undefined ? {} : { rules }),
  });
  return made.world;
}

/**
 * Sheets on which each copy may lie while the others of its set stay on their sheet or lot; `at` are the sheets where
 * they lie, -1 for nowhere.
 */
export function sheetsForCopies(
  scene: Scene,
  copies: readonly Copy[],
  at: Int32Array,
): (readonly number[])[] {
  const { layout, sheets } = scene;
  const bySet = new Map<number, number[]>();
  copies.forEach((copy, i) => {
    const list = bySet.get(copy.set);
    if (list === undefined) bySet.set(copy.set, [i]);
    else list.push(i);
  });
  return copies.map((copy) => {
    const allowed = layout.allowed[copy.prepared.index]!.filter((s) => !sheets[s]!.isEmpty);
    const { keep } = layout.demand.sets[copy.set]!.kind;
    if (!isHeld(keep, copy.prepared.item)) return allowed;
    const group = keep === 'sheet' ? undefined : copy.prepared.item.group;
    // The first of its set that lies tells for all, this one included.
    const first = bySet.get(copy.set)!.find((other) => {
      const { item } = copies[other]!.prepared;
      return at[other]! >= 0 && isHeld(keep, item) && (keep === 'sheet' || item.group === group);
    });
    if (first === undefined) return allowed;
    const own = at[first]!;
    if (keep === 'sheet') return allowed.filter((s) => s === own);
    const { lot } = layout.problem.sheets[own]!;
    return allowed.filter((s) => layout.problem.sheets[s]!.lot === lot);
  });
}

function isHeld(keep: SetKind['keep'], item: Item): boolean {
  return keep !== 'nothing' && (keep !== 'faceLot' || item.isFace);
}
