import type { Layout } from './layout.js';
import type { SheetState } from './sheet-state.js';

/** Tables and weights for telling quickly how good a layout is. */
export interface CostTables {
  /** Net area of each sheet up to each lattice column, in mm². */
  readonly upTo: readonly Float64Array[];
  readonly itemAreaMm2: number;
  /** Weight of missing each copy. */
  readonly missWeight: Float64Array;
}

/** Missing a piece outweighs any saving of leather. */
const MISS_WEIGHT = 100;
/** Each step of priority outweighs all pieces below it, up to this many steps. */
const PRIORITY_BASE = 50;
const MOST_PRIORITY_STEPS = 4;
/** Weight of where pieces lie on average, against the area used up: leads over the plateaus of the latter. */
const SPREAD_WEIGHT = 0.25;
/** Opening a sheet counts as this share of all pieces' area, on top of what is used up of it. */
const OPEN_WEIGHT = 0.5;

export function buildCostTables(layout: Layout): CostTables {
  let itemAreaMm2 = 0;
  for (const { prepared, ref } of layout.demand.copies) if (ref.set >= 1) itemAreaMm2 += prepared.areaMm2;
  return {
    upTo: layout.sheets.map(areaByColumn),
    itemAreaMm2: Math.max(1, itemAreaMm2),
    missWeight: missWeights(layout),
  };
}

/** From lattice points inside the sheet, leaving distances aside. */
function areaByColumn({ space }: SheetState): Float64Array {
  const { lattice, empty } = space;
  const { columns, rows, pitch } = lattice;
  const upTo = new Float64Array(columns + 1);
  for (let column = 0; column < columns; column++) {
    let free = 0;
    for (let row = 0; row < rows; row++) if (empty.count[row * columns + column] === 0) free++;
    upTo[column + 1] = upTo[column]! + free * pitch * pitch;
  }
  return upTo;
}

function missWeights(layout: Layout): Float64Array {
  const { copies } = layout.demand;
  const priorities = [...new Set(copies.map(({ prepared }) => prepared.item.priority))].sort((a, b) => a - b);
  return Float64Array.from(copies, ({ prepared }) => {
    const step = Math.min(MOST_PRIORITY_STEPS, priorities.indexOf(prepared.item.priority));
    let weight = MISS_WEIGHT;
    for (let i = 0; i < step; i++) weight *= PRIORITY_BASE;
    return weight;
  });
}

/** Lower is better; `isWanted` tells which copies count as missing when they aren't laid. */
export function costOf(layout: Layout, tables: CostTables, isWanted: Uint8Array): number {
  let cost = 0;
  for (const copy of layout.demand.copies) {
    if (isWanted[copy.index] === 1 && layout.laid[copy.index] === undefined) {
      cost += (tables.missWeight[copy.index]! * (copy.prepared.areaMm2 + 1)) / tables.itemAreaMm2;
    }
  }
  let before = 0;
  layout.sheets.forEach((state, s) => {
    if (state.laid.length > 0) cost += sheetCost(state, tables, s, before);
    before += 1;
  });
  return cost;
}

function sheetCost(state: SheetState, tables: CostTables, index: number, before: number): number {
  const { lattice, netAreaMm2 } = state.space;
  const length = lattice.columns * lattice.pitch;
  let farthest = -Infinity;
  let spread = 0;
  for (const { variant, standing, u } of state.laid) {
    if (standing.maxX > farthest) farthest = standing.maxX;
    const middle = (u + variant.body.minX + standing.maxX) / 2;
    spread += variant.prepared.areaMm2 * (middle - lattice.minX);
  }
  const upTo = tables.upTo[index]!;
  const at = Math.min(lattice.columns, Math.max(0, (farthest - lattice.minX) / lattice.pitch));
  const low = Math.floor(at);
  const high = Math.min(lattice.columns, low + 1);
  const used = upTo[low]! + (at - low) * (upTo[high]! - upTo[low]!);
  const total = tables.itemAreaMm2;
  return (
    used / total +
    OPEN_WEIGHT * (1 + 0.1 * before) +
    (SPREAD_WEIGHT * spread * netAreaMm2) / (length * total * total)
  );
}
