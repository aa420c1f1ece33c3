import { prepareItems } from '../nest/prepared-item.js';
import type { CopyRef, Lane, Need, NestProblem, Placement, Sheet } from '../types/problem.js';
import type { Region } from '../types/shape.js';
import { MOST_LANES_PER_SHEET, MOST_LIMITED, REACHES } from './constants.js';
import type { LaneTaste } from './constants.js';
import type { LaidLane } from './emit.js';
import { emitLane } from './emit.js';
import { laneAngles } from './lane-angles.js';
import type { SheetCosts } from './lane-cost.js';
import { countAsUsed, sheetCosts } from './lane-cost.js';
import { laneId, laneRegion } from './lane-region.js';
import type { LaneSite } from './lane-site.js';
import { createLaneSite, occupy } from './lane-site.js';
import type { Occupied } from './lane-space.js';
import { lanesAround } from './lying-lanes.js';
import { placedRegion } from './placed-region.js';
import type { StockEntry } from './row.js';
import { createFieldLook } from './rule-look.js';
import type { LaneDraft, LaneStart } from './stack.js';
import { stackRows, widthsOf } from './stack.js';
import { laneStarts } from './starts.js';
import type { StrapKind } from './strap-kind.js';
import { strapKindOf } from './strap-kind.js';

/** A copy that is to be laid in a lane. */
export interface LaneCopy extends CopyRef {
  /** Narrows the sheets that its item may lie on (those of its set, say). */
  readonly sheets?: readonly string[];
}

/** Lanes with their straps. */
export interface LaidLanes {
  readonly lanes: readonly Lane[];
  readonly placements: readonly Placement[];
}

/** What one try starts from. */
export interface LaneTask {
  readonly problem: NestProblem;
  readonly copies: readonly LaneCopy[];
  readonly lying: readonly Placement[];
  readonly kerfMm: number;
}

/** What the search for lanes holds. */
interface LaneSearch {
  readonly problem: NestProblem;
  readonly kinds: ReadonlyMap<string, StrapKind>;
  readonly needs: readonly Need[];
  readonly kerfMm: number;
  readonly open: LaneCopy[];
  readonly lanes: Lane[];
  readonly placements: Placement[];
}

/** One try: sheet after sheet, lane after lane, each the one that is worth most. */
export function layOnce({ problem, copies, lying, kerfMm }: LaneTask, taste: LaneTaste): LaidLanes {
  const straps = problem.items.filter(({ lane }) => lane !== undefined);
  const prepared = prepareItems({ ...problem, items: straps });
  const kinds = new Map<string, StrapKind>();
  for (const one of prepared.items) {
    const kind = strapKindOf(one);
    if (kind !== undefined) kinds.set(one.item.id, kind);
  }
  const search: LaneSearch = {
    problem,
    kinds,
    needs: prepared.needs,
    kerfMm,
    open: [...copies],
    lanes: lanesAround(problem, lying),
    placements: [],
  };
  const longestMm = Math.max(...[...kinds.values()].map(({ lengthMm }) => lengthMm));
  const costs = sheetCosts(problem, longestMm, taste);
  problem.sheets.forEach((sheet, i) => {
    const there = lying.filter((placement) => placement.sheet === sheet.id);
    countAsUsed(costs[i]!, regionsOf(problem, there));
    laySheet(search, sheet, costs[i]!, occupiedOn(search, sheet, there));
  });
  return search;
}

function regionsOf({ items }: NestProblem, placements: readonly Placement[]): Region[] {
  return placements.flatMap((placement) => {
    const item = items.find(({ id }) => id === placement.item);
    return item === undefined ? [] : [placedRegion(item, placement)];
  });
}

function occupiedOn({ problem, lanes }: LaneSearch, sheet: Sheet, lying: readonly Placement[]): Occupied[] {
  const items = new Map(problem.items.map((item) => [item.id, item]));
  const occupied: Occupied[] = [];
  for (const placement of lying) {
    const item = items.get(placement.item);
    if (item === undefined) continue;
    occupied.push({ region: placedRegion(item, placement), group: item.group });
  }
  for (const lane of lanes) {
    if (lane.sheet !== sheet.id) continue;
    const first = lane.rows[0]!.straps[0]!;
    occupied.push({ region: laneRegion(lane), group: items.get(first.item)?.group });
  }
  return occupied;
}

/** One group after the other: a lane holds straps of one leather and preparation. */
function laySheet(search: LaneSearch, sheet: Sheet, costs: SheetCosts, occupied: Occupied[]): void {
  const look = createFieldLook(sheet);
  const groups = new Set(stockFor(search, sheet).map(({ kind }) => kind.prepared.item.group));
  for (const group of groups) {
    const ofGroup = (): StockEntry[] =>
      stockFor(search, sheet).filter(({ kind }) => kind.prepared.item.group === group);
    const kinds = ofGroup().map(({ kind }) => kind);
    const sites = laneAngles(sheet, kinds).map((angleDeg) =>
      createLaneSite({
        sheet,
        angleDeg,
        distances: search.problem.distances,
        needs: search.needs,
        kerfMm: search.kerfMm,
        look,
        occupied,
      }),
    );
    for (let count = 0; count < MOST_LANES_PER_SHEET; count++) {
      const laid = layNextLane(search, sites, costs, ofGroup());
      if (laid === undefined) break;
      const taken = { region: laneRegion(laid.lane), group };
      occupied.push(taken);
      countAsUsed(costs, regionsOf(search.problem, laid.placements));
      for (const site of sites) occupy(site, taken);
    }
  }
}

/** What is left for a sheet: urgent straps first, then the longest. */
function stockFor(search: LaneSearch, sheet: Sheet): StockEntry[] {
  const counts = new Map<StrapKind, number>();
  for (const copy of search.open) {
    const kind = search.kinds.get(copy.item);
    if (kind === undefined || !isAllowed(kind, copy, sheet)) continue;
    counts.set(kind, (counts.get(kind) ?? 0) + 1);
  }
  const stock = [...counts].map(([kind, count]) => ({ kind, count }));
  return stock.sort((a, b) => compareKinds(a.kind, b.kind));
}

function isAllowed(kind: StrapKind, copy: LaneCopy, sheet: Sheet): boolean {
  return (
    kind.prepared.item.sheets.includes(sheet.id) &&
    (copy.sheets === undefined || copy.sheets.includes(sheet.id))
  );
}

function compareKinds(a: StrapKind, b: StrapKind): number {
  return (
    b.prepared.item.priority - a.prepared.item.priority ||
    b.lengthMm - a.lengthMm ||
    b.lane.widthMm - a.lane.widthMm ||
    a.prepared.index - b.prepared.index
  );
}

/** The lane that is worth most, laid; undefined if none takes a strap. */
function layNextLane(
  search: LaneSearch,
  sites: readonly LaneSite[],
  costs: SheetCosts,
  stock: readonly StockEntry[],
): LaidLane | undefined {
  const drafts = sites.flatMap((site) => draftsOf(site, costs, stock));
  drafts.sort((a, b) => b.worth - a.worth);
  for (const draft of drafts) {
    const laid = emitDraft(search, draft);
    if (laid !== undefined) return laid;
  }
  return undefined;
}

function emitDraft(search: LaneSearch, draft: LaneDraft): LaidLane | undefined {
  const { sheet } = draft.site.space;
  const open = [...search.open];
  const laid = emitLane(draft, laneId(search.lanes.length), (kind) => {
    const at = open.findIndex((copy) => copy.item === kind.prepared.item.id && isAllowed(kind, copy, sheet));
    return open.splice(at, 1)[0]!;
  });
  if (laid === undefined) return undefined;
  search.open.splice(0, search.open.length, ...open);
  search.lanes.push(laid.lane);
  search.placements.push(...laid.placements);
  return laid;
}

const SIGNS = [1, -1] as const;

/** Lanes that begin with the most urgent straps that the site takes at all. */
function draftsOf(site: LaneSite, costs: SheetCosts, stock: readonly StockEntry[]): LaneDraft[] {
  const priorities = [...new Set(stock.map(({ kind }) => kind.prepared.item.priority))];
  for (const priority of priorities) {
    const urgent = stock.filter(({ kind }) => kind.prepared.item.priority === priority);
    const drafts = widthsOf(urgent).flatMap((leadMm) => draftsOfWidth(site, costs, stock, leadMm));
    if (drafts.length > 0) return drafts;
  }
  return [];
}

function draftsOfWidth(
  site: LaneSite,
  costs: SheetCosts,
  stock: readonly StockEntry[],
  leadMm: number,
): LaneDraft[] {
  const drafts: { readonly start: LaneStart; readonly draft: LaneDraft }[] = [];
  const follow = (start: LaneStart): void => {
    const draft = stackRows(site, costs, stock, start);
    if (draft !== undefined) drafts.push({ start, draft });
  };
  for (const side of SIGNS) {
    for (const openSign of SIGNS) {
      for (const firstV of laneStarts(site, { side, openSign, leadMm }, stock)) {
        follow({ firstV, side, openSign, leadMm, reachMm: Infinity });
      }
    }
  }
  const longest = Math.max(...stock.map(({ kind }) => kind.lengthMm));
  const best = [...drafts].sort((a, b) => b.draft.worth - a.draft.worth).slice(0, MOST_LIMITED);
  for (const { start, draft } of best) {
    for (const reach of REACHES) {
      if (draft.endT - draft.openT > reach * longest) follow({ ...start, reachMm: reach * longest });
    }
  }
  return drafts.map(({ draft }) => draft);
}
