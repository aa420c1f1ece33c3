import { convexHull } from '../shape/hull.js';
import { boxesTouch, regionArea, ringArea, ringBox, ringPerimeter } from '../shape/ring.js';
import { transformRing } from '../shape/affine.js';
import type { NestProblem, Placement, RoughCut } from '../types/problem.js';
import type { Box, Ring } from '../types/shape.js';
import { BLOCK_WORTH_MM2 } from './constants.js';
import { pieceOf } from './grown.js';
import { outlineCost } from './straighten.js';

/**
 * In which order groups are best laid: a rank for each item by its id. Items of one group that is to be cut in blocks
 * share a rank, the group with the largest area first; items without a rough cut come last. Laid in this order
 * (within equal priority), each group finds the leather beside itself still free.
 */
export function groupRanks(problem: NestProblem): ReadonlyMap<string, number> {
  const areas = new Map<string, number>();
  const items = new Map(problem.items.map((item) => [item.id, item]));
  for (const { sets, members } of problem.setKinds) {
    for (const { item: id, count } of members) {
      const item = items.get(id);
      if (item?.roughMargin === undefined || item.group === undefined) continue;
      const copies = count * (sets === 'many' ? 1 : sets);
      areas.set(item.group, (areas.get(item.group) ?? 0) + copies * regionArea(item.region));
    }
  }
  // Sorting is stable: equal areas stay in the order of the set kinds.
  const order = [...areas.keys()].sort((a, b) => areas.get(b)! - areas.get(a)!);
  const rankOf = (group: string | undefined): number => {
    const rank = group === undefined ? -1 : order.indexOf(group);
    return rank < 0 ? order.length : rank;
  };
  return new Map(
    problem.items.map((item) => [
      item.id,
      item.roughMargin === undefined ? order.length : rankOf(item.group),
    ]),
  );
}

/** What rough cuts take, to compare layouts by: less is better. */
export interface RoughCutScore {
  readonly blocks: number;
  /** Of all blocks together. */
  readonly areaMm2: number;
  /** Area, with length of cut, corners and number of blocks at their worth in leather. */
  readonly costMm2: number;
}

/** The score of drawn rough cuts. */
export function scoreRoughCuts(roughCuts: readonly Pick<RoughCut, 'outline'>[]): RoughCutScore {
  let areaMm2 = 0;
  let costMm2 = 0;
  for (const { outline } of roughCuts) {
    areaMm2 += ringArea(outline);
    costMm2 += outlineCost(outline) + BLOCK_WORTH_MM2;
  }
  return { blocks: roughCuts.length, areaMm2, costMm2 };
}

interface Clump {
  readonly box: Box;
  readonly hull: Ring;
  readonly marginMm: number;
}

/**
 * A quick guess at that score before rough cuts are drawn: pieces of a group whose boxes, grown by their margins,
 * overlap count as one block, with the convex hull of them all, grown, as its outline. Work grows with the square of
 * the pieces of a group on a sheet.
 */
export function guessRoughCutScore(problem: NestProblem, placements: readonly Placement[]): RoughCutScore {
  const items = new Map(problem.items.map((item) => [item.id, item]));
  const hulls = new Map<string, Ring>();
  const groups = new Map<string, Clump[]>();
  for (const placement of placements) {
    const item = items.get(placement.item);
    if (item?.roughMargin === undefined) continue;
    const own = hulls.get(item.id) ?? convexHull(item.region.outer);
    hulls.set(item.id, own);
    const hull = transformRing(pieceOf(item, placement, false).at, own);
    const key = JSON.stringify([placement.sheet, item.group ?? null]);
    groups.set(
      key,
      absorbed({ box: ringBox(hull), hull, marginMm: item.roughMargin }, groups.get(key) ?? []),
    );
  }
  const clumps = [...groups.values()].flat();
  let areaMm2 = 0;
  let costMm2 = 0;
  for (const { hull, marginMm } of clumps) {
    // A convex outline grown by m gains its length times m, and a disc of radius m.
    const area = ringArea(hull) + ringPerimeter(hull) * marginMm + ROUND * marginMm * marginMm;
    areaMm2 += area;
    costMm2 += outlineCost(hull) - ringArea(hull) + area + BLOCK_WORTH_MM2;
  }
  return { blocks: clumps.length, areaMm2, costMm2 };
}

/** Area of the unit disc. */
const ROUND = Math.PI;

/** The clumps with one more, those that it meets united with it. */
function absorbed(added: Clump, clumps: readonly Clump[]): Clump[] {
  let grown = added;
  let rest = clumps;
  for (;;) {
    const met = rest.filter((clump) => doClumpsMeet(clump, grown));
    if (met.length === 0) return [...rest, grown];
    const all = [...met, grown];
    const hull = convexHull(all.flatMap((clump) => clump.hull));
    grown = { hull, box: ringBox(hull), marginMm: Math.max(...all.map(({ marginMm }) => marginMm)) };
    rest = rest.filter((clump) => !met.includes(clump));
  }
}

function doClumpsMeet(a: Clump, b: Clump): boolean {
  return boxesTouch(a.box, b.box, a.marginMm + b.marginMm);
}
