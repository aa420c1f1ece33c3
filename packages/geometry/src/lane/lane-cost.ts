import { axisDistanceAt } from '../nest/field.js';
import type { Frame } from '../nest/frame.js';
import { frameOf, ringToFrame, toU, toX, toY } from '../nest/frame.js';
import { flatRings } from '../shape/flat-rings.js';
import { regionArea } from '../shape/ring.js';
import type { NestProblem, Sheet } from '../types/problem.js';
import type { Region } from '../types/shape.js';
import {
  AIR_WEIGHT,
  BACKBONE_WEIGHT_PER_100_MM,
  BROAD_SIDE_WEIGHT,
  EXPECTED_YIELD,
  WASTE_WEIGHT,
} from './constants.js';
import type { LaneTaste } from './constants.js';
import type { LaneSpace } from './lane-space.js';
import type { FilledRow } from './row.js';

/** What the cost of lanes on one sheet is told from. */
export interface SheetCosts {
  readonly sheet: Sheet;
  readonly useFrame: Frame;
  /** The outline along `useFrom` and across it. */
  readonly outline: Float64Array;
  /** So much of the sheet is used up wherever the next lane lies: by all that is asked for, and by what lies there. */
  usedMm2: number;
  readonly taste: LaneTaste;
  /** Of all straps. */
  readonly longestMm: number;
  /** A strip of leather narrower than this is not worth keeping. */
  readonly keepMm: number;
}

/** The costs on each sheet, in the order in which sheets are used. */
export function sheetCosts(problem: NestProblem, longestMm: number, taste: LaneTaste): SheetCosts[] {
  const expected = expectedAreas(problem);
  return problem.sheets.map((sheet, i) => {
    const expectedMm2 = expected[i]!;
    const useFrame = frameOf(sheet.useFrom);
    const outline = ringToFrame(useFrame, flatRings([sheet.region])[0]!);
    const keepMm = Math.min(...problem.objective.keepMm);
    return { sheet, useFrame, outline, usedMm2: expectedMm2, taste, longestMm, keepMm };
  });
}

/** So much of each sheet all pieces together are expected to use up, those first that have the least choice. */
function expectedAreas({ items, setKinds, sheets }: NestProblem): number[] {
  const counts = new Map<string, number>();
  for (const { sets, members } of setKinds) {
    for (const { item, count } of members) counts.set(item, sets === 'many' ? Infinity : sets * count);
  }
  const open = sheets.map(({ region }) => regionArea(region));
  const expected = sheets.map(() => 0);
  for (const item of [...items].sort((a, b) => a.sheets.length - b.sheets.length)) {
    let area = ((counts.get(item.id) ?? 0) * regionArea(item.region)) / EXPECTED_YIELD;
    sheets.forEach(({ id }, i) => {
      if (!item.sheets.includes(id)) return;
      const share = Math.min(area, open[i]!);
      area -= share;
      open[i]! -= share;
      expected[i]! += share;
    });
  }
  return expected;
}

/** What the cost of a lane is told from. `t` is u seen from the open end. */
export interface LaneExtent {
  readonly rows: readonly FilledRow[];
  readonly openSign: 1 | -1;
  readonly openT: number;
  readonly endT: number;
  readonly lowV: number;
  readonly highV: number;
}

/**
 * What a lane is worth, in mm²: the area of its straps, less shares of the leather that it spoils: between its straps,
 * as a side too narrow to keep, by using up more of the sheet than all pieces need, and far from the backbone.
 */
export function laneWorth(space: LaneSpace, costs: SheetCosts, lane: LaneExtent): number {
  const [fromU, untilU] = lane.openSign > 0 ? [lane.openT, lane.endT] : [-lane.endT, -lane.openT];
  const slice = clipAlong(clipAlong(ringOf(space), 0, fromU, 1), 0, untilU, -1);
  const before = flatArea(clipAlong(slice, 1, lane.lowV, -1));
  const beyond = flatArea(clipAlong(slice, 1, lane.highV, 1));
  const within = Math.max(0, flatArea(slice) - before - beyond);
  const air = Math.max(0, (untilU - fromU) * (lane.highV - lane.lowV) - within);
  let laid = 0;
  let laidLong = 0;
  let far = 0;
  for (const row of lane.rows) {
    for (const { kind, shape, u } of row.straps) {
      laid += kind.prepared.areaMm2;
      laidLong += kind.prepared.areaMm2 * (kind.lengthMm / costs.longestMm);
      const v = row.lowV + row.widthMm / 2;
      const centreU = u + shape.proofPoints[0]!;
      const distance = axisDistanceAt(
        costs.sheet.direction,
        toX(space.frame, centreU, v),
        toY(space.frame, centreU, v),
      );
      if (!Number.isNaN(distance)) far += kind.prepared.areaMm2 * (distance / 100);
    }
  }
  const side = Math.min(before, beyond);
  const isNarrow = side < costs.keepMm * (untilU - fromU);
  const used = Math.max(0, areaBelow(costs, freeingCutOf(space, costs, lane)) - costs.usedMm2);
  return (
    costs.taste.laidWeight * laid +
    costs.taste.longWeight * laidLong -
    WASTE_WEIGHT * (within - laid + AIR_WEIGHT * air + used + (isNarrow ? 1 : BROAD_SIDE_WEIGHT) * side) -
    BACKBONE_WEIGHT_PER_100_MM * far
  );
}

/** Counts what lies on the sheet now, as far as a freeing cut behind it uses the sheet up. */
export function countAsUsed(costs: SheetCosts, regions: readonly Region[]): void {
  for (const { outer } of regions) {
    let farthest = -Infinity;
    for (const { x, y } of outer) farthest = Math.max(farthest, toU(costs.useFrame, x, y));
    costs.usedMm2 = Math.max(costs.usedMm2, areaBelow(costs, farthest));
  }
}

/** The farthest corner of its straps, along `useFrom`. */
function freeingCutOf(space: LaneSpace, { useFrame }: SheetCosts, lane: LaneExtent): number {
  let farthest = -Infinity;
  for (const row of lane.rows) {
    for (const t of [row.startT, row.endT]) {
      for (const v of [row.lowV, row.lowV + row.widthMm]) {
        const x = toX(space.frame, lane.openSign * t, v);
        const y = toY(space.frame, lane.openSign * t, v);
        farthest = Math.max(farthest, toU(useFrame, x, y));
      }
    }
  }
  return farthest;
}

function areaBelow({ outline }: SheetCosts, cutMm: number): number {
  return flatArea(clipAlong(outline, 0, cutMm, -1));
}

function ringOf({ outline }: LaneSpace): Float64Array {
  const ring = new Float64Array(2 * outline.count);
  for (let i = 0; i < outline.count; i++) {
    ring[2 * i] = outline.ax[i]!;
    ring[2 * i + 1] = outline.ay[i]!;
  }
  return ring;
}

/**
 * The part of a ring on one side of a line across axis 0 (x) or 1 (y): sign 1 keeps what is greater. Where the ring
 * falls into parts, they stay joined along the line, which leaves the area right.
 */
function clipAlong(ring: ArrayLike<number>, axis: 0 | 1, at: number, sign: 1 | -1): number[] {
  const kept: number[] = [];
  const n = ring.length;
  for (let i = 0; i < n; i += 2) {
    const j = i + 2 === n ? 0 : i + 2;
    const here = sign * (ring[i + axis]! - at);
    const next = sign * (ring[j + axis]! - at);
    if (here >= 0) kept.push(ring[i]!, ring[i + 1]!);
    if (here >= 0 === next >= 0) continue;
    const share = here / (here - next);
    kept.push(ring[i]! + share * (ring[j]! - ring[i]!), ring[i + 1]! + share * (ring[j + 1]! - ring[i + 1]!));
  }
  return kept;
}

function flatArea(ring: ArrayLike<number>): number {
  let twice = 0;
  const n = ring.length;
  for (let i = 0; i < n; i += 2) {
    const j = i + 2 === n ? 0 : i + 2;
    twice += ring[i]! * ring[j + 1]! - ring[j]! * ring[i + 1]!;
  }
  return Math.abs(twice) / 2;
}
