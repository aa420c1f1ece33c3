import type { Point } from '@hidebound/geometry';

/** Brightness of a part of a picture, row by row. */
export interface GreyPatch {
  readonly width: number;
  readonly height: number;
  readonly values: ArrayLike<number>;
}

/** Below this the patch shows no corner but an edge or an even ground; both directions must carry weight. */
const LEAST_ROUNDNESS = 0.1;
/** And there must be something to see: mean square of the steps of brightness. */
const LEAST_STEP_SQUARED = 20;

/**
 * The corner that a patch shows: the place nearest to all lines along its steps of brightness, each counted by its
 * strength (W. Förstner and E. Gülch, "A fast operator for detection and precise location of distinct points, corners and
 * centres of circular features", 1987). Px of the patch, middles of pixels being whole; undefined where there is none.
 */
export function cornerIn({ width, height, values }: GreyPatch): Point | undefined {
  let [xx, xy, yy, px, py, count] = [0, 0, 0, 0, 0, 0];
  for (let y = 1; y < height - 1; y++) {
    for (let x = 1; x < width - 1; x++) {
      const at = y * width + x;
      const dx = (values[at + 1]! - values[at - 1]!) / 2;
      const dy = (values[at + width]! - values[at - width]!) / 2;
      xx += dx * dx;
      xy += dx * dy;
      yy += dy * dy;
      px += dx * dx * x + dx * dy * y;
      py += dx * dy * x + dy * dy * y;
      count++;
    }
  }
  const determinant = xx * yy - xy * xy;
  const trace = xx + yy;
  if (count === 0 || trace / count < LEAST_STEP_SQUARED) return undefined;
  if ((4 * determinant) / (trace * trace) < LEAST_ROUNDNESS) return undefined;
  const corner = { x: (yy * px - xy * py) / determinant, y: (xx * py - xy * px) / determinant };
  const isWithin = corner.x >= 0 && corner.y >= 0 && corner.x <= width - 1 && corner.y <= height - 1;
  return isWithin ? corner : undefined;
}
