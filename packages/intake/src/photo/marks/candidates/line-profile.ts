import type { Point } from '@hidebound/geometry';
import type { Level } from './level.js';

/** How a line looks across, on average along it. */
export interface Profile {
  /** Between the places of half its contrast. */
  readonly widthCells: number;
  readonly contrast: number;
}

/** Cells looked at to both sides. */
const REACH_CELLS = 7;

/** A line's way is straight over this many cells to both sides, as far as its direction goes. */
const WAY_CELLS = 3;

export function profileAcross(way: readonly Point[], { grid, off }: Level): Profile {
  const sums = new Float64Array(2 * REACH_CELLS + 1);
  let count = 0;
  way.forEach((at, i) => {
    const before = way[Math.max(0, i - WAY_CELLS)]!;
    const after = way[Math.min(way.length - 1, i + WAY_CELLS)]!;
    const length = Math.hypot(after.x - before.x, after.y - before.y);
    if (length === 0) return;
    const nx = -(after.y - before.y) / length;
    const ny = (after.x - before.x) / length;
    for (let k = -REACH_CELLS; k <= REACH_CELLS; k++) {
      const x = Math.min(grid.width - 1, Math.max(0, Math.round(at.x + k * nx)));
      const y = Math.min(grid.height - 1, Math.max(0, Math.round(at.y + k * ny)));
      sums[k + REACH_CELLS] = sums[k + REACH_CELLS]! + off[y * grid.width + x]!;
    }
    count++;
  });
  const profile = sums.map((sum) => sum / Math.max(1, count));
  return measured(profile);
}

function measured(profile: Float64Array): Profile {
  const last = profile.length - 1;
  const beside = (profile[0]! + profile[1]! + profile[last]! + profile[last - 1]!) / 4;
  let peak = REACH_CELLS;
  for (let k = REACH_CELLS - 1; k <= REACH_CELLS + 1; k++) {
    if (Math.abs(profile[k]! - beside) > Math.abs(profile[peak]! - beside)) peak = k;
  }
  const contrast = profile[peak]! - beside;
  const left = halfWay(profile, peak, -1, beside, contrast);
  const right = halfWay(profile, peak, 1, beside, contrast);
  return { widthCells: Math.max(1, left + right), contrast };
}

/** Cells from the peak to where half of the contrast is left, between cells by proportion. */
function halfWay(
  profile: Float64Array,
  peak: number,
  step: 1 | -1,
  beside: number,
  contrast: number,
): number {
  for (let k = peak; k + step >= 0 && k + step < profile.length; k += step) {
    const here = (profile[k]! - beside) / contrast;
    const next = (profile[k + step]! - beside) / contrast;
    if (next < 0.5) return Math.abs(k - peak) + (here - 0.5) / Math.max(1e-9, here - next);
  }
  return REACH_CELLS;
}
