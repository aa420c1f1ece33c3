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
import { ROW_WIDTH, slackOf, takeSecond } from './rows.js';

/** How far a projection may go; lengths in mm. */
export interface ProjectionLimits {
  /** A contradicting row may take its second direction if that is short of no more than this. */
  readonly secondMost: number;
  /** Greatest distance from the start, over all unknowns together. */
  readonly farthest: number;
}

/** No second directions, and as far as it takes. */
export const PLAIN_LIMITS: ProjectionLimits = {
  secondMost: -Infinity,
  farthest: Number.MAX_VALUE,
};

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
 * none can, the row is left broken, the rest is held, and the result says so. The distance from the start only
 * grows on the way: where it passes `farthest` (mm), there is nothing nearer, and the place is left as it was.
 */
export function project(
  set: ActiveSet,
  rows: Rows,
  place: Float64Array,
  limits: ProjectionLimits,
): Projection {
  const result: Projection = { steps: 0, broken: 0, isFinished: true };
  set.target.set(place);
  for (let changes = 0; ; changes++) {
    const most = changes < MAX_CHANGES ? limits.secondMost : -Infinity;
    const change = projectOnce(set, rows, place, most, limits, result);
    if (change < 0) {
      if (!result.isFinished) place.set(set.target);
      return result;
    }
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
  limits: ProjectionLimits,
  result: Projection,
): number {
  clearActiveSet(set, rows);
  result.broken = 0;
  const limit = result.steps + STEPS_PER_UNKNOWN * (set.size + 8);
  let polished = false;
  for (;;) {
    const k = mostBroken(set, rows, place);
    if (k < 0) {
      if (polished || set.count === 0) return -1;
      polish(set, rows, place);
      polished = true;
      continue;
    }
    polished = false;
    const outcome = takeIn(set, rows, place, k, limits.farthest, limit, result);
    if (outcome === 'held' || (outcome === 'contradicted' && loosen(set, rows, place, k))) continue;
    const change = outcome === 'stuck' ? -1 : nearestSecond(set, rows, k, secondMost);
    if (change >= 0) return change;
    if (outcome !== 'contradicted') {
      result.isFinished = false;
      return -1;
    }
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

type Outcome = 'held' | 'contradicted' | 'too far' | 'stuck';

/** Takes row k in, letting go of others as needed, unless they contradict it or it leads too far. */
function takeIn(
  set: ActiveSet,
  rows: Rows,
  place: Float64Array,
  k: number,
  farthest: number,
  limit: number,
  result: Projection,
): Outcome {
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
    if (primalStep === Infinity && blocker < 0) return 'contradicted';
    const step = Math.min(primalStep, dualStep);
    for (let i = 0; i < set.count; i++) multiplier[i] = multiplier[i]! - step * share[i]!;
    own += step;
    if (primalStep !== Infinity) {
      for (let c = 0; c < set.size; c++) place[c] = place[c]! + step * left[c]!;
      // Not a number counts as too far.
      if (!(distanceSq(place, set.target) <= farthest * farthest)) return 'too far';
    }
    if (step === primalStep) {
      holdRow(set, k, leftSq, own);
      return 'held';
    }
    if (result.steps > limit) return 'stuck';
    releaseRow(set, blocker);
  }
}

/** Row k is told by the held rows and can't hold with them: loosens all of them, if a little is enough. */
function loosen(set: ActiveSet, rows: Rows, place: Float64Array, k: number): boolean {
  const { share, line } = set;
  const short = -slackOf(rows, place, k);
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
    const from = row[i]! * ROW_WIDTH;
    for (let e = from; e < from + ROW_WIDTH; e++) place[column[e]!] = place[column[e]!]! + amount * value[e]!;
  }
}

function distanceSq(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let c = 0; c < a.length; c++) sum += (a[c]! - b[c]!) * (a[c]! - b[c]!);
  return sum;
}
