import type { Lane, LaneNeed } from '../types/problem.js';
import type { Point } from '../types/shape.js';
import { areaOfRegion, placePoint } from './area.js';
import { centroidOf } from './context.js';
import type { Placed } from './context.js';
import { directionAt } from './direction-at.js';
import { FORGIVEN_DEG, FORGIVEN_MM } from './forgiven.js';
import { laneExtent, toLane } from './lane-frame.js';
import type { LaneFrame } from './lane-frame.js';
import { angleApartDeg, angleDegOf } from './turn.js';
import type { Finding } from './violation.js';

/** What is wrong with one strap in its row: width, angle, lines, ends, or which end lies in the firm leather. */
export function findStrapFaults(
  placed: Placed,
  lane: Lane,
  frame: LaneFrame,
  row: number,
): readonly Finding[] {
  const need = placed.item.lane!;
  const base: Finding = { rule: 'lane', at: placed.copy, other: lane.id, sheet: lane.sheet };
  const start = frame.rowStart[row]!;
  const faults = [
    widthFault(need, lane.rows[row]!.widthMm, base),
    angleFault(placed, frame, base),
    lineFault(placed, need, frame, start, start + lane.rows[row]!.widthMm, base),
    endFault(placed, frame, base),
    firmEndFault(placed, need, base),
  ];
  return faults.filter((finding) => finding !== undefined);
}

function widthFault(need: LaneNeed, rowWidth: number, base: Finding): Finding | undefined {
  if (Math.abs(need.widthMm - rowWidth) <= FORGIVEN_MM) return undefined;
  return { ...base, measured: need.widthMm, required: rowWidth };
}

function angleFault(placed: Placed, frame: LaneFrame, base: Finding): Finding | undefined {
  const measured = angleApartDeg(placed.placement.rotationDeg, angleDegOf(frame.unit.x, frame.unit.y), 180);
  return measured <= FORGIVEN_DEG ? undefined : { ...base, measured, required: 0 };
}

/** Both long sides lie on the row's lines, and the strap reaches over neither. */
function lineFault(
  placed: Placed,
  need: LaneNeed,
  frame: LaneFrame,
  low: number,
  high: number,
  base: Finding,
): Finding | undefined {
  const own = areaOfRegion(placed.item.region).box;
  let worst: { readonly off: number; readonly place: Point } | undefined;
  const consider = (off: number, place: Point): void => {
    if (off > FORGIVEN_MM && (worst === undefined || off > worst.off)) worst = { off, place };
  };
  for (const x of [own.minX, own.maxX]) {
    const sides = [-need.widthMm / 2, need.widthMm / 2].map((y) => placePoint(x, y, placed.placing));
    const [one, other] = sides.map((place) => toLane(frame, place.x, place.y).across);
    const isReversed = one! > other!;
    consider(Math.abs(one! - (isReversed ? high : low)), sides[0]!);
    consider(Math.abs(other! - (isReversed ? low : high)), sides[1]!);
  }
  const extent = laneExtent(frame, placed.area);
  consider(Math.max(low - extent.minAcross, extent.maxAcross - high), centroidOf(placed));
  return worst === undefined ? undefined : { ...base, place: worst.place, measured: worst.off, required: 0 };
}

/** The first cut runs along the whole strap. */
function endFault(placed: Placed, frame: LaneFrame, base: Finding): Finding | undefined {
  const extent = laneExtent(frame, placed.area);
  const beyond = Math.max(-extent.minAlong, extent.maxAlong - frame.length);
  if (beyond <= FORGIVEN_MM) return undefined;
  return { ...base, place: centroidOf(placed), measured: -beyond, required: 0 };
}

/** The hole end points to the tail, where the leather is firm; without an axis nobody knows where that is. */
function firmEndFault(placed: Placed, need: LaneNeed, base: Finding): Finding | undefined {
  if (need.firmEnd === 0) return undefined;
  const place = centroidOf(placed);
  const local = directionAt(placed.sheet.sheet.direction, place);
  if (local === undefined || !local.isDirected) return undefined;
  const endDeg = placed.placement.rotationDeg + (need.firmEnd === 1 ? 0 : 180);
  const measured = angleApartDeg(endDeg, local.angleDeg, 360);
  if (measured <= 90 + FORGIVEN_DEG) return undefined;
  return { ...base, place, measured, required: 90 };
}
