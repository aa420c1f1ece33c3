import { laneRegion } from '../lane/lane-region.js';
import { laySetLanes } from '../lane/set-lanes.js';
import { roomAround } from '../rough/kept-apart.js';
import type { CopyRef, Distances, FixedPlacement, Item, Lane, NestProblem, Sheet } from '../types/problem.js';
import { createLayout } from './layout.js';
import { reasonFor } from './reasons.js';
import type { Reasons } from './reasons.js';
import type { TakenRegion } from './taken-region.js';

/** A problem without lanes and rough cuts, and what was done about them. */
export interface InnerProblem {
  /** Straps lie fixed in their lanes, which are taken; items with rough cuts keep apart as their blocks must. */
  readonly problem: NestProblem;
  readonly lanes: readonly Lane[];
  /** Why straps that lie in no lane don't. */
  readonly reasons: Reasons;
}

/** Straps are laid in lanes first: they need the longest runs of good leather. */
export function innerProblem(problem: NestProblem): InnerProblem {
  const hasLanes = problem.items.some(({ lane }) => lane !== undefined);
  const laid = hasLanes ? laySetLanes(problem) : { lanes: [], placements: [], left: [] };
  const straps = laid.placements.map((placement): FixedPlacement => ({ ...placement, accepted: [] }));
  return {
    problem: {
      ...problem,
      items: problem.items.map(withoutLane),
      sheets: problem.sheets.map((sheet) => withTaken(problem, sheet, laid.lanes)),
      fixed: [...problem.fixed, ...straps],
      distances: roomyDistances(problem),
    },
    lanes: laid.lanes,
    reasons: strapReasons(problem, laid.left),
  };
}

/** A strap lies in a lane or nowhere. */
function withoutLane(item: Item): Item {
  if (item.lane === undefined) return item;
  const { lane: _, ...rest } = item;
  return { ...rest, sheets: [] };
}

/** As for any other piece, if the leather and the rules were the only thing in its way. */
function strapReasons(problem: NestProblem, left: readonly CopyRef[]): Reasons {
  const reasons: Reasons = new Map();
  if (left.length === 0) return reasons;
  const layout = createLayout({ ...problem, fixed: [] });
  const names = new Set(left.map(({ item }) => item));
  for (const prepared of layout.prepared.items) {
    if (names.has(prepared.item.id)) reasonFor(reasons, layout, prepared);
  }
  return reasons;
}

/** The sheet whose lanes no other piece may reach into, not even where no strap lies in them. */
function withTaken(problem: NestProblem, sheet: Sheet, lanes: readonly Lane[]): Sheet {
  const own = lanes.filter((lane) => lane.sheet === sheet.id);
  if (own.length === 0) return sheet;
  const { gap, edge, void: fromVoid } = problem.distances;
  const rooms = problem.items.filter(({ sheets }) => sheets.includes(sheet.id)).map(roomAround);
  const room = Math.max(0, ...rooms);
  const taken = own.map((lane): TakenRegion => ({
    id: lane.id,
    areas: [laneRegion(lane)],
    grade: 0,
    weak: false,
    isVoid: true,
    // The first layout adds the void distance, which a lane has none of.
    uncertaintyMm: Math.max(gap, room) - fromVoid,
    // In the search, rough cuts grow their pieces by what the edge distance falls short of.
    searchClearMm: Math.max(gap, Math.min(edge, room)),
  }));
  return { ...sheet, qualities: [...sheet.qualities, ...taken] };
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
