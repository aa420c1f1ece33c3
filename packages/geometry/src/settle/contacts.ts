import type { PartDirection } from './part-direction.js';
import { findDirection } from './part-direction.js';
import type { Places } from './places.js';
import type { Rows } from './rows.js';
import { addRow, ROW_WIDTH, setEntry } from './rows.js';
import type { SettleShape } from './settle-shape.js';

/** Bodies to be settled. Lengths in mm. */
export interface SettleTask {
  /** One for each body; bodies may share a shape. */
  readonly shapes: readonly SettleShape[];
  /** Where the bodies lie. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** 1 for a body that stays where it is. */
  readonly fixed?: Uint8Array;
  /** Least distance of two bodies; the same whichever comes first. */
  readonly gap: number | ((i: number, j: number) => number);
  /** Every free body's box lies within; a side may be infinite. */
  readonly bounds?: Boxed;
}

interface Boxed {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** How exact the places are, over all pairs and bounds. */
export interface Shortfall {
  /** The greatest missing distance, mm; 0 if none is missing. */
  worst: number;
  /** Pairs of parts looked at: the measure of work. */
  pairs: number;
}

/**
 * Writes a row for every pair of parts within `reach` of their gap, and for every body within `reach` of a bound,
 * and tells how much is missing now. With `lengthColumn` the right bound is an unknown instead of a number.
 */
export function collectContacts(
  task: SettleTask,
  places: Places,
  reach: number,
  rows: Rows,
  direction: PartDirection,
  lengthColumn: number,
): Shortfall {
  rows.count = 0;
  const result: Shortfall = { worst: 0, pairs: 0 };
  const count = task.shapes.length;
  for (let i = 0; i < count; i++) {
    if (places.slot[i]! >= 0) addBounds(task, places, i, reach, rows, lengthColumn, result);
    for (let j = i + 1; j < count; j++) {
      if (places.slot[i]! < 0 && places.slot[j]! < 0) continue;
      addPair(task, places, i, j, reach, rows, direction, result);
    }
  }
  return result;
}

function addPair(
  task: SettleTask,
  places: Places,
  i: number,
  j: number,
  reach: number,
  rows: Rows,
  direction: PartDirection,
  result: Shortfall,
): void {
  const a = task.shapes[i]!;
  const b = task.shapes[j]!;
  const dx = places.x[j]! - places.x[i]!;
  const dy = places.y[j]! - places.y[i]!;
  const gap = typeof task.gap === 'number' ? task.gap : task.gap(i, j);
  const far = gap + reach;
  if (isApart(a, b, dx, dy, far)) return;
  for (const p of a.parts) {
    if (isApart(p, b, dx, dy, far)) continue;
    for (const q of b.parts) {
      if (isApart(p, q, dx, dy, far)) continue;
      result.pairs++;
      if (!findDirection(p, q, dx, dy, gap, far, direction)) continue;
      if (gap - direction.truth > result.worst) result.worst = gap - direction.truth;
      addDirection(places, i, j, gap, rows, direction);
    }
  }
}

function addDirection(
  places: Places,
  i: number,
  j: number,
  gap: number,
  rows: Rows,
  direction: PartDirection,
): void {
  const { nx, ny } = direction;
  const row = addRow(rows, 0);
  rows.bound[row] = gap + direction.bound + fillPair(rows.value, rows, row, places, i, j, nx, ny);
  if (direction.secondSeparation === -Infinity) return;
  const { secondX, secondY } = direction;
  rows.secondShort[row] = gap - direction.secondSeparation;
  rows.secondBound[row] =
    gap + direction.secondBound + fillPair(rows.second, rows, row, places, i, j, secondX, secondY);
}

/** Writes n · (place j - place i) as entries; gives what bodies that stay take off, to be added to the bound. */
function fillPair(
  values: Float64Array,
  rows: Rows,
  row: number,
  places: Places,
  i: number,
  j: number,
  nx: number,
  ny: number,
): number {
  const at = row * ROW_WIDTH;
  const si = places.slot[i]!;
  const sj = places.slot[j]!;
  let known = 0;
  if (si >= 0) {
    rows.column[at] = 2 * si;
    rows.column[at + 1] = 2 * si + 1;
    values[at] = -nx;
    values[at + 1] = -ny;
  } else known += nx * places.x[i]! + ny * places.y[i]!;
  if (sj >= 0) {
    rows.column[at + 2] = 2 * sj;
    rows.column[at + 3] = 2 * sj + 1;
    values[at + 2] = nx;
    values[at + 3] = ny;
  } else known -= nx * places.x[j]! + ny * places.y[j]!;
  return known;
}

function addBounds(
  task: SettleTask,
  places: Places,
  i: number,
  reach: number,
  rows: Rows,
  lengthColumn: number,
  result: Shortfall,
): void {
  const bounds = task.bounds;
  if (bounds === undefined) return;
  const shape = task.shapes[i]!;
  const x = places.x[i]!;
  const y = places.y[i]!;
  const column = 2 * places.slot[i]!;
  addBound(rows, column, 1, x, bounds.minX - shape.minX, reach, result);
  addBound(rows, column + 1, 1, y, bounds.minY - shape.minY, reach, result);
  addBound(rows, column + 1, -1, -y, shape.maxY - bounds.maxY, reach, result);
  if (lengthColumn < 0) addBound(rows, column, -1, -x, shape.maxX - bounds.maxX, reach, result);
  else {
    const row = addRow(rows, shape.maxX);
    setEntry(rows, row, 0, column, -1);
    setEntry(rows, row, 1, lengthColumn, 1);
  }
}

/** value · unknown >= bound, where value · unknown is `now`. */
function addBound(
  rows: Rows,
  column: number,
  value: number,
  now: number,
  bound: number,
  reach: number,
  result: Shortfall,
): void {
  if (!(now - bound <= reach)) return;
  if (bound - now > result.worst) result.worst = bound - now;
  setEntry(rows, addRow(rows, bound), 0, column, value);
}

/** True if box b moved by (dx, dy) is farther than `far` from box a along x or y. */
function isApart(a: Boxed, b: Boxed, dx: number, dy: number, far: number): boolean {
  return (
    b.minX + dx - a.maxX > far ||
    a.minX - b.maxX - dx > far ||
    b.minY + dy - a.maxY > far ||
    a.minY - b.maxY - dy > far
  );
}
