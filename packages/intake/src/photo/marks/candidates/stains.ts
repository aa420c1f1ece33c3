import { orientRing, ringArea } from '@hidebound/geometry';
import type { Ring } from '@hidebound/geometry';
import type { Vision } from '../../vision/vision.js';
import { outerEdges, softened } from '../map/contours.js';
import { groundOf } from '../map/even-out.js';
import { gridToFloor } from '../map/grid.js';
import type { Grid } from '../map/grid.js';
import type { LeatherMap } from '../map/leather-map.js';
import { patchesOf } from '../map/patches-of.js';
import { resized, smoothed } from '../map/planes.js';
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

/** What changes more slowly than this is the leather's own drift of colour, or light. */
const GROUND_SIGMA_MM = 110;

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
  const offs = [map.lightness, map.a, map.b].map((values) => offGround(values, map, grid, mask, vision));
  const parts = offs.map((off) => standingOut(off, mask, grid, vision));
  const total = parts[0]!.map((value, i) => Math.hypot(value, parts[1]![i]!, parts[2]![i]!));
  return stainsOf(total, offs[0]!, mask, grid, vision);
}

/** Cells that are searched in full. */
function coarseMask(map: LeatherMap, grid: Grid, vision: Vision): Uint8Array {
  const full = Float32Array.from(map.mask, (value) => (value === 0 ? 0 : 1));
  const share = resized(
    { width: map.grid.width, height: map.grid.height, values: full },
    grid.width,
    grid.height,
    vision,
  );
  return Uint8Array.from(share.values, (value) => (value > 0.99 ? 255 : 0));
}

function offGround(
  values: Float32Array,
  map: LeatherMap,
  grid: Grid,
  mask: Uint8Array,
  vision: Vision,
): Float32Array {
  const size = { width: grid.width, height: grid.height };
  const coarse = resized(
    { width: map.grid.width, height: map.grid.height, values },
    grid.width,
    grid.height,
    vision,
  );
  const ground = groundOf(coarse, mask, GROUND_SIGMA_MM / grid.stepX, vision).values;
  const off = coarse.values.map((value, i) => (mask[i] === 0 ? 0 : value - ground[i]!));
  return smoothed({ ...size, values: off }, 1, vision).values;
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
  return patchesOf(weak, grid.width, grid.height, 4).flatMap((patch) => {
    const cells = indicesOf(patch.cells).map((i) => {
      const x = i % patch.width;
      return (patch.y + (i - x) / patch.width) * grid.width + patch.x + x;
    });
    const peak = Math.max(...cells.map((k) => total[k]!));
    if (peak < STRONG || cells.length * grid.stepX * grid.stepY < LEAST_MM2) return [];
    const contrast = cells.reduce((sum, k) => sum + lightness[k]!, 0) / cells.length;
    const mean = cells.reduce((sum, k) => sum + total[k]!, 0) / cells.length;
    return ringsOf(patch, grid, vision).map((ring) => ({ ring, contrast, strength: (peak + mean) / 2 }));
  });
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
