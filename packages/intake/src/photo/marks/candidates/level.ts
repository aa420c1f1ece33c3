import { withMats } from '../../vision/mats.js';
import type { Vision } from '../../vision/vision.js';
import type { Grid } from '../map/grid.js';
import { resized } from '../map/planes.js';

/** What departs from the even ground, at one coarseness. */
export interface Level {
  readonly grid: Grid;
  /** L* above or below the ground; 0 where nothing is searched. */
  readonly off: Float32Array;
  readonly mask: Uint8Array;
  /** The cells of the mask that lie so far within it that no filter looks beyond: at its edge all filters answer. */
  readonly inner: Uint8Array;
}

/** Cells that the filters look to either side. */
const FILTER_REACH_CELLS = 3;

/** A level of these values; its inner cells are worked out. */
export function levelOf(grid: Grid, off: Float32Array, mask: Uint8Array, vision: Vision): Level {
  const inner = withMats((keep) => {
    const shown = keep(new vision.Mat(grid.height, grid.width, vision.CV_8UC1));
    shown.data.set(mask);
    const depth = keep(new vision.Mat());
    vision.distanceTransform(shown, depth, vision.DIST_L2, 3);
    const deep = depth.data32F;
    const cells = new Uint8Array(mask.length);
    for (let i = 0; i < cells.length; i++) if (deep[i]! > FILTER_REACH_CELLS) cells[i] = 255;
    return cells;
  });
  return { grid, off, mask, inner };
}

/** Every second level has cells twice as wide, so that one small filter finds marks of all widths. */
export function levelsOf(finest: Level, count: number, vision: Vision): Level[] {
  const levels = [finest];
  while (levels.length < count) levels.push(coarser(levels[levels.length - 1]!, vision));
  return levels;
}

function coarser({ grid, off, mask }: Level, vision: Vision): Level {
  const width = Math.max(1, Math.floor(grid.width / 2));
  const height = Math.max(1, Math.floor(grid.height / 2));
  const values = resized(
    { width: grid.width, height: grid.height, values: off },
    width,
    height,
    vision,
  ).values;
  const shown = new Uint8Array(width * height);
  for (let j = 0; j < height; j++) {
    for (let i = 0; i < width; i++) {
      const k = 2 * j * grid.width + 2 * i;
      const all = mask[k]! & mask[k + 1]! & mask[k + grid.width]! & mask[k + grid.width + 1]!;
      shown[j * width + i] = all;
    }
  }
  const steps = { stepX: (grid.stepX * grid.width) / width, stepY: (grid.stepY * grid.height) / height };
  return levelOf({ ...grid, width, height, ...steps }, values, shown, vision);
}
