import { roundDeg } from './angle.js';
import { sinCosDeg } from '../number/trigonometry.js';
import type { Frame } from './frame.js';
import { toU, toV } from './frame.js';
import type { PreparedItem } from './prepared-item.js';
import type { Lattice } from './raster.js';
import { edgeRuns, interiorRuns, mergedRuns, runsWithout } from './raster.js';
import type { Soup } from './soup.js';
import { buildSoup } from './soup.js';

/** Growth, in pitches, of the runs that propose places (small: few false ones) and of those that are safe. */
const PROPOSED_GROWTH = 0.4;
const SAFE_GROWTH = 0.75;
/** And of those that miss none, not even an exact fit. */
const LOOSE_GROWTH = -0.55;

/** An item turned to one angle, about its own origin, in the search frame of a sheet. */
export interface Variant {
  readonly prepared: PreparedItem;
  readonly rotationDeg: number;
  /** Shrunk by the skin: this one moves. */
  readonly body: Soup;
  /** As it is: others keep off this one. */
  readonly standing: Soup;
  readonly needs: readonly VariantNeed[];
  /** Proof points in x and y of the sheet, relative to the placement. */
  readonly proofX: Float64Array;
  readonly proofY: Float64Array;
  /** The points that it covers, or nearly. */
  readonly runs: ScanRuns;
  /** Grown, so that a place that is free for them is very likely free in truth; made when first asked for. */
  grownRuns: ScanRuns | undefined;
  /** Shrunk, so that no place in truth is missed; made when first asked for. */
  shrunkRuns: ScanRuns | undefined;
}

export interface VariantNeed {
  readonly needClass: number;
  readonly soup: Soup;
}

/** Runs of lattice points, relative to a placement on a lattice point; kernel data. */
export interface ScanRuns {
  readonly row: Int32Array;
  readonly first: Int32Array;
  readonly last: Int32Array;
  /** -1: of the body; else the index of the need that the run belongs to. */
  readonly need: Int32Array;
  readonly bodyCount: number;
  readonly minRow: number;
  readonly maxRow: number;
  readonly minColumn: number;
  readonly maxColumn: number;
}

export function buildVariant(
  prepared: PreparedItem,
  rotationDeg: number,
  frame: Frame,
  pitch: number,
): Variant {
  const deg = roundDeg(rotationDeg);
  const { sin, cos } = sinCosDeg(deg);
  const turn = (ring: Float64Array): Float64Array => turnRing(ring, sin, cos, frame);
  const body = buildSoup(prepared.insetRings.map(turn));
  const needs = prepared.needs.map(({ needClass, insetRings }) => ({
    needClass,
    soup: buildSoup(insetRings.map(turn)),
  }));
  const points = prepared.proofPoints.length >> 1;
  const proofX = new Float64Array(points);
  const proofY = new Float64Array(points);
  for (let i = 0; i < points; i++) {
    const x = prepared.proofPoints[2 * i]!;
    const y = prepared.proofPoints[2 * i + 1]!;
    proofX[i] = x * cos - y * sin;
    proofY[i] = x * sin + y * cos;
  }
  return {
    prepared,
    rotationDeg: deg,
    body,
    standing: buildSoup(prepared.rings.map(turn)),
    needs,
    proofX,
    proofY,
    runs: scanRuns(body, needs, pitch, PROPOSED_GROWTH * pitch),
    grownRuns: undefined,
    shrunkRuns: undefined,
  };
}

function turnRing(ring: Float64Array, sin: number, cos: number, frame: Frame): Float64Array {
  const turned = new Float64Array(ring.length);
  for (let i = 0; i < ring.length; i += 2) {
    const x = ring[i]! * cos - ring[i + 1]! * sin;
    const y = ring[i]! * sin + ring[i + 1]! * cos;
    turned[i] = toU(frame, x, y);
    turned[i + 1] = toV(frame, x, y);
  }
  return turned;
}

/** The runs of the variant grown to be safe. */
export function grownRunsOf(variant: Variant, pitch: number): ScanRuns {
  variant.grownRuns ??= scanRuns(variant.body, variant.needs, pitch, SAFE_GROWTH * pitch);
  return variant.grownRuns;
}

/** The runs of the variant shrunk to miss nothing. */
export function shrunkRunsOf(variant: Variant, pitch: number): ScanRuns {
  variant.shrunkRuns ??= scanRuns(variant.body, variant.needs, pitch, LOOSE_GROWTH * pitch);
  return variant.shrunkRuns;
}

function scanRuns(body: Soup, needs: readonly VariantNeed[], pitch: number, grow: number): ScanRuns {
  const rows: number[] = [];
  const firsts: number[] = [];
  const lasts: number[] = [];
  const owners: number[] = [];
  const collect = (soup: Soup, owner: number): void => {
    const minColumn = Math.floor((soup.minX - Math.abs(grow)) / pitch) - 1;
    const minRow = Math.floor((soup.minY - Math.abs(grow)) / pitch) - 1;
    const lattice: Lattice = {
      minX: minColumn * pitch,
      minY: minRow * pitch,
      pitch,
      columns: Math.ceil((soup.maxX + Math.abs(grow)) / pitch) - minColumn + 2,
      rows: Math.ceil((soup.maxY + Math.abs(grow)) / pitch) - minRow + 2,
    };
    const inside = interiorRuns(soup, lattice);
    const rim = edgeRuns(soup, Math.abs(grow), lattice);
    const merged = grow > 0 ? mergedRuns([...inside, ...rim]) : runsWithout(mergedRuns(inside), rim);
    for (let i = 0; i < merged.length; i += 3) {
      rows.push(merged[i]! + minRow);
      firsts.push(merged[i + 1]! + minColumn);
      lasts.push(merged[i + 2]! + minColumn);
      owners.push(owner);
    }
  };
  collect(body, -1);
  if (rows.length === 0) {
    // Thinner than the lattice: one point stands for it.
    rows.push(Math.round((body.minY + body.maxY) / 2 / pitch));
    firsts.push(Math.round((body.minX + body.maxX) / 2 / pitch));
    lasts.push(firsts[0]!);
    owners.push(-1);
  }
  const bodyCount = rows.length;
  needs.forEach(({ soup }, i) => {
    collect(soup, i);
  });
  return {
    row: Int32Array.from(rows),
    first: Int32Array.from(firsts),
    last: Int32Array.from(lasts),
    need: Int32Array.from(owners),
    bodyCount,
    minRow: Math.min(...rows),
    maxRow: Math.max(...rows),
    minColumn: Math.min(...firsts),
    maxColumn: Math.max(...lasts),
  };
}
