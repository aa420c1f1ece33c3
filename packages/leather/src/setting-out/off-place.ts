import { atan2Deg, distanceBetween, sinCosDeg } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { pointOf } from './frame.js';
import type { SettingFrame } from './frame.js';
import type { LaneSetting, PieceSetting } from './model.js';

/**
 * How far the farthest of some points of a piece comes to lie from its place if its marks are where the rounded measures
 * put them: the card is laid so that the middle of A and B and the line through them fit, which is the least-squares fit
 * of two points.
 */
export function pieceOffMm({ a, b }: PieceSetting, frame: SettingFrame, points: readonly Point[]): number {
  const from = b === undefined ? [a.at, a.at] : [a.at, b.at];
  const to = [a, b ?? a].map(({ measure }) => pointOf(frame, measure));
  return movedFarthest([from[0]!, from[1]!], [to[0]!, to[1]!], points);
}

/** The same of a strap in a lane, whose first cut goes through its two rounded marks. */
export function laneOffMm(lane: LaneSetting, frame: SettingFrame, points: readonly Point[]): number {
  const { p, q } = lane;
  const along = movedFarthest([p.at, q.at], [pointOf(frame, p.measure), pointOf(frame, q.measure)], points);
  return along + LARGEST_ROUNDING_MM;
}

/** Along a lane the start of each strap is rounded once more. */
const LARGEST_ROUNDING_MM = 0.25;

type Pair = readonly [Point, Point];

function movedFarthest(from: Pair, to: Pair, points: readonly Point[]): number {
  const was = middleOf(from);
  const is = middleOf(to);
  const { sin, cos } = sinCosDeg(directionDeg(to) - directionDeg(from));
  return points.reduce((most, { x, y }) => {
    const [dx, dy] = [x - was.x, y - was.y];
    const moved = { x: is.x + dx * cos - dy * sin, y: is.y + dx * sin + dy * cos };
    return Math.max(most, distanceBetween({ x, y }, moved));
  }, 0);
}

function middleOf([p, q]: Pair): Point {
  return { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
}

function directionDeg([p, q]: Pair): number {
  return atan2Deg(q.y - p.y, q.x - p.x);
}
