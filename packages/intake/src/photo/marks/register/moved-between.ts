import { IDENTITY, applyAffine, distanceBetween } from '@hidebound/geometry';
import type { Region } from '@hidebound/geometry';
import { alignmentMisfit, refineAlignment } from './align-outlines.js';
import { turnOfMotion } from './fit-motion.js';

/** How far the leather moved on the floor from one photo to another. */
export interface MovedBetween {
  /** The farthest that a place of its outline moved. */
  readonly movedMm: number;
  readonly turnedDeg: number;
  /** Nine tenths of the outlines agree within this as they lie, and after the motion is taken back. */
  readonly asTheyLieMm: number;
  readonly misfitMm: number;
  /** Whether the motion explains what disagrees: two photos of a hide that lay still differ a little, too. */
  readonly isMoved: boolean;
}

/** Outlines that agree better than this lay still, whatever the best motion is. */
const STILL_WITHIN_MM = 4;

/** Taking the motion back must make the outlines agree this many times better. */
const BETTER_TIMES = 2;

/** How far the leather of `a` has moved in `b`; both outlines on one floor, as sheets that stayed on it tell. */
export function movedBetween(a: Region, b: Region): MovedBetween {
  const { motion, misfitMm } = refineAlignment(a, b, IDENTITY);
  const asTheyLieMm = alignmentMisfit(a, b, IDENTITY);
  const movedMm = Math.max(...a.outer.map((point) => distanceBetween(point, applyAffine(motion, point))));
  return {
    movedMm,
    turnedDeg: turnOfMotion(motion),
    asTheyLieMm,
    misfitMm,
    isMoved: asTheyLieMm > STILL_WITHIN_MM && asTheyLieMm > BETTER_TIMES * misfitMm,
  };
}
