import { withMats } from '../../vision/mats.js';
import type { Vision } from '../../vision/vision.js';
import type { Grid } from '../map/grid.js';
import { globalIndex, patchesOf } from '../map/patches-of.js';
import { smoothed } from '../map/planes.js';
import { indicesOf, longestWay, thinned } from '../map/thin.js';
import type { Patch } from '../map/thin.js';
import type { ChalkShares } from './chalk-share.js';

/** One bright, narrow stroke on the leather, or several that touch; places are cells of the grid. */
export interface Stroke {
  readonly patch: Patch;
  /** The longest way along its middle, in cells. */
  readonly way: readonly { readonly x: number; readonly y: number }[];
  readonly lengthMm: number;
  readonly widthMm: number;
}

/** Chalk covers this much where it takes well, and this much along the rest of a stroke. */
const STRONG_SHARE = 0.26;
const WEAK_SHARE = 0.14;

/** The shares are noise below so many deviations of it. */
const NOISE_DEVIATIONS = 2.5;

/** Grain that shows through breaks a stroke into specks; gaps up to this are closed. */
const CLOSE_MM = 5;

/** Strokes of chalk are 3 to 8 mm wide, blurred a little; what is wider is glare or a stain. */
const LEAST_WIDTH_MM = 1.8;
const MOST_WIDTH_MM = 12;

const LEAST_STROKE_MM = 12;
const LEAST_STRONG_MM2 = 20;

export function findStrokes({ share, ground, noise }: ChalkShares, grid: Grid, vision: Vision): Stroke[] {
  const size = { width: grid.width, height: grid.height };
  const soft = smoothed({ ...size, values: share }, 1, vision).values;
  const weak = new Uint8Array(soft.length);
  for (let i = 0; i < soft.length; i++) {
    if (soft[i]! < WEAK_SHARE) continue;
    const contrast = Math.max(20, 92 - ground.lightness[i]!);
    if (soft[i]! > (NOISE_DEVIATIONS * noise.lightness) / 3 / contrast) weak[i] = 255;
  }
  const closed = closedUp(weak, grid, CLOSE_MM, vision);
  return patchesOf(closed, grid.width, grid.height, LEAST_STRONG_MM2)
    .filter((patch) => strongCells(patch, soft, grid.width) >= LEAST_STRONG_MM2)
    .map((patch) => strokeOf(patch, grid))
    .filter(
      ({ lengthMm, widthMm }) =>
        lengthMm >= LEAST_STROKE_MM && widthMm >= LEAST_WIDTH_MM && widthMm <= MOST_WIDTH_MM,
    );
}

/** Gaps up to so many mm are closed. */
function closedUp(mask: Uint8Array, grid: Grid, byMm: number, vision: Vision): Uint8Array {
  return withMats((keep) => {
    const mat = keep(new vision.Mat(grid.height, grid.width, vision.CV_8UC1));
    mat.data.set(mask);
    const side = 2 * Math.max(1, Math.round(byMm / 2 / grid.stepX)) + 1;
    const kernel = keep(vision.getStructuringElement(vision.MORPH_ELLIPSE, new vision.Size(side, side)));
    const closed = keep(new vision.Mat());
    vision.morphologyEx(mat, closed, vision.MORPH_CLOSE, kernel);
    return closed.data.slice();
  });
}

function strongCells(patch: Patch, soft: Float32Array, width: number): number {
  let count = 0;
  for (const i of indicesOf(patch.cells)) {
    if (soft[globalIndex(patch, i, width)]! >= STRONG_SHARE) count++;
  }
  return count;
}

/** A stroke's width is its area over the length of its middle line, branches included. */
export function strokeOf(patch: Patch, grid: Grid): Stroke {
  const thin = thinned(patch);
  const middle = lineLength(thin) * grid.stepX;
  const area = indicesOf(patch.cells).length * grid.stepX * grid.stepY;
  const way = longestWay(thin).map((i) => {
    const x = i % patch.width;
    return { x: patch.x + x, y: patch.y + (i - x) / patch.width };
  });
  // The thinned line ends half a width before the stroke does.
  const widthMm = area / Math.max(grid.stepX, middle);
  return { patch, way, lengthMm: wayLength(way) * grid.stepX + widthMm, widthMm };
}

/** Steps between neighbours of the thin line, those over corners counted with their length. */
function lineLength({ cells, width }: Patch): number {
  let length = 0;
  for (const i of indicesOf(cells)) {
    length += cells[i + 1]! + cells[i + width]!;
    const overCorners = [i + width + 1, i + width - 1];
    for (const next of overCorners) {
      const isCorner = cells[next] === 1 && cells[i + width] === 0 && cells[next - width] === 0;
      if (isCorner) length += Math.SQRT2;
    }
  }
  return length;
}

/** In cells. */
export function wayLength(way: readonly { readonly x: number; readonly y: number }[]): number {
  let length = 0;
  for (let i = 1; i < way.length; i++)
    length += Math.hypot(way[i]!.x - way[i - 1]!.x, way[i]!.y - way[i - 1]!.y);
  return length;
}
