import type { Distances } from '../types/problem.js';
import { areBoxesNear } from './area.js';
import { findTooNear } from './clearance.js';
import type { CheckContext, Placed } from './context.js';
import { laneNeighbourKerf, laneSeats } from './lane-seats.js';
import type { LaneSeat } from './lane-seats.js';
import type { Finding } from './violation.js';
import { copyKey } from './violation.js';

/**
 * Rule `gap`: two items on one sheet keep the gap between their outlines, or the distance between groups where
 * that is more. An item may lie in another one's opening. Neighbours in a lane keep the lane's kerf instead: on
 * the line that two rows share, and at the straight cut across that two straps of one row share.
 */
export function findGapFaults(context: CheckContext): readonly Finding[] {
  const { distances } = context.problem;
  const seats = laneSeats(context.answer);
  const kerfs = context.answer.lanes.map((lane) => lane.kerfMm);
  const reach = Math.max(distances.gap, distances.betweenGroups ?? 0, ...kerfs);
  const findings: Finding[] = [];
  for (const placed of context.bySheet.values()) {
    for (const [i, k] of nearPairs(placed, reach)) {
      const one = placed[i]!;
      const other = placed[k]!;
      const required = requiredGap(one, other, distances, seats);
      const shortfall = findTooNear(one.area, other.area, required);
      if (shortfall === undefined) continue;
      findings.push({
        rule: 'gap',
        at: one.copy,
        other: other.copy,
        sheet: one.placement.sheet,
        place: shortfall.place,
        measured: shortfall.measured,
        required,
      });
    }
  }
  return findings;
}

function requiredGap(
  one: Placed,
  other: Placed,
  distances: Distances,
  seats: ReadonlyMap<string, LaneSeat>,
): number {
  const kerf = laneNeighbourKerf(seats.get(copyKey(one.copy)), seats.get(copyKey(other.copy)));
  if (kerf !== undefined) return kerf;
  if (one.item.group === other.item.group) return distances.gap;
  return Math.max(distances.gap, distances.betweenGroups ?? 0);
}

/** Every pair whose boxes come within reach, each once, in the order of the answer: swept from left to right. */
function nearPairs(placed: readonly Placed[], reach: number): readonly (readonly [number, number])[] {
  const pairs: (readonly [number, number])[] = [];
  const order = placed.map((_, i) => i);
  order.sort((i, k) => placed[i]!.area.box.minX - placed[k]!.area.box.minX || i - k);
  for (const [rank, i] of order.entries()) {
    const limit = placed[i]!.area.box.maxX + reach;
    for (let next = rank + 1; next < order.length; next++) {
      const k = order[next]!;
      if (placed[k]!.area.box.minX > limit) break;
      if (!areBoxesNear(placed[i]!.area.box, placed[k]!.area.box, reach)) continue;
      pairs.push(i < k ? [i, k] : [k, i]);
    }
  }
  return pairs.sort(([i, k], [l, m]) => i - l || k - m);
}
