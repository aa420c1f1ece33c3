import { GRID_MM } from '../tolerance.js';
import type { Distances, Need, Sheet } from '../types/problem.js';
import { SKIN_MM } from '../nest/constants.js';
import type { Soup } from '../nest/soup.js';
import { ALONG_SLACK_MM } from './constants.js';
import { leatherSpans, spansBeside } from './free-spans.js';
import type { LaneSpace, Occupied, Standing } from './lane-space.js';
import { buildLaneSpace, soupInFrame } from './lane-space.js';
import type { FieldLook } from './rule-look.js';
import { rulesHoldAt } from './rule-look.js';
import type { Spans } from './spans.js';
import type { StrapKind, StrapShape } from './strap-kind.js';

/** A sheet seen along one direction of lanes, with what the search remembers of it. */
export interface LaneSite {
  readonly space: LaneSpace;
  readonly distances: Distances;
  readonly kerfMm: number;
  readonly look: FieldLook;
  /** The lane runs along an axis of the sheet: places lie on the grid without any nudge. */
  readonly isStraight: boolean;
  /** By kind, way and line; what lies on the sheet left out. */
  readonly leather: Map<number, Spans>;
  /** The same beside what lies there; emptied whenever something is laid. */
  readonly free: Map<number, Spans>;
  readonly occupied: { soup: Soup; group: string | undefined }[];
  /** The way round that suits each kind, by its index; found when first asked for. */
  readonly ways: Map<number, StrapShape | undefined>;
}

export function createLaneSite(input: {
  readonly sheet: Sheet;
  readonly angleDeg: number;
  readonly distances: Distances;
  readonly needs: readonly Need[];
  readonly kerfMm: number;
  readonly look: FieldLook;
  readonly occupied: readonly Occupied[];
}): LaneSite {
  const space = buildLaneSpace(input.sheet, input.angleDeg, input.distances, input.needs);
  const site: LaneSite = {
    space,
    distances: input.distances,
    kerfMm: input.kerfMm,
    look: input.look,
    isStraight: space.frame.fx === 0 || space.frame.fy === 0,
    leather: new Map(),
    free: new Map(),
    occupied: [],
    ways: new Map(),
  };
  for (const one of input.occupied) occupy(site, one);
  return site;
}

export function occupy(site: LaneSite, { region, group }: Occupied): void {
  site.occupied.push({ soup: soupInFrame(site.space.frame, [region]), group });
  site.free.clear();
}

/** What a strap keeps to the edge: room for its rough cut is room that the block around it needs. */
export function edgeOf(site: LaneSite, { prepared }: StrapKind): number {
  return Math.max(site.distances.edge, prepared.item.roughMargin ?? 0);
}

/** What straps of a kind keep off, and how far. */
export function obstaclesFor(site: LaneSite, { prepared }: StrapKind): Standing[] {
  const { gap, betweenGroups } = site.distances;
  const { group, roughMargin } = prepared.item;
  return site.occupied.map((one) => {
    const between = one.group === group ? gap : Math.max(gap, betweenGroups ?? 0);
    return { soup: one.soup, distance: Math.max(between, roughMargin ?? 0) + SKIN_MM };
  });
}

/** Where the origin of a strap may lie along its row, whose middle runs along the line v. */
export function spansOf(site: LaneSite, kind: StrapKind, shape: StrapShape, v: number): Spans {
  const key = lineKey(kind, shape, v);
  const known = site.free.get(key);
  if (known !== undefined) return known;
  let leather = site.leather.get(key);
  if (leather === undefined) {
    leather = leatherSpans(site.space, shape, v, edgeOf(site, kind));
    site.leather.set(key, leather);
  }
  const free = roomForNudge(site, spansBeside(leather, shape, v, obstaclesFor(site, kind)));
  site.free.set(key, free);
  return free;
}

/** Parts of a grid step by which two lines are told apart; finer than what rounding forgives. */
const PARTS_OF_STEP = 8;

/** Room for lines 16 m to either side, in parts of a grid step. */
const LINES = 268_435_456;

/** One number for a kind, the way round and its line. */
function lineKey({ prepared }: StrapKind, { turnDeg }: StrapShape, v: number): number {
  const line = Math.round((PARTS_OF_STEP * v) / GRID_MM) + LINES / 2;
  return (2 * prepared.index + (turnDeg === 0 ? 0 : 1)) * LINES + line;
}

/** A place is rounded to the grid: it stays off the ends of its span by as much as that may move it. */
function roomForNudge(site: LaneSite, spans: Spans): Spans {
  if (site.isStraight) return spans;
  const room: number[] = [];
  for (let s = 0; s < spans.length; s += 2) {
    const lo = spans[s]!;
    const hi = spans[s + 1]!;
    const off = Math.min(ALONG_SLACK_MM / 2, (hi - lo) / 2);
    room.push(lo + off, hi - off);
  }
  return room;
}

/** Room between two straps of a row, or between a row's end and its limit. */
export function alongRoom(site: LaneSite): number {
  return site.kerfMm + (site.isStraight ? 0 : ALONG_SLACK_MM);
}

export function ruleHolds(site: LaneSite, kind: StrapKind, shape: StrapShape, u: number, v: number): boolean {
  return rulesHoldAt(site.look, site.space, kind, shape, u, v);
}

/** Places along and across at which both ways round are asked for. */
const WAY_PLACES = 7;

/** The way round in which the kind's rules hold at most places of the sheet; undefined where they hold nowhere. */
export function wayOf(site: LaneSite, kind: StrapKind): StrapShape | undefined {
  const { index } = kind.prepared;
  if (site.ways.has(index)) return site.ways.get(index);
  const { rings } = site.space;
  const counts = kind.ways.map((shape) => {
    let count = 0;
    for (let j = 0; j < WAY_PLACES; j++) {
      const v = rings.minY + ((j + 0.5) / WAY_PLACES) * (rings.maxY - rings.minY);
      for (let i = 0; i < WAY_PLACES; i++) {
        const u = rings.minX + ((i + 0.5) / WAY_PLACES) * (rings.maxX - rings.minX);
        if (anchorHolds(site, kind, shape, u, v)) count++;
      }
    }
    return count;
  });
  const best = counts[1]! > counts[0]! ? 1 : 0;
  const way = counts[best]! > 0 ? kind.ways[best] : undefined;
  site.ways.set(index, way);
  return way;
}

/** Direction alone, at one place: a strap may lie there in part. */
function anchorHolds(site: LaneSite, kind: StrapKind, shape: StrapShape, u: number, v: number): boolean {
  const { thickness: _, ...item } = kind.prepared.item;
  const alone = { ...kind, prepared: { ...kind.prepared, item } };
  const atOnePlace = { ...shape, proofPoints: new Float64Array(2) };
  return ruleHolds(site, alone, atOnePlace, u, v);
}
