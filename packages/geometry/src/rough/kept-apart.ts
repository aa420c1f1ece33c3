import { offsetRegions, unionRegions } from '../shape/clipper.js';
import { ringArea } from '../shape/ring.js';
import type { Item, NestProblem } from '../types/problem.js';
import type { Region } from '../types/shape.js';
import { ROUGH_ROOM_MM } from './constants.js';

/**
 * `shared`: pieces of one group may share a rough cut, and keep no more than the gap between them. `own`: each
 * keeps room for one of its own, so that whatever lies around it, it can be drawn.
 */
export interface KeptApartOptions {
  readonly blocks?: 'shared' | 'own';
}

/**
 * The least distance in mm between the outlines of two items, so that their rough cuts can be drawn: the gap (or the
 * distance between groups), or the margins of both and a little room where the items can't share a rough cut. An
 * item without one keeps off the margin of others, also of its own group. Lane neighbours are not spoken of here.
 *
 * Distances do not forbid two things, which `roughCutsFor` finds: a foreign item in an opening or a closed bay of an
 * item (never so if `roughShape` stands for the item), and one that is ringed by a group.
 */
export function keptApart(
  { distances }: Pick<NestProblem, 'distances'>,
  options: KeptApartOptions = {},
): (one: Item, other: Item) => number {
  const between = Math.max(distances.gap, distances.betweenGroups ?? 0);
  const canShare = options.blocks !== 'own';
  return (one, other) => {
    const isSameGroup = one.group === other.group;
    const gap = isSameGroup ? distances.gap : between;
    if (canShare && isSameGroup && one.roughMargin !== undefined && other.roughMargin !== undefined)
      return gap;
    return Math.max(gap, roomAround(one) + roomAround(other));
  };
}

/**
 * The least distance in mm of an item from its sheet's outline: a rough cut is cut from the hide and never runs over
 * its edge. Openings and voids are kept off as by any item: a rough cut may have them within.
 */
export function keptFromOutline({ distances }: Pick<NestProblem, 'distances'>): (item: Item) => number {
  return (item) => Math.max(distances.edge, roomAround(item));
}

/** Room for an item's own rough cut around it, in mm; 0 without one. */
export function roomAround(item: Pick<Item, 'roughMargin'>): number {
  return item.roughMargin === undefined ? 0 : item.roughMargin + ROUGH_ROOM_MM;
}

/**
 * The item as others meet it that can't share its rough cut, in its own frame: a block has no openings, so the item's
 * own are closed, and bays whose mouth its margin closes. The item's region itself where it has no rough cut.
 */
export function roughShape(item: Pick<Item, 'region' | 'roughMargin'>): Region {
  if (item.roughMargin === undefined) return item.region;
  const filled: Region = { outer: item.region.outer, openings: [] };
  const margin = roomAround(item);
  const [grown] = offsetRegions([filled], margin, { join: 'round' });
  if (grown === undefined || grown.openings.length === 0) return filled;
  const shrunk = offsetRegions([{ outer: grown.outer, openings: [] }], -margin, { join: 'round' });
  const [closed] = largestFirst(unionRegions([filled, ...shrunk]));
  return closed === undefined ? filled : { outer: closed.outer, openings: [] };
}

function largestFirst(regions: readonly Region[]): Region[] {
  return [...regions].sort((a, b) => ringArea(b.outer) - ringArea(a.outer));
}
