import type { Sheet } from '../types/problem.js';
import { FIELD_CACHE_MM } from './constants.js';
import { axisDistanceAt, directionDegAt, thicknessRangeAt } from './field.js';
import type { Frame } from './frame.js';
import { toX, toY } from './frame.js';
import type { Soup } from './soup.js';
import { isInSoup } from './soup.js';

/** Direction, distance to the axis and thickness on a coarse grid: for quick looks, never for proof. */
export interface FieldCache {
  readonly minU: number;
  readonly minV: number;
  readonly columns: number;
  readonly rows: number;
  /** NaN where unknown. */
  readonly directionDeg: Float64Array;
  readonly axisDistance: Float64Array;
  readonly thinnest: Float64Array;
  readonly thickest: Float64Array;
  /** Distinct directions on the sheet, in degrees, the most frequent first. */
  readonly directions: readonly number[];
}

/** Directions nearer to each other than this count as one. */
const DIRECTION_BIN_DEG = 4;
const MOST_DIRECTIONS = 12;

export function buildFieldCache(sheet: Sheet, frame: Frame, region: Soup): FieldCache {
  const columns = Math.ceil((region.maxX - region.minX) / FIELD_CACHE_MM) + 1;
  const rows = Math.ceil((region.maxY - region.minY) / FIELD_CACHE_MM) + 1;
  const size = columns * rows;
  const directionDeg = new Float64Array(size);
  const axisDistance = new Float64Array(size);
  const thinnest = new Float64Array(size);
  const thickest = new Float64Array(size);
  const bins = new Map<number, { count: number; deg: number }>();
  for (let row = 0, i = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++, i++) {
      const u = region.minX + column * FIELD_CACHE_MM;
      const v = region.minY + row * FIELD_CACHE_MM;
      const x = toX(frame, u, v);
      const y = toY(frame, u, v);
      const deg = directionDegAt(sheet.direction, x, y);
      directionDeg[i] = deg;
      axisDistance[i] = axisDistanceAt(sheet.direction, x, y);
      const range = sheet.thickness === undefined ? [0, 0] : thicknessRangeAt(sheet.thickness, x, y);
      thinnest[i] = range[0]!;
      thickest[i] = range[1]!;
      if (!Number.isNaN(deg) && isInSoup(region, u, v)) countDirection(bins, deg);
    }
  }
  const directions = [...bins.entries()]
    .sort((a, b) => b[1].count - a[1].count || a[0] - b[0])
    .slice(0, MOST_DIRECTIONS)
    .map(([, { deg }]) => deg);
  return {
    minU: region.minX,
    minV: region.minY,
    columns,
    rows,
    directionDeg,
    axisDistance,
    thinnest,
    thickest,
    directions,
  };
}

function countDirection(bins: Map<number, { count: number; deg: number }>, deg: number): void {
  const key = Math.round((deg < 0 ? deg + 360 : deg) / DIRECTION_BIN_DEG);
  const known = bins.get(key);
  // The first one met stands for its bin: a uniform sheet then gives its exact direction.
  if (known === undefined) bins.set(key, { count: 1, deg });
  else known.count++;
}

/** Index of the grid point nearest to (u, v). */
export function cacheIndex(cache: FieldCache, u: number, v: number): number {
  const column = Math.min(cache.columns - 1, Math.max(0, Math.round((u - cache.minU) / FIELD_CACHE_MM)));
  const row = Math.min(cache.rows - 1, Math.max(0, Math.round((v - cache.minV) / FIELD_CACHE_MM)));
  return row * cache.columns + column;
}
