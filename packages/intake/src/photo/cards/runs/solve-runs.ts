import type { EdgePlace } from './edge-place.js';
import { missOfRule } from './rules.js';
import type { Rule } from './rules.js';
import { offRun } from './run.js';
import type { Run } from './run.js';

/** Steps of the adjustment; it settles within four. */
const STEPS = 8;

/** A rule weighs as much as this many mm of places: enough that it is kept to a micrometre. */
const RULE_WEIGHT = 1e5;

/** Directions are held at the end of an arm of this length, mm. */
const ARM_MM = 50;

/** Keeps the equations solvable where places say nothing of a direction. */
const DAMPING = 1e-9;

/** Differences for slopes of rules, in mm and radians. */
const SMALL = 1e-6;

/**
 * Adjusts all runs of one outline together, by least squares over their places and the rules among them (Gauss's and
 * Newton's steps). `places[i]` are those of run i.
 */
export function solveRuns(
  runs: readonly Run[],
  places: readonly (readonly EdgePlace[])[],
  rules: readonly Rule[],
): readonly Run[] {
  let now = runs;
  for (let step = 0; step < STEPS; step++) {
    const next = stepOf(now, places, rules);
    if (next === undefined) return now;
    now = next;
  }
  return now;
}

function stepOf(
  runs: readonly Run[],
  places: readonly (readonly EdgePlace[])[],
  rules: readonly Rule[],
): readonly Run[] | undefined {
  const first: number[] = [];
  let size = 0;
  for (const run of runs) {
    first.push(size);
    size += run.kind === 'line' ? 2 : 3;
  }
  const matrix = new Float64Array(size * size);
  const right = new Float64Array(size);
  runs.forEach((run, i) => addPlaces(matrix, right, size, first[i]!, run, places[i]!));
  for (const rule of rules) addRule(matrix, right, size, first, runs, rule);
  for (let k = 0; k < size; k++) matrix[k * size + k]! += DAMPING * (matrix[k * size + k]! + 1);
  const change = solveSymmetric(matrix, right, size);
  return change === undefined ? undefined : runs.map((run, i) => changed(run, change, first[i]!));
}

function addPlaces(
  matrix: Float64Array,
  right: Float64Array,
  size: number,
  first: number,
  run: Run,
  places: readonly EdgePlace[],
): void {
  const n = run.kind === 'line' ? 2 : 3;
  const slope = [0, 0, 0];
  for (const place of places) {
    const off = offRun(run, place);
    slopesOf(run, place, slope);
    for (let a = 0; a < n; a++) {
      right[first + a]! -= place.weightMm * slope[a]! * off;
      for (let b = 0; b < n; b++)
        matrix[(first + a) * size + first + b]! += place.weightMm * slope[a]! * slope[b]!;
    }
  }
}

/** How the way off the run changes with its numbers. */
function slopesOf(run: Run, { x, y }: EdgePlace, into: number[]): void {
  if (run.kind === 'line') {
    into[0] = -Math.sin(run.angle) * x + Math.cos(run.angle) * y;
    into[1] = -1;
    return;
  }
  const [dx, dy] = [x - run.centre.x, y - run.centre.y];
  const away = Math.hypot(dx, dy) || 1;
  into[0] = -dx / away;
  into[1] = -dy / away;
  into[2] = -1;
}

function addRule(
  matrix: Float64Array,
  right: Float64Array,
  size: number,
  first: readonly number[],
  runs: readonly Run[],
  rule: Rule,
): void {
  const miss = missOfRule(rule, runs, ARM_MM);
  const slopes: { readonly at: number; readonly slope: number }[] = [];
  for (const index of [rule.a, rule.b]) {
    const n = runs[index]!.kind === 'line' ? 2 : 3;
    for (let k = 0; k < n; k++) {
      const moved = [...runs];
      const change = new Float64Array(3);
      change[k] = SMALL;
      moved[index] = changed(runs[index]!, change, 0);
      slopes.push({ at: first[index]! + k, slope: (missOfRule(rule, moved, ARM_MM) - miss) / SMALL });
    }
  }
  for (const a of slopes) {
    right[a.at]! -= RULE_WEIGHT * a.slope * miss;
    for (const b of slopes) matrix[a.at * size + b.at]! += RULE_WEIGHT * a.slope * b.slope;
  }
}

function changed(run: Run, change: Float64Array, at: number): Run {
  if (run.kind === 'line') {
    return { kind: 'line', angle: run.angle + change[at]!, offset: run.offset + change[at + 1]! };
  }
  const centre = { x: run.centre.x + change[at]!, y: run.centre.y + change[at + 1]! };
  return { ...run, centre, radius: run.radius + change[at + 2]! };
}

/** Cholesky's way; nothing if the matrix is not positive. */
function solveSymmetric(matrix: Float64Array, right: Float64Array, n: number): Float64Array | undefined {
  const lower = matrix;
  for (let j = 0; j < n; j++) {
    for (let i = j; i < n; i++) {
      let sum = lower[i * n + j]!;
      for (let k = 0; k < j; k++) sum -= lower[i * n + k]! * lower[j * n + k]!;
      if (i > j) lower[i * n + j] = sum / lower[j * n + j]!;
      else if (sum > 0) lower[j * n + j] = Math.sqrt(sum);
      else return undefined;
    }
  }
  const x = new Float64Array(right);
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) x[i]! -= lower[i * n + k]! * x[k]!;
    x[i]! /= lower[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i]! -= lower[k * n + i]! * x[k]!;
    x[i]! /= lower[i * n + i]!;
  }
  return x;
}
