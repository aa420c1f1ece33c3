import { layLanes } from '../lane/lay-lanes.js';
import { roomAround } from '../rough/kept-apart.js';
import type { Distances, FixedPlacement, Item, Lane, NestProblem } from '../types/problem.js';

/** A problem without lanes and rough cuts, and what was done about them. */
export interface InnerProblem {
  /** Straps lie fixed in their lanes; items with rough cuts keep apart as their blocks must. */
  readonly problem: NestProblem;
  readonly lanes: readonly Lane[];
}

/** Straps are laid in lanes first: they need the longest runs of good leather. */
export function innerProblem(problem: NestProblem): InnerProblem {
  const hasLanes = problem.items.some(({ lane }) => lane !== undefined);
  const laid = hasLanes ? layLanes(problem) : { lanes: [], placements: [] };
  const straps = laid.placements.map((placement): FixedPlacement => ({ ...placement, accepted: [] }));
  return {
    problem: {
      ...problem,
      items: problem.items.map(withoutLane),
      fixed: [...problem.fixed, ...straps],
      distances: roomyDistances(problem),
    },
    lanes: laid.lanes,
  };
}

/** A strap lies in a lane or nowhere. */
function withoutLane(item: Item): Item {
  if (item.lane === undefined) return item;
  const { lane: _, ...rest } = item;
  return { ...rest, sheets: [] };
}

/**
 * Distances at which every rough cut can be drawn: for the first layout, which knows one distance for all. The search
 * after it knows each item's own.
 */
function roomyDistances({ items, distances }: NestProblem): Distances {
  const rooms = items.map(roomAround).sort((a, b) => b - a);
  if ((rooms[0] ?? 0) === 0) return distances;
  const [first = 0, second = 0] = rooms;
  return {
    ...distances,
    edge: Math.max(distances.edge, first),
    betweenGroups: Math.max(distances.gap, distances.betweenGroups ?? 0, first + second),
  };
}
