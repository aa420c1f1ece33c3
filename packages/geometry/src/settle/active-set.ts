import type { Rows } from './rows.js';
import { ROW_WIDTH } from './rows.js';

/** A row that isn't held, and one that is left broken for good. */
export const NOT_HELD = -1;
export const BROKEN = -2;

/**
 * The rows held as equalities during a projection, with the Cholesky factor of their Gram matrix. The factor is
 * kept row by row with the first column that is not zero, because rows of bodies that are not in touch share
 * nothing. A numeric kernel: flat arrays, no checks.
 */
export interface ActiveSet {
  /** Unknowns; also the most rows that can be held, and the length of a line of the factor. */
  readonly size: number;
  count: number;
  readonly row: Int32Array;
  readonly multiplier: Float64Array;
  readonly factor: Float64Array;
  readonly first: Int32Array;
  /** Place in the set of each row held, NOT_HELD or BROKEN for others. */
  place: Int32Array;
  /** What is projected. */
  readonly target: Float64Array;
  /** Scratch: a row spread over the unknowns, the last solution, and what is left of a row outside the set's span. */
  readonly spread: Float64Array;
  readonly line: Float64Array;
  readonly share: Float64Array;
  readonly left: Float64Array;
}

export function createActiveSet(size: number): ActiveSet {
  return {
    size,
    count: 0,
    row: new Int32Array(size + 1),
    multiplier: new Float64Array(size + 1),
    factor: new Float64Array((size + 1) * (size + 1)),
    first: new Int32Array(size + 1),
    place: new Int32Array(0),
    target: new Float64Array(size),
    spread: new Float64Array(size),
    line: new Float64Array(size + 1),
    share: new Float64Array(size + 1),
    left: new Float64Array(size),
  };
}

export function clearActiveSet(set: ActiveSet, rows: Rows): void {
  set.count = 0;
  if (set.place.length < rows.count) set.place = new Int32Array(rows.bound.length);
  set.place.fill(NOT_HELD, 0, rows.count);
}

/**
 * Writes row k as  sum of share[i] · (held row i)  +  left, with `left` at right angles to all held rows, and gives
 * the squared length of `left`. `line` then holds the row's line of the factor.
 */
export function splitRow(set: ActiveSet, rows: Rows, k: number): number {
  const { spread, line, share, left, count, factor, first, size, row } = set;
  const stride = size + 1;
  const { column, value } = rows;
  const at = k * ROW_WIDTH;
  for (let e = at; e < at + ROW_WIDTH; e++) spread[column[e]!] = spread[column[e]!]! + value[e]!;
  let begin = count;
  for (let i = 0; i < count; i++) {
    const from = row[i]! * ROW_WIDTH;
    let dot = 0;
    for (let e = from; e < from + ROW_WIDTH; e++) dot += value[e]! * spread[column[e]!]!;
    line[i] = dot;
    if (dot !== 0 && begin === count) begin = i;
  }
  for (let e = at; e < at + ROW_WIDTH; e++) spread[column[e]!] = 0;
  for (let i = begin; i < count; i++) {
    const base = i * stride;
    let sum = line[i]!;
    for (let j = Math.max(begin, first[i]!); j < i; j++) sum -= factor[base + j]! * line[j]!;
    line[i] = sum / factor[base + i]!;
  }
  first[count] = begin;
  for (let i = 0; i < count; i++) share[i] = line[i]!;
  solveBackward(set, share);
  left.fill(0);
  for (let e = at; e < at + ROW_WIDTH; e++) left[column[e]!] = left[column[e]!]! + value[e]!;
  for (let i = 0; i < count; i++) {
    const factorOfRow = share[i]!;
    if (factorOfRow === 0) continue;
    const from = row[i]! * ROW_WIDTH;
    for (let e = from; e < from + ROW_WIDTH; e++)
      left[column[e]!] = left[column[e]!]! - factorOfRow * value[e]!;
  }
  let leftSq = 0;
  for (let c = 0; c < size; c++) leftSq += left[c]! * left[c]!;
  return leftSq;
}

/** Takes in the row that was split last. */
export function holdRow(set: ActiveSet, k: number, leftSq: number, multiplier: number): void {
  const { count, factor, line, size, first } = set;
  const base = count * (size + 1);
  for (let i = first[count]!; i < count; i++) factor[base + i] = line[i]!;
  factor[base + count] = Math.sqrt(leftSq);
  set.row[count] = k;
  set.multiplier[count] = multiplier;
  set.place[k] = count;
  set.count = count + 1;
}

/** Lets go of the row at a place of the set: its line leaves the factor, which is made triangular again. */
export function releaseRow(set: ActiveSet, at: number): void {
  const { factor, first, row, multiplier, place, size } = set;
  const stride = size + 1;
  place[row[at]!] = NOT_HELD;
  const last = set.count - 1;
  for (let i = at; i < last; i++) {
    row[i] = row[i + 1]!;
    multiplier[i] = multiplier[i + 1]!;
    place[row[i]!] = i;
    const from = first[i + 1]!;
    first[i] = from;
    for (let j = from; j <= i + 1; j++) factor[i * stride + j] = factor[(i + 1) * stride + j]!;
  }
  set.count = last;
  // Line i now has an entry right of its diagonal; a plane rotation of columns i and i + 1 takes it away.
  for (let i = at; i < last; i++) {
    const a = first[i]! <= i ? factor[i * stride + i]! : 0;
    const b = factor[i * stride + i + 1]!;
    const length = Math.sqrt(a * a + b * b);
    const cos = a / length;
    const sin = b / length;
    factor[i * stride + i] = length;
    if (first[i]! > i) first[i] = i;
    for (let l = i + 1; l < last; l++) {
      if (first[l]! > i + 1) continue;
      const base = l * stride + i;
      const p = first[l]! <= i ? factor[base]! : 0;
      const q = factor[base + 1]!;
      factor[base] = cos * p + sin * q;
      factor[base + 1] = cos * q - sin * p;
      if (first[l]! > i) first[l] = i;
    }
  }
}

/** Solves  factor · y = v  in place. */
export function solveForward(set: ActiveSet, v: Float64Array): void {
  const { count, factor, first, size } = set;
  for (let i = 0; i < count; i++) {
    const base = i * (size + 1);
    let sum = v[i]!;
    for (let j = first[i]!; j < i; j++) sum -= factor[base + j]! * v[j]!;
    v[i] = sum / factor[base + i]!;
  }
}

/** Solves  (factor, turned over) · y = v  in place. */
export function solveBackward(set: ActiveSet, v: Float64Array): void {
  const { count, factor, first, size } = set;
  for (let i = count - 1; i >= 0; i--) {
    const base = i * (size + 1);
    const y = v[i]! / factor[base + i]!;
    v[i] = y;
    if (y === 0) continue;
    for (let j = first[i]!; j < i; j++) v[j] = v[j]! - factor[base + j]! * y;
  }
}
