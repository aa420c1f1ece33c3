import type { Point } from '@hidebound/geometry';
import { JOIN_MM } from '../limits.js';

/** Cells somewhat wider than the reach, so that most points have to look into their own only. */
const CELL_MM = 4 * JOIN_MM;

/** Of a cell with more ends than this only so many are looked at: nobody can tell there which belong together. */
const CROWD = 1000;

/** More columns of cells than any drawing has, so that one number tells a cell. */
const COLUMNS = 2 ** 24;

const NOBODY = -1;
const SEVERAL = -2;

/** The one other end at the same place; nothing where an end is alone or among several. */
export function partnersOf(points: readonly Point[]): (number | undefined)[] {
  const heads = new Map<number, number>();
  const next = new Int32Array(points.length);
  points.forEach((p, i) => {
    const key = keyOf(cellOf(p.x), cellOf(p.y));
    next[i] = heads.get(key) ?? NOBODY;
    heads.set(key, i);
  });
  const near = Int32Array.from(points, (p, i) => nearestOne(p, i, points, heads, next));
  return points.map((_, i) => {
    const j = near[i]!;
    return j >= 0 && near[j] === i ? j : undefined;
  });
}

function cellOf(n: number): number {
  return Math.floor(n / CELL_MM);
}

function keyOf(column: number, row: number): number {
  return row * COLUMNS + column;
}

/** The number of the only other point within reach, or `NOBODY` or `SEVERAL`. */
function nearestOne(
  p: Point,
  i: number,
  points: readonly Point[],
  heads: ReadonlyMap<number, number>,
  next: Int32Array,
): number {
  let found = NOBODY;
  for (let column = cellOf(p.x - JOIN_MM); column <= cellOf(p.x + JOIN_MM); column++) {
    for (let row = cellOf(p.y - JOIN_MM); row <= cellOf(p.y + JOIN_MM); row++) {
      let looked = 0;
      for (let j = heads.get(keyOf(column, row)) ?? NOBODY; j >= 0; j = next[j]!) {
        const [dx, dy] = [points[j]!.x - p.x, points[j]!.y - p.y];
        if (++looked > CROWD) return SEVERAL;
        if (j === i || dx * dx + dy * dy > JOIN_MM * JOIN_MM) continue;
        if (found !== NOBODY) return SEVERAL;
        found = j;
      }
    }
  }
  return found;
}
