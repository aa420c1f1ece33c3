import { ringPerimeter } from '@hidebound/geometry';
import type { Point, Ring } from '@hidebound/geometry';
import { railOf } from './even-steps.js';

/** A stretch of the outline that is as good as straight; the leather lies on the right hand of the way. */
export interface StraightStretch {
  readonly from: Point;
  readonly to: Point;
  /** mm from end to end. */
  readonly length: number;
}

/** Points that the outline is looked at. */
const POINTS = 360;
/** A cut along the backbone strays from its line by this share of its length at most. */
const STRAYS = 0.012;

/** The longest stretch of the outline that strays from the line between its ends by a little only. */
export function longestStraight(outline: Ring): StraightStretch {
  const { points } = railOf(outline, ringPerimeter(outline) / POINTS);
  const count = points.length;
  let best: StraightStretch = { from: points[0]!, to: points[1]!, length: 0 };
  for (let i = 0; i < count; i++)
    for (let steps = count >> 1; steps > 1; steps--) {
      const from = points[i]!;
      const to = points[(i + steps) % count]!;
      const length = Math.hypot(to.x - from.x, to.y - from.y);
      if (length <= best.length) continue;
      if (isStraight(points, i, steps, length)) best = { from, to, length };
    }
  return best;
}

function isStraight(points: readonly Point[], first: number, steps: number, length: number): boolean {
  const a = points[first]!;
  const b = points[(first + steps) % points.length]!;
  for (let k = 1; k < steps; k++) {
    const p = points[(first + k) % points.length]!;
    const away = ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / length;
    if (Math.abs(away) > STRAYS * length) return false;
  }
  return true;
}
