import { regionArea } from '../shape/ring.js';
import type { NestProblem } from '../types/problem.js';

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
