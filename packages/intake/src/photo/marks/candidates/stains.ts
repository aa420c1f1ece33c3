import { orientRing, ringArea } from '@hidebound/geometry';
import type { Ring } from '@hidebound/geometry';
import type { Vision } from '../../vision/vision.js';
import { outerEdges, softened } from '../map/contours.js';
import { groundOf } from '../map/even-out.js';
import { gridToFloor } from '../map/grid.js';
import type { Grid } from '../map/grid.js';
import type { LeatherMap } from '../map/leather-map.js';
import { globalIndex, patchesOf } from '../map/patches-of.js';
import { resized, smoothed } from '../map/planes.js';
import type { Plane } from '../map/planes.js';
import { indicesOf } from '../map/thin.js';
import type { Patch } from '../map/thin.js';
import { localNoise, tailOf } from './local-noise.js';

/** A patch of another shade or colour; mm. */
export interface Stain {
  readonly ring: Ring;
  /** L* above (pale) or below (dark) what lies around. */
  readonly contrast: number;
  /** How far it stands out in lightness and colour together, in deviations. */
  readonly strength: number;
}

/** Cells of 4 mm: a stain has no sharp edges, and the grain is gone. */
const CELL_MM = 4;

/**
 * What changes more slowly is the leather's own drift of colour, or light. The wider ground leaves large stains, the
 * narrower one takes glare off.
 */
const GROUND_SIGMAS_MM = [50, 110] as const;

/** A stain starts where it stands out by so much and reaches to where it still does by so much. */
const STRONG = 5;
const WEAK = 2.6;

const LEAST_MM2 = 160;

/** Answers below this are noise of the photo, in L*a*b*. */
const LEAST_NOISE = 0.35;

export function findStains(map: LeatherMap, vision: Vision): Stain[] {
  const width = Math.max(4, Math.round((map.grid.width * map.grid.stepX) / CELL_MM));
  const height = Math.max(4, Math.round((map.grid.height * map.grid.stepY) / CELL_MM));
  const grid: Grid = {
    ...map.grid,
    width,
    height,
    stepX: (map.grid.stepX * map.grid.width) / width,
    stepY: (map.grid.stepY * map.grid.height) / height,
  };
  const mask = coarseMask(map, grid, vision);
  const planes = [map.lightness, map.a, map.b].map((values) =>
    resized({ width: map.grid.width, height: map.grid.height, values }, width, height, vision),
  );
  return GROUND_SIGMAS_MM.flatMap((sigma) => {
    const offs = planes.map((plane) => offGround(plane, mask, sigma / grid.stepX, vision));
    const parts = offs.map((off) => standingOut(off, mask, grid, vision));
    const total = parts[0]!.map((value, i) => Math.hypot(value, parts[1]![i]!, parts[2]![i]!));
    return stainsOf(total, offs[0]!, mask, grid, vision);
  });
}

/** Cells that are searched in full. */
function coarseMask(map: LeatherMap, grid: Grid, vision: Vision): Uint8Array {
  const full = new Float32Array(map.mask.length);
  for (let i = 0; i < full.length; i++) if (map.mask[i] !== 0) full[i] = 1;
  const size = { width: map.grid.width, height: map.grid.height };
  const share = resized({ ...size, values: full }, grid.width, grid.height, vision).values;
  const mask = new Uint8Array(share.length);
  for (let i = 0; i < mask.length; i++) if (share[i]! > 0.99) mask[i] = 255;
  return mask;
}

function offGround(plane: Plane, mask: Uint8Array, sigma: number, vision: Vision): Float32Array {
  const ground = groundOf(plane, mask, sigma, vision).values;
  const off = plane.values.map((value, i) => (mask[i] === 0 ? 0 : value - ground[i]!));
  return smoothed({ ...plane, values: off }, 1, vision).values;
}

function standingOut(off: Float32Array, mask: Uint8Array, grid: Grid, vision: Vision): Float32Array {
  const noise = localNoise(off, mask, grid.width, grid.height, LEAST_NOISE, vision);
  const tail = tailOf(off, noise, mask);
  return off.map((value, i) => (mask[i] === 0 ? 0 : value / noise[i]! / tail));
}

function stainsOf(
  total: Float32Array,
  lightness: Float32Array,
  mask: Uint8Array,
  grid: Grid,
  vision: Vision,
): Stain[] {
  const weak = Uint8Array.from(total, (value, i) => (mask[i] !== 0 && value >= WEAK ? 255 : 0));
  const valueAt = (values: Float32Array, patch: Patch): number[] =>
    indicesOf(patch.cells).map((i) => values[globalIndex(patch, i, grid.width)]!);
  return patchesOf(weak, grid.width, grid.height, 4).flatMap((wide) => {
    const peak = Math.max(...valueAt(total, wide));
    if (peak < STRONG) return [];
    return withinHalf(wide, total, EDGE_SHARE * peak, grid.width).flatMap((patch) => {
      const values = valueAt(total, patch);
      if (values.length * grid.stepX * grid.stepY < LEAST_MM2) return [];
      const contrast = meanOf(valueAt(lightness, patch));
      const strength = (Math.max(...values) + meanOf(values)) / 2;
      return ringsOf(patch, grid, vision).map((ring) => ({ ring, contrast, strength }));
    });
  });
}

/** A stain's edge is where it stands out by so much of what it does in its middle; smoothing has spread it. */
const EDGE_SHARE = 0.45;

function withinHalf(patch: Patch, total: Float32Array, least: number, width: number): Patch[] {
  const cells = patch.cells.slice();
  for (const i of indicesOf(cells)) if (total[globalIndex(patch, i, width)]! < least) cells[i] = 0;
  return patchesOf(cells, patch.width, patch.height, 3).map((part) => ({
    ...part,
    x: part.x + patch.x,
    y: part.y + patch.y,
  }));
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
}

function ringsOf(patch: Patch, grid: Grid, vision: Vision): Ring[] {
  return outerEdges(patch, vision)
    .filter((ring) => ring.length >= 4)
    .map((ring) =>
      orientRing(
        softened(outwards(ring), 3).map(({ x, y }) => gridToFloor(grid, x, y)),
        'outer',
      ),
    )
    .filter((ring) => ringArea(ring) >= LEAST_MM2);
}

/** From the middles of the outermost cells to their outer edges, so that softening takes no area away. */
function outwards(ring: Ring): Ring {
  const x = ring.reduce((sum, p) => sum + p.x, 0) / ring.length;
  const y = ring.reduce((sum, p) => sum + p.y, 0) / ring.length;
  return ring.map((p) => {
    const length = Math.hypot(p.x - x, p.y - y) || 1;
    return { x: p.x + (0.5 * (p.x - x)) / length, y: p.y + (0.5 * (p.y - y)) / length };
  });
}
