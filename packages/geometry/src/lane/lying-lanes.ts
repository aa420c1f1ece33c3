import { turnDeg } from '../nest/angle.js';
import type { Frame } from '../nest/frame.js';
import { roundedPlace, toU, toV } from '../nest/frame.js';
import type { Soup } from '../nest/soup.js';
import { sinCosDeg } from '../number/trigonometry.js';
import { regionBox } from '../shape/ring.js';
import { CHECK_FORGIVES_DEG, CHECK_FORGIVES_MM } from '../tolerance.js';
import type { CopyRef, Item, Lane, NestProblem, Placement, Sheet } from '../types/problem.js';
import type { Region } from '../types/shape.js';
import { limitInBand, openEndT } from './corridor.js';
import { soupInFrame } from './lane-space.js';
import { laneId } from './lane-region.js';
import { placedRegion } from './placed-region.js';

/** A strap that lies already, in the frame of its direction. */
interface LyingStrap {
  readonly copy: CopyRef;
  readonly widthMm: number;
  readonly lowV: number;
  readonly minU: number;
  readonly maxU: number;
}

interface LyingRow {
  readonly widthMm: number;
  readonly lowV: number;
  readonly straps: LyingStrap[];
}

/**
 * Lanes around the straps that lie already (kept by hand, cut or spoiled), because each strap needs one: straps of one
 * direction that share lines, or lie nearer to each other than the gap, share a lane, which runs to the nearest end of
 * the hide that nothing else lies before. Where something lies before both, the lane is told all the same, and the
 * exact check tells what is wrong.
 */
export function lanesAround(problem: NestProblem, lying: readonly Placement[]): Lane[] {
  const items = new Map(problem.items.map((item) => [item.id, item]));
  const lanes: Lane[] = [];
  for (const sheet of problem.sheets) {
    const here = lying.filter((placement) => placement.sheet === sheet.id && items.has(placement.item));
    const straps = here.filter(({ item }) => items.get(item)!.lane !== undefined);
    for (const parallel of byDirection(straps)) {
      const { sin, cos } = sinCosDeg(parallel[0]!.rotationDeg);
      const frame: Frame = { fx: cos, fy: sin };
      const rows = rowsOf(parallel, items, frame);
      for (const cluster of clustersOf(rows, problem.distances.gap)) {
        const members = new Set(cluster.rows.flatMap((row) => row.straps).map(({ copy }) => copy));
        const others = here
          .filter((placement) => !members.has(placement))
          .map((placement) => placedRegion(items.get(placement.item)!, placement));
        for (const rowsOfLane of reachable(sheet, frame, cluster.rows, others)) {
          const kerfMm = cluster.rows.length > 1 ? cluster.kerfMm : (problem.distances.kerf ?? 0);
          lanes.push(laneOf(sheet, frame, rowsOfLane, kerfMm, laneId(lanes.length)));
        }
      }
    }
  }
  return lanes;
}

function byDirection(straps: readonly Placement[]): Placement[][] {
  const groups: Placement[][] = [];
  for (const strap of straps) {
    const like = groups.find(
      ([first]) => Math.abs(turnDeg(strap.rotationDeg, first!.rotationDeg, 180)) <= CHECK_FORGIVES_DEG / 2,
    );
    if (like === undefined) groups.push([strap]);
    else like.push(strap);
  }
  return groups;
}

function rowsOf(straps: readonly Placement[], items: ReadonlyMap<string, Item>, frame: Frame): LyingRow[] {
  const rows: LyingRow[] = [];
  for (const placement of straps) {
    const strap = lyingStrap(placement, items.get(placement.item)!, frame);
    const row = rows.find(
      ({ lowV, widthMm }) =>
        Math.abs(lowV - strap.lowV) <= CHECK_FORGIVES_MM &&
        Math.abs(widthMm - strap.widthMm) <= CHECK_FORGIVES_MM,
    );
    if (row === undefined) rows.push({ lowV: strap.lowV, widthMm: strap.widthMm, straps: [strap] });
    else row.straps.push(strap);
  }
  for (const { straps: own } of rows) own.sort((a, b) => a.minU - b.minU);
  return rows.sort((a, b) => a.lowV - b.lowV);
}

function lyingStrap(placement: Placement, item: Item, frame: Frame): LyingStrap {
  const widthMm = item.lane!.widthMm;
  const u = toU(frame, placement.x, placement.y);
  const v = toV(frame, placement.x, placement.y);
  const box = regionBox(item.region);
  const { cos } = sinCosDeg(placement.rotationDeg);
  const { sin } = sinCosDeg(placement.rotationDeg);
  const isForward = cos * frame.fx + sin * frame.fy > 0;
  return {
    copy: placement,
    widthMm,
    lowV: v - widthMm / 2,
    minU: u + (isForward ? box.minX : -box.maxX),
    maxU: u + (isForward ? box.maxX : -box.minX),
  };
}

interface Cluster {
  readonly rows: LyingRow[];
  kerfMm: number;
}

/**
 * Rows nearer to each other than the gap are neighbours of one lane, and what parts them is its kerf. Rows of two lanes
 * that lie one behind the other can lie at any height: such a row neighbours none that it would overlap, and none beside
 * which no strap of its own lies.
 */
function clustersOf(rows: readonly LyingRow[], gap: number): Cluster[] {
  const clusters: Cluster[] = [];
  for (const row of rows) {
    const beside = clusters.filter((cluster) => neighbourKerf(cluster, row, gap) !== undefined);
    const cluster = beside.find((one) => liesAlong(one, row));
    if (cluster === undefined) {
      clusters.push({ rows: [row], kerfMm: 0 });
      continue;
    }
    if (cluster.rows.length === 1) cluster.kerfMm = neighbourKerf(cluster, row, gap)!;
    cluster.rows.push(row);
  }
  return clusters;
}

/** What parts the row from the last one of the cluster, if it is its next neighbour. */
function neighbourKerf({ rows, kerfMm }: Cluster, row: LyingRow, gap: number): number | undefined {
  const before = rows[rows.length - 1]!;
  const apart = row.lowV - before.lowV - before.widthMm;
  if (apart < -CHECK_FORGIVES_MM) return undefined;
  const kerf = apart <= CHECK_FORGIVES_MM ? 0 : apart;
  if (kerf !== 0 && kerf >= gap - CHECK_FORGIVES_MM) return undefined;
  return rows.length === 1 || Math.abs(kerf - kerfMm) <= CHECK_FORGIVES_MM ? kerf : undefined;
}

/** A strap of the row lies beside one of the cluster. */
function liesAlong({ rows }: Cluster, row: LyingRow): boolean {
  const straps = rows.flatMap((one) => one.straps);
  return row.straps.some(({ minU, maxU }) => straps.some((one) => minU < one.maxU && one.minU < maxU));
}

/** Rows of one lane, open at its small u (1) or its great u (-1). */
interface OpenRows {
  readonly rows: readonly LyingRow[];
  readonly openSign: 1 | -1;
  readonly openT: number;
  readonly endT: number;
}

/**
 * The cluster as one lane where an end is free before all of it. Else straps that lie one behind the other, at one height
 * by chance, are parted; and what then is not free yet in two, one from each end.
 */
function reachable(
  sheet: Sheet,
  frame: Frame,
  rows: readonly LyingRow[],
  others: readonly Region[],
): OpenRows[] {
  const outline = soupInFrame(frame, [{ outer: sheet.region.outer, openings: [] }]);
  const soups = others.map((region) => soupInFrame(frame, [region]));
  const whole = shortestFree(outline, rows, soups, [1, -1]);
  if (whole !== undefined) return [whole];
  const behind = partsBehind(rows);
  if (behind.length > 1) {
    const open = behind.map((part, i) => {
      const isClear = (parts: readonly LyingRow[][]): boolean =>
        !parts.some((other) => bandsMeet(bandOf(part), bandOf(other)));
      const signs = ([1, -1] as const).filter((sign) =>
        isClear(sign > 0 ? behind.slice(0, i) : behind.slice(i + 1)),
      );
      return shortestFree(outline, part, soups, signs);
    });
    if (open.every((one) => one !== undefined)) return open;
  }
  const limit = limitInBand(soups, bandOf(rows), 1);
  const near = partOf(rows, (strap) => strap.maxU <= limit);
  const far = partOf(rows, (strap) => strap.maxU > limit);
  if (near.length === 0 || far.length === 0) return [openRows(outline, rows, 1)];
  return [openRows(outline, near, 1), openRows(outline, far, -1)];
}

/** From the end from which the lane is the shortest, of those from which nothing lies before it. */
function shortestFree(
  outline: Soup,
  rows: readonly LyingRow[],
  soups: readonly Soup[],
  signs: readonly (1 | -1)[],
): OpenRows | undefined {
  const free = signs.map((sign) => openRows(outline, rows, sign)).filter((one) => isFreeBefore(one, soups));
  if (free.length === 0) return undefined;
  return free.reduce((a, b) => (b.endT - b.openT < a.endT - a.openT ? b : a));
}

/** The rows in parts between which a line across them all meets no strap, from small u on. */
function partsBehind(rows: readonly LyingRow[]): LyingRow[][] {
  const straps = rows.flatMap((row) => row.straps).sort((a, b) => a.minU - b.minU);
  const parts: Set<LyingStrap>[] = [];
  let reach = -Infinity;
  for (const strap of straps) {
    if (strap.minU > reach + CHECK_FORGIVES_MM) parts.push(new Set());
    parts[parts.length - 1]!.add(strap);
    reach = Math.max(reach, strap.maxU);
  }
  return parts.map((part) => partOf(rows, (strap) => part.has(strap)));
}

function bandsMeet(a: ReturnType<typeof bandOf>, b: ReturnType<typeof bandOf>): boolean {
  return a.lowV < b.highV && b.lowV < a.highV;
}

/** The rows of some straps. Rows between them stay without straps, so that each keeps its distance from the first. */
function partOf(rows: readonly LyingRow[], belongs: (strap: LyingStrap) => boolean): LyingRow[] {
  const parts = rows.map((row) => ({ ...row, straps: row.straps.filter(belongs) }));
  const taken = parts.map(({ straps }) => straps.length > 0);
  return parts.slice(taken.indexOf(true), taken.lastIndexOf(true) + 1);
}

function openRows(outline: Soup, rows: readonly LyingRow[], openSign: 1 | -1): OpenRows {
  const straps = rows.flatMap((row) => row.straps);
  const starts = straps.map(({ minU, maxU }) => (openSign > 0 ? minU : -maxU));
  const ends = straps.map(({ minU, maxU }) => (openSign > 0 ? maxU : -minU));
  const openT = openEndT(outline, bandOf(rows), Math.min(...starts), openSign);
  return { rows, openSign, openT, endT: Math.max(...ends) };
}

function isFreeBefore({ rows, openSign, endT }: OpenRows, soups: readonly Soup[]): boolean {
  return limitInBand(soups, bandOf(rows), openSign) >= endT;
}

function bandOf(rows: readonly LyingRow[]): { readonly lowV: number; readonly highV: number } {
  const last = rows[rows.length - 1]!;
  return { lowV: rows[0]!.lowV, highV: last.lowV + last.widthMm };
}

function laneOf(sheet: Sheet, frame: Frame, open: OpenRows, kerfMm: number, id: string): Lane {
  const { rows, openSign, openT, endT } = open;
  const v = firstLine(rows, kerfMm);
  const [from, to] = openSign > 0 ? [openT, endT] : [-endT, -openT];
  return {
    id,
    sheet: sheet.id,
    from: roundedPlace(frame, from, v),
    to: roundedPlace(frame, to, v),
    openAt: openSign > 0 ? 'from' : 'to',
    kerfMm,
    rows: rows.map(({ widthMm, straps }) => ({
      widthMm,
      straps: straps.map(({ copy: { item, set, copy } }) => ({ item, set, copy })),
    })),
  };
}

/** Where the first cut suits all rows best: places are rounded, so that each tells it a little otherwise. */
function firstLine(rows: readonly LyingRow[], kerfMm: number): number {
  let offset = 0;
  let sum = 0;
  for (const { lowV, widthMm } of rows) {
    sum += lowV - offset;
    offset += widthMm + kerfMm;
  }
  return sum / rows.length;
}
