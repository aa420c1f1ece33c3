import { sinCosDeg } from '../number/trigonometry.js';
import type { SettleTask, Shortfall } from './contacts.js';
import { isApart } from './contacts.js';
import type { PartDirection } from './part-direction.js';
import { findDirection } from './part-direction.js';
import type { Places } from './places.js';
import type { Rows } from './rows.js';
import { addRow, setEntry } from './rows.js';
import type { SettlePart, SettleShape } from './settle-shape.js';
import { turnedShape } from './settle-shape.js';

/** Bodies that may turn as well: shapes are given unturned, in the frame about whose (0, 0) they turn. */
export interface TurningTask extends SettleTask {
  /** Clockwise as seen, degrees. */
  readonly angleDeg: Float64Array;
  /** Range of the angle, degrees; a body for which they are equal does not turn. Absent: any angle. */
  readonly leastDeg?: Float64Array;
  readonly mostDeg?: Float64Array;
}

const RAD_PER_DEG = Math.PI / 180;

/** The bodies of a task at their present angles. A turn is an unknown like a place: its lever times the angle, in mm. */
export interface Turning {
  readonly task: TurningTask;
  readonly places: Places;
  readonly angleDeg: Float64Array;
  readonly shapes: SettleShape[];
  /** Greatest distance of a corner from (0, 0), mm. */
  readonly lever: Float64Array;
  /** Column of the turn among the unknowns, -1 for a body that does not turn. */
  readonly column: Int32Array;
  readonly unknowns: number;
}

/** Columns of turns begin at `firstColumn`. */
export function createTurning(task: TurningTask, places: Places, firstColumn: number): Turning {
  const count = task.shapes.length;
  const column = new Int32Array(count).fill(-1);
  let next = firstColumn;
  for (let i = 0; i < count; i++) {
    const least = task.leastDeg?.[i] ?? -Infinity;
    const most = task.mostDeg?.[i] ?? Infinity;
    if (places.slot[i]! >= 0 && least < most) column[i] = next++;
  }
  const turning: Turning = {
    task,
    places,
    angleDeg: Float64Array.from(task.angleDeg),
    shapes: [...task.shapes],
    lever: Float64Array.from(task.shapes, leverOf),
    column,
    unknowns: next,
  };
  for (let i = 0; i < count; i++) turnBody(turning, i, task.angleDeg[i]!);
  return turning;
}

export function turnBody(turning: Turning, i: number, angleDeg: number): void {
  const { sin, cos } = sinCosDeg(angleDeg);
  turning.angleDeg[i] = angleDeg;
  turning.shapes[i] = turnedShape(turning.task.shapes[i]!, sin, cos);
}

/** Takes over the turns that were found, and sets their unknowns back to 0. */
export function writeTurns(turning: Turning, unknowns: Float64Array): void {
  for (let i = 0; i < turning.column.length; i++) {
    const column = turning.column[i]!;
    if (column < 0 || unknowns[column] === 0) continue;
    turnBody(turning, i, turning.angleDeg[i]! + unknowns[column]! / turning.lever[i]! / RAD_PER_DEG);
    unknowns[column] = 0;
  }
}

/** Rows that keep turns within their ranges and, if `most` is finite, within `most` (mm at the lever) of now. */
export function addTurnLimits(turning: Turning, rows: Rows, most: number): void {
  const { task, angleDeg, lever, column } = turning;
  for (let i = 0; i < column.length; i++) {
    if (column[i]! < 0) continue;
    const scale = RAD_PER_DEG * lever[i]!;
    const down = Math.max(((task.leastDeg?.[i] ?? -Infinity) - angleDeg[i]!) * scale, -most);
    const up = Math.min(((task.mostDeg?.[i] ?? Infinity) - angleDeg[i]!) * scale, most);
    if (down > -Infinity) setEntry(rows, addRow(rows, down), 0, column[i]!, 1);
    if (up < Infinity) setEntry(rows, addRow(rows, -up), 0, column[i]!, -1);
  }
}

/**
 * As `collectContacts`, for bodies that turn: a row for every corner within reach of the line that keeps two parts
 * apart, which turns with the body whose edge it runs along. Rows are linear in the turns, so that what they miss
 * is the square of a turn times half its lever.
 */
export function collectTurningContacts(
  turning: Turning,
  reach: number,
  rows: Rows,
  direction: PartDirection,
  lengthColumn: number,
): Shortfall {
  rows.count = 0;
  const result: Shortfall = { worst: 0, pairs: 0 };
  const { places, shapes } = turning;
  for (let i = 0; i < shapes.length; i++) {
    if (places.slot[i]! >= 0) addBodyBounds(turning, i, reach, rows, lengthColumn, result);
    for (let j = i + 1; j < shapes.length; j++) {
      if (places.slot[i]! < 0 && places.slot[j]! < 0) continue;
      addBodyPair(turning, i, j, reach, rows, direction, result);
    }
  }
  return result;
}

function addBodyPair(
  turning: Turning,
  i: number,
  j: number,
  reach: number,
  rows: Rows,
  direction: PartDirection,
  result: Shortfall,
): void {
  const { shapes, places, task } = turning;
  const a = shapes[i]!;
  const b = shapes[j]!;
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
      addCorners(turning, i, j, p, q, gap, reach, rows, direction);
    }
  }
}

/** A row for every corner of the one part that is near the line along the other one's edge. */
function addCorners(
  turning: Turning,
  i: number,
  j: number,
  p: SettlePart,
  q: SettlePart,
  gap: number,
  reach: number,
  rows: Rows,
  { nx, ny, separation, side }: PartDirection,
): void {
  const moving = side === 1 ? p : q;
  const sign = side === 1 ? -1 : 1;
  const x = side === 1 ? turning.places.x[i]! : turning.places.x[j]!;
  const y = side === 1 ? turning.places.y[i]! : turning.places.y[j]!;
  const { px, py } = moving;
  let nearest = Infinity;
  for (let k = 0; k < px.length; k++) nearest = Math.min(nearest, sign * (nx * px[k]! + ny * py[k]!));
  for (let k = 0; k < px.length; k++) {
    const apart = separation + sign * (nx * px[k]! + ny * py[k]!) - nearest;
    // Between two corners the line turns with neither, so that only they are held.
    if (apart - gap > reach || (side === 2 && apart > separation)) continue;
    addCornerRow(turning, i, j, x + px[k]!, y + py[k]!, nx, ny, gap - apart, rows);
  }
}

/** n · (move of j - move of i) and the turns of both about their own places at (wx, wy) make up what is `missing`. */
function addCornerRow(
  turning: Turning,
  i: number,
  j: number,
  wx: number,
  wy: number,
  nx: number,
  ny: number,
  missing: number,
  rows: Rows,
): void {
  const row = addRow(rows, missing);
  setBody(turning, rows, row, 0, i, wx, wy, -nx, -ny);
  setBody(turning, rows, row, 3, j, wx, wy, nx, ny);
}

/** Entries of body i in a row that counts how far its point (wx, wy) moves along n; its bound counts from here. */
function setBody(
  turning: Turning,
  rows: Rows,
  row: number,
  entry: number,
  i: number,
  wx: number,
  wy: number,
  nx: number,
  ny: number,
): void {
  const { places, column, lever } = turning;
  const slot = places.slot[i]!;
  if (slot < 0) return;
  const x = places.x[i]!;
  const y = places.y[i]!;
  setEntry(rows, row, entry, 2 * slot, nx);
  setEntry(rows, row, entry + 1, 2 * slot + 1, ny);
  rows.bound[row] = rows.bound[row]! + nx * x + ny * y;
  if (column[i]! >= 0)
    setEntry(rows, row, entry + 2, column[i]!, (ny * (wx - x) - nx * (wy - y)) / lever[i]!);
}

function addBodyBounds(
  turning: Turning,
  i: number,
  reach: number,
  rows: Rows,
  lengthColumn: number,
  result: Shortfall,
): void {
  const bounds = turning.task.bounds;
  if (bounds === undefined) return;
  const x = turning.places.x[i]!;
  const y = turning.places.y[i]!;
  const shape = turning.shapes[i]!;
  const hasLength = lengthColumn >= 0;
  const right = hasLength ? x + shape.maxX : bounds.maxX;
  const { minX, minY, maxY } = bounds;
  result.worst = Math.max(
    result.worst,
    minX - x - shape.minX,
    minY - y - shape.minY,
    y + shape.maxY - maxY,
    x + shape.maxX - right,
  );
  for (const { px, py } of shape.parts) {
    for (let k = 0; k < px.length; k++) {
      const wx = x + px[k]!;
      const wy = y + py[k]!;
      if (wx - minX <= reach) addSide(turning, rows, i, wx, wy, 1, 0, minX - wx);
      if (wy - minY <= reach) addSide(turning, rows, i, wx, wy, 0, 1, minY - wy);
      if (maxY - wy <= reach) addSide(turning, rows, i, wx, wy, 0, -1, wy - maxY);
      if (!(right - wx <= reach)) continue;
      const row = addSide(turning, rows, i, wx, wy, -1, 0, hasLength ? wx : wx - right);
      if (hasLength) setEntry(rows, row, 3, lengthColumn, 1);
    }
  }
}

function addSide(
  turning: Turning,
  rows: Rows,
  i: number,
  wx: number,
  wy: number,
  nx: number,
  ny: number,
  missing: number,
): number {
  const row = addRow(rows, missing);
  setBody(turning, rows, row, 0, i, wx, wy, nx, ny);
  return row;
}

function leverOf(shape: SettleShape): number {
  let farSq = 0;
  for (const { px, py } of shape.parts)
    for (let k = 0; k < px.length; k++) farSq = Math.max(farSq, px[k]! * px[k]! + py[k]! * py[k]!);
  return Math.sqrt(farSq);
}
