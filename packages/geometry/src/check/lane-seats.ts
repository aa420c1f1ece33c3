import type { Lane, NestAnswer } from '../types/problem.js';
import { copyKey } from './violation.js';

/** Where a strap sits: its lane, and its row from 0. */
export interface LaneSeat {
  readonly lane: Lane;
  readonly row: number;
}

/** The seat of every strap that a lane names; of several, the first. */
export function laneSeats(answer: NestAnswer): ReadonlyMap<string, LaneSeat> {
  const seats = new Map<string, LaneSeat>();
  for (const lane of answer.lanes) {
    for (const [row, { straps }] of lane.rows.entries()) {
      for (const strap of straps) if (!seats.has(copyKey(strap))) seats.set(copyKey(strap), { lane, row });
    }
  }
  return seats;
}

/** The kerf (mm) that two straps keep because they sit in one row or in adjacent rows of a lane; else undefined. */
export function laneNeighbourKerf(
  one: LaneSeat | undefined,
  other: LaneSeat | undefined,
): number | undefined {
  if (one === undefined || other === undefined || one.lane !== other.lane) return undefined;
  return Math.abs(one.row - other.row) <= 1 ? one.lane.kerfMm : undefined;
}
