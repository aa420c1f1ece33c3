import { offsetRegions, orientRing, ringArea, unionRegions } from '@hidebound/geometry';
import type { Ring } from '@hidebound/geometry';
import type { Vision } from '../../vision/vision.js';
import { outerEdges, softened } from '../map/contours.js';
import { fillRings } from '../map/fill-rings.js';
import { gridToFloor, ringsOnGrid } from '../map/grid.js';
import type { Grid } from '../map/grid.js';
import { patchesOf } from '../map/patches-of.js';
import { indicesOf } from '../map/thin.js';
import type { Patch } from '../map/thin.js';

/** A ring closes in at least this much: a loop of a letter is smaller. */
const LEAST_RING_MM2 = 450;

/**
 * What the strokes of a patch close in, up to the middle of the strokes, in floor mm. Rings beside each other, as of a
 * ring with a stroke across it, are one.
 */
export function ringsIn(patch: Patch, widthMm: number, grid: Grid, vision: Vision): Ring[] {
  const holes = patchesOf(closedIn(patch), patch.width, patch.height, 1).filter(
    (hole) => indicesOf(hole.cells).length * grid.stepX * grid.stepY >= LEAST_RING_MM2,
  );
  if (holes.length === 0) return [];
  const regions = holes.flatMap((hole) =>
    outerEdges({ ...hole, x: hole.x + patch.x, y: hole.y + patch.y }, vision).map((ring) => ({
      outer: orientRing(
        softened(ring, 4).map(({ x, y }) => gridToFloor(grid, x, y)),
        'outer',
      ),
      openings: [],
    })),
  );
  // Half a cell from the middles of the outermost cells to their edge, and half of the stroke.
  const grown = offsetRegions(unionRegions(regions), grid.stepX / 2 + widthMm / 2, { join: 'round' });
  return unionRegions(grown)
    .map(({ outer }) => outer)
    .filter((ring) => ringArea(ring) >= LEAST_RING_MM2);
}

/** The unset cells that can't be reached from the patch's border. */
function closedIn({ cells, width, height }: Patch): Uint8Array {
  const reached = cells.slice();
  const queue = [0];
  reached[0] = 1;
  for (let head = 0; head < queue.length; head++) {
    const i = queue[head]!;
    const x = i % width;
    const next = [i - width, i + width, ...(x > 0 ? [i - 1] : []), ...(x < width - 1 ? [i + 1] : [])];
    for (const k of next) {
      if (k < 0 || k >= width * height || reached[k] !== 0) continue;
      reached[k] = 1;
      queue.push(k);
    }
  }
  return reached.map((value) => (value === 0 ? 255 : 0));
}

/** The cells of a patch that lie outside the rings and are no part of their strokes. */
export function outsideRings(patch: Patch, rings: readonly Ring[], widthMm: number, grid: Grid): Patch {
  const grown = offsetRegions(
    rings.map((outer) => ({ outer, openings: [] })),
    1.2 * widthMm,
    { join: 'round' },
  );
  const corner = { x: grid.x + patch.x * grid.stepX, y: grid.y + patch.y * grid.stepY };
  const onPatch = ringsOnGrid(
    { ...grid, ...corner },
    grown.map(({ outer }) => outer),
  );
  const inside = fillRings(onPatch, patch.width, patch.height, 'any');
  return { ...patch, cells: patch.cells.map((cell, i) => (inside[i] === 0 ? cell : 0)) };
}
