import type { ActiveSet } from './active-set.js';
import {
  BROKEN,
  NOT_HELD,
  clearActiveSet,
  holdRow,
  releaseRow,
  solveBackward,
  solveForward,
  splitRow,
} from './active-set.js';
import {
  LOOSEN_MM,
  MAX_CHANGES,
  ROW_HELD_MM,
  SHARE_NOISE,
  SPAN_LEFT_SQ,
  STEPS_PER_UNKNOWN,
} from './constants.js';
import type { Rows } from './rows.js';
import { slackOf, takeSecond, WIDTH } from './rows.js';

/** What became of a projection. */
export interface Projection {
  /** Rows taken in or let go: the measure of work. */
  steps: number;
  /** Rows that were left broken because others contradict them. */
  broken: number;
  /** False if it ran into its limit of steps. */
  isFinished: boolean;
}

/**
 * Moves `place` to the nearest point at which all rows hold (to `ROW_HELD_MM`), by the dual active-set method of
 * Goldfarb & Idnani 1983 for the unit matrix: it starts from the point itself, takes in the row that is broken
 * most, and lets go of rows whose multiplier would turn. It ends after finitely many steps with exact contacts
 * also where the rows leave no inside.
 *
 * Rows that contradict each other by no more than `LOOSEN_MM` each are loosened by equal parts. Beyond that, one of
 * them takes its second direction, if that is short by no more than `secondMost` (mm), and all starts anew. Where
 * none can, the row is left broken, the rest is held, and the result says so.
 */
export function project(set: ActiveSet, rows: Rows, place: Float64Array, secondMost: number): Projection {
  const result: Projection = { steps: 0, broken: 0, isFinished: true };
  set.target.set(place);
  for (let changes = 0; ; changes++) {
    const change = projectOnce(set, rows, place, changes < MAX_CHANGES ? secondMost : -Infinity, result);
    if (change < 0) return result;
    takeSecond(rows, change);
    place.set(set.target);
  }
}

/** Gives the row that is to take its second direction, or -1 at the end. */
function projectOnce(
  set: ActiveSet,
  rows: Rows,
  place: Float64Array,
  secondMost: number,
  result: Projection,
): number {
  clearActiveSet(set, rows);
  result.broken = 0;
  const limit = result.steps + STEPS_PER_UNKNOWN * (set.size + 8);
  let polished = false;
  for (;;) {
    const k = mostBroken(set, rows, place);
    if (k < 0 || result.steps > limit) {
      result.isFinished = k < 0;
      if (polished || set.count === 0) return -1;
      polish(set, rows, place);
      polished = true;
      continue;
    }
    polished = false;
    const short = takeIn(set, rows, place, k, result);
    if (short === 0 || loosen(set, rows, place, k, short)) continue;
    const change = nearestSecond(set, rows, k, secondMost);
    if (change >= 0) return change;
    set.place[k] = BROKEN;
    result.broken++;
  }
}

function mostBroken(set: ActiveSet, rows: Rows, place: Float64Array): number {
  let worst = -ROW_HELD_MM;
  let found = -1;
  for (let k = 0; k < rows.count; k++) {
    const slack = slackOf(rows, place, k);
    if (slack >= worst || set.place[k] !== NOT_HELD) continue;
    worst = slack;
    found = k;
  }
  return found;
}

/** Takes row k in, letting go of others as needed, and gives 0; or what it is short of where they contradict it. */
function takeIn(set: ActiveSet, rows: Rows, place: Float64Array, k: number, result: Projection): number {
  const { share, left, multiplier } = set;
  let own = 0;
  for (;;) {
    result.steps++;
    const leftSq = splitRow(set, rows, k);
    let blocker = -1;
    let dualStep = Infinity;
    for (let i = 0; i < set.count; i++) {
      if (share[i]! <= SHARE_NOISE) continue;
      const step = Math.max(0, multiplier[i]!) / share[i]!;
      if (step >= dualStep) continue;
      dualStep = step;
      blocker = i;
    }
    const short = -slackOf(rows, place, k);
    const primalStep = leftSq > SPAN_LEFT_SQ && set.count < set.size ? short / leftSq : Infinity;
    if (primalStep === Infinity && blocker < 0) return short;
    const step = Math.min(primalStep, dualStep);
    for (let i = 0; i < set.count; i++) multiplier[i] = multiplier[i]! - step * share[i]!;
    own += step;
    if (primalStep !== Infinity) for (let c = 0; c < set.size; c++) place[c] = place[c]! + step * left[c]!;
    if (step === primalStep) {
      holdRow(set, k, leftSq, own);
      return 0;
    }
    releaseRow(set, blocker);
  }
}

/** Row k is told by the held rows and can't hold with them: loosens all of them, if a little is enough. */
function loosen(set: ActiveSet, rows: Rows, place: Float64Array, k: number, short: number): boolean {
  const { share, line } = set;
  let parts = 1;
  for (let i = 0; i < set.count; i++) if (share[i]! < -SHARE_NOISE) parts -= share[i]!;
  const each = short / parts;
  if (each > LOOSEN_MM) return false;
  for (let i = 0; i < set.count; i++) {
    const loosened = share[i]! < -SHARE_NOISE;
    line[i] = loosened ? -each : 0;
    if (loosened) rows.bound[set.row[i]!] = rows.bound[set.row[i]!]! - each;
  }
  rows.bound[k] = rows.bound[k]! - each - ROW_HELD_MM;
  moveOnto(set, rows, place);
  return true;
}

/** Of the rows of a contradiction, the one whose second direction is short of least; -1 if none has one. */
function nearestSecond(set: ActiveSet, rows: Rows, k: number, secondMost: number): number {
  let least = secondMost;
  let found = -1;
  for (let i = -1; i < set.count; i++) {
    const row = i < 0 ? k : set.row[i]!;
    if (i >= 0 && set.share[i]! >= -SHARE_NOISE) continue;
    if (rows.secondShort[row]! >= least) continue;
    least = rows.secondShort[row]!;
    found = row;
  }
  return found;
}

/** Takes away what rounding has left: every held row holds to the last bits. */
function polish(set: ActiveSet, rows: Rows, place: Float64Array): void {
  for (let i = 0; i < set.count; i++) set.line[i] = -slackOf(rows, place, set.row[i]!);
  moveOnto(set, rows, place);
}

/** Moves the place within the held rows' span so that the value of held row i changes by `line[i]`. */
function moveOnto(set: ActiveSet, rows: Rows, place: Float64Array): void {
  const { line, row, multiplier } = set;
  const { column, value } = rows;
  solveForward(set, line);
  solveBackward(set, line);
  for (let i = 0; i < set.count; i++) {
    const amount = line[i]!;
    if (amount === 0) continue;
    multiplier[i] = multiplier[i]! + amount;
    const from = row[i]! * WIDTH;
    for (let e = from; e < from + WIDTH; e++) place[column[e]!] = place[column[e]!]! + amount * value[e]!;
  }
}
