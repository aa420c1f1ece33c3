import { MOST_ROWS } from './constants.js';
import { limitInBand, openEndT } from './corridor.js';
import { laneWorth } from './lane-cost.js';
import type { LaneExtent, SheetCosts } from './lane-cost.js';
import type { LaneSite } from './lane-site.js';
import type { FilledRow, SeatedStrap, StockEntry } from './row.js';
import { fillRow } from './row.js';

/** A lane as the search holds it. */
export interface LaneDraft extends LaneExtent {
  readonly site: LaneSite;
  /** 1: rows follow the first cut towards greater v; -1: towards smaller v. */
  readonly side: 1 | -1;
  readonly worth: number;
}

/** Where a lane is to begin. */
export interface LaneStart {
  /** The first cut, across. */
  readonly firstV: number;
  readonly side: 1 | -1;
  readonly openSign: 1 | -1;
  /** Width of its first row. */
  readonly leadMm: number;
  /** How far it may reach from the start of its first strap. */
  readonly reachMm: number;
}

/** What grows row by row. */
interface Growth {
  readonly rows: FilledRow[];
  stock: readonly StockEntry[];
  limitT: number;
  edgeV: number;
  startT: number;
  endT: number;
}

/**
 * Row after row from the first cut on, each of the width that lays the hardest of what is left; then as many of these rows as
 * are worth most. Undefined where not even the first row takes a strap.
 */
export function stackRows(
  site: LaneSite,
  costs: SheetCosts,
  stock: readonly StockEntry[],
  start: LaneStart,
): LaneDraft | undefined {
  const growth: Growth = {
    rows: [],
    stock,
    limitT: Infinity,
    edgeV: start.firstV,
    startT: Infinity,
    endT: -Infinity,
  };
  let best: LaneDraft | undefined;
  while (growth.rows.length < MOST_ROWS && addRow(site, start, growth)) {
    const draft = draftOf(site, costs, start, growth);
    if (best === undefined || draft.worth > best.worth) best = draft;
  }
  return best;
}

function addRow(site: LaneSite, start: LaneStart, growth: Growth): boolean {
  if (isTooNarrowBetween(site, growth)) return false;
  const best = growth.rows.length === 0 ? leadRow(site, start, growth) : bestRow(site, start, growth);
  if (best === undefined) return false;
  const { row, limitT } = best;
  growth.rows.push(row);
  growth.limitT = Math.min(growth.limitT, limitT);
  growth.edgeV = start.side > 0 ? row.lowV + row.widthMm : row.lowV;
  growth.startT = Math.min(growth.startT, row.startT);
  growth.endT = Math.max(growth.endT, row.endT);
  growth.stock = stockWithout(growth.stock, row);
  return true;
}

/** Rows that share no line keep the gap: the row between them must be as wide. */
function isTooNarrowBetween({ distances, kerfMm }: LaneSite, { rows }: Growth): boolean {
  if (rows.length < 2) return false;
  return rows[rows.length - 1]!.widthMm + 2 * kerfMm < distances.gap;
}

interface RowChoice {
  readonly row: FilledRow;
  readonly limitT: number;
}

/** The first row starts where its first strap can lie, and that sets how far the lane may reach. */
function leadRow(site: LaneSite, start: LaneStart, growth: Growth): RowChoice | undefined {
  const row = rowOfWidth(site, start, growth, start.leadMm);
  if (row === undefined || start.reachMm === Infinity) return row;
  growth.limitT = row.row.startT + start.reachMm;
  return rowOfWidth(site, start, growth, start.leadMm);
}

function bestRow(site: LaneSite, start: LaneStart, growth: Growth): RowChoice | undefined {
  const urgent = Math.max(...growth.stock.map(({ kind }) => kind.prepared.item.priority));
  let best: RowChoice | undefined;
  let urgentBest = 0;
  let allBest = 0;
  for (const widthMm of widthsOf(growth.stock)) {
    const choice = rowOfWidth(site, start, growth, widthMm);
    if (choice === undefined) continue;
    const ofUrgent = hardship(choice.row.straps.filter(({ kind }) => kind.prepared.item.priority === urgent));
    const ofAll = hardship(choice.row.straps);
    if (best !== undefined && (ofUrgent < urgentBest || (ofUrgent === urgentBest && ofAll <= allBest)))
      continue;
    best = choice;
    urgentBest = ofUrgent;
    allBest = ofAll;
  }
  return best;
}

/** Area times length: long and wide straps find few places, so that they go first. */
function hardship(straps: readonly SeatedStrap[]): number {
  return straps.reduce((sum, { kind }) => sum + kind.prepared.areaMm2 * kind.lengthMm, 0);
}

/** Widths that are left, the widest first. */
export function widthsOf(stock: readonly StockEntry[]): number[] {
  const widths = new Set(stock.filter(({ count }) => count > 0).map(({ kind }) => kind.lane.widthMm));
  return [...widths].sort((a, b) => b - a);
}

function rowOfWidth(
  site: LaneSite,
  start: LaneStart,
  growth: Growth,
  widthMm: number,
): RowChoice | undefined {
  const kerf = growth.rows.length === 0 ? 0 : site.kerfMm;
  const lowV = start.side > 0 ? growth.edgeV + kerf : growth.edgeV - kerf - widthMm;
  const band = start.side > 0 ? [lowV - kerf, lowV + widthMm] : [lowV, lowV + widthMm + kerf];
  const limitT = limitInBand(
    site.occupied.map(({ soup }) => soup),
    { lowV: band[0]!, highV: band[1]! },
    start.openSign,
  );
  // The rows before reach past something that lies beside them: the lane can't take in this row.
  if (limitT < growth.endT) return undefined;
  const seat = { lowV, widthMm, openSign: start.openSign, limitT: Math.min(limitT, growth.limitT) };
  const row = fillRow(site, seat, growth.stock);
  return row.straps.length === 0 ? undefined : { row, limitT };
}

function stockWithout(stock: readonly StockEntry[], { straps }: FilledRow): StockEntry[] {
  return stock
    .map(({ kind, count }) => ({
      kind,
      count: count - straps.reduce((sum, strap) => (strap.kind === kind ? sum + 1 : sum), 0),
    }))
    .filter(({ count }) => count > 0);
}

function draftOf(site: LaneSite, costs: SheetCosts, start: LaneStart, growth: Growth): LaneDraft {
  const { firstV, side, openSign } = start;
  const band = side > 0 ? { lowV: firstV, highV: growth.edgeV } : { lowV: growth.edgeV, highV: firstV };
  const extent: LaneExtent = {
    rows: [...growth.rows],
    openSign,
    openT: openEndT(site.space.outline, band, growth.startT, openSign),
    endT: growth.endT,
    ...band,
  };
  return { ...extent, site, side, worth: laneWorth(site.space, costs, extent) };
}
