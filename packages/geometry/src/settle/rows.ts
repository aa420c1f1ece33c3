import { ROW_HELD_MM } from './constants.js';

/**
 * Linear conditions  sum of value · unknown >= bound  in flat arrays, `ROW_WIDTH` entries a row (unused ones are 0 · unknown 0).
 * Grows as rows are added; made once and used again.
 */
export interface Rows {
  count: number;
  column: Int32Array;
  value: Float64Array;
  bound: Float64Array;
  /** Second choice of the row's direction: values, bound, and how much is missing along it now (Infinity: none). */
  second: Float64Array;
  secondBound: Float64Array;
  secondShort: Float64Array;
}

/** Entries of a row: two bodies that move. */
export const ROW_WIDTH = 4;

export function createRows(capacity: number): Rows {
  return {
    count: 0,
    column: new Int32Array(capacity * ROW_WIDTH),
    value: new Float64Array(capacity * ROW_WIDTH),
    bound: new Float64Array(capacity),
    second: new Float64Array(capacity * ROW_WIDTH),
    secondBound: new Float64Array(capacity),
    secondShort: new Float64Array(capacity),
  };
}

/** Adds an empty row and gives its index. */
export function addRow(rows: Rows, bound: number): number {
  const row = rows.count++;
  if (row >= rows.bound.length) {
    rows.column = grownInt(rows.column);
    rows.value = grown(rows.value);
    rows.bound = grown(rows.bound);
    rows.second = grown(rows.second);
    rows.secondBound = grown(rows.secondBound);
    rows.secondShort = grown(rows.secondShort);
  }
  rows.column.fill(0, row * ROW_WIDTH, (row + 1) * ROW_WIDTH);
  rows.value.fill(0, row * ROW_WIDTH, (row + 1) * ROW_WIDTH);
  rows.bound[row] = bound;
  rows.secondShort[row] = Infinity;
  return row;
}

export function setEntry(rows: Rows, row: number, entry: number, column: number, value: number): void {
  rows.column[row * ROW_WIDTH + entry] = column;
  rows.value[row * ROW_WIDTH + entry] = value;
}

/** Rows that keep each of the first `count` unknowns within `most` of where it is. */
export function addMoveLimits(rows: Rows, unknowns: Float64Array, count: number, most: number): void {
  for (let c = 0; c < count; c++) {
    setEntry(rows, addRow(rows, unknowns[c]! - most), 0, c, 1);
    setEntry(rows, addRow(rows, -unknowns[c]! - most), 0, c, -1);
  }
}

/** No row asks for more than what is kept now: what a settled layout is short of stays as it is. */
export function holdAsTheyAre(rows: Rows, unknowns: Float64Array): void {
  for (let k = 0; k < rows.count; k++) {
    const slack = slackOf(rows, unknowns, k);
    if (slack < 0) rows.bound[k] = rows.bound[k]! + slack;
  }
}

/** The row takes its second direction, and has no other any more. */
export function takeSecond(rows: Rows, row: number): void {
  for (let e = row * ROW_WIDTH; e < (row + 1) * ROW_WIDTH; e++) rows.value[e] = rows.second[e]!;
  rows.bound[row] = rows.secondBound[row]!;
  rows.secondShort[row] = Infinity;
}

/** Pairs that touch along two directions at once take the second one; gives how many did. */
export function takeTies(rows: Rows): number {
  let taken = 0;
  for (let row = 0; row < rows.count; row++) {
    if (rows.secondShort[row]! > ROW_HELD_MM) continue;
    takeSecond(rows, row);
    taken++;
  }
  return taken;
}

function grown(array: Float64Array): Float64Array {
  const more = new Float64Array(array.length * 2);
  more.set(array);
  return more;
}

function grownInt(array: Int32Array): Int32Array {
  const more = new Int32Array(array.length * 2);
  more.set(array);
  return more;
}

/** How much more than its bound the row has at a place; negative: how much is missing. */
export function slackOf(rows: Rows, place: Float64Array, k: number): number {
  const { column, value } = rows;
  const at = k * ROW_WIDTH;
  return (
    value[at]! * place[column[at]!]! +
    value[at + 1]! * place[column[at + 1]!]! +
    value[at + 2]! * place[column[at + 2]!]! +
    value[at + 3]! * place[column[at + 3]!]! -
    rows.bound[k]!
  );
}
