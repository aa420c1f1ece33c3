import type { Point } from '@hidebound/geometry';

/** Degrees clockwise from the x axis, as seen, from one place to another. */
export function directionTo(from: Point, to: Point): number {
  return (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
}

/** By how much a pointer has turned about a place, degrees clockwise, within half a turn. */
export function turnedBy(about: Point, from: Point, to: Point): number {
  const turn = directionTo(about, to) - directionTo(about, from);
  return ((((turn + 180) % 360) + 360) % 360) - 180;
}

/** An angle as it is written: 0 to less than 360. */
export function wholeTurn(deg: number): number {
  return ((deg % 360) + 360) % 360;
}
