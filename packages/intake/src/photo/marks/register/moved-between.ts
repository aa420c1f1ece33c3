import { IDENTITY, applyAffine, distanceBetween, invertAffine, ringPerimeter } from '@hidebound/geometry';
import type { Affine, Point, Polyline, Region } from '@hidebound/geometry';
import { pointsMisfit, refinePoints } from './align-outlines.js';
import { turnOfMotion } from './fit-motion.js';
import { edgeGrid, evenPoints } from './outline-points.js';

/** Leather as one photo shows it; without more, all of it. */
export interface SeenLeather extends Region {
  /** Stretches of its edge that are only the photo's border. */
  readonly leavesPicture?: readonly Polyline[];
  /** Whether the photo shows a place of the floor. */
  readonly isShown?: (place: Point) => boolean;
}

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

const POINT_EVERY_MM = 8;

/** An edge so near to a photo's border may have left it; moves of more than this are found less surely. */
const BORDER_MM = 60;

/** Less edge than this in both photos tells nothing. */
const LEAST_SHARED_MM = 400;

/**
 * How far the leather of `a` has moved in `b`, by the edges that both photos show; both on one floor, as sheets that
 * stayed on it tell. Undefined where they show too little of the same edge.
 */
export function movedBetween(a: SeenLeather, b: SeenLeather): MovedBetween | undefined {
  const there = sharedPoints(a, b);
  const back = sharedPoints(b, a);
  if (Math.min(there.length, back.length) * POINT_EVERY_MM < LEAST_SHARED_MM) return undefined;
  const [gridA, gridB] = [edgeGrid(a), edgeGrid(b)];
  const misfit = (motion: Affine) =>
    Math.max(pointsMisfit(there, gridB, motion), pointsMisfit(back, gridA, invertAffine(motion)));
  const motion = refinePoints(there, gridB, IDENTITY);
  const asTheyLieMm = misfit(IDENTITY);
  const misfitMm = misfit(motion);
  return {
    movedMm: Math.max(...there.map((point) => distanceBetween(point, applyAffine(motion, point)))),
    turnedDeg: turnOfMotion(motion),
    asTheyLieMm,
    misfitMm,
    isMoved: asTheyLieMm > STILL_WITHIN_MM && asTheyLieMm > BETTER_TIMES * misfitMm,
  };
}

/** Places on the edges of `one` that the other photo shows as well. */
function sharedPoints(one: SeenLeather, other: SeenLeather): readonly Point[] {
  const { leavesPicture = [] } = one;
  const { isShown = () => true } = other;
  const border = leavesPicture.flat();
  return [one.outer, ...one.openings]
    .flatMap((ring) => evenPoints(ring, Math.max(8, Math.round(ringPerimeter(ring) / POINT_EVERY_MM))))
    .filter((point) => border.every((left) => distanceBetween(point, left) > BORDER_MM))
    .filter((point) => around(point).every(isShown));
}

function around({ x, y }: Point): readonly Point[] {
  return [-BORDER_MM, 0, BORDER_MM].flatMap((dx) =>
    [-BORDER_MM, 0, BORDER_MM].map((dy) => ({ x: x + dx, y: y + dy })),
  );
}
