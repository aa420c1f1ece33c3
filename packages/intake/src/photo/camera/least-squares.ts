import { choleskyFactor, invertSymmetric, solveFactored } from './dense.js';
import { CONDITION_DEVIATION, CONDITION_SLOTS, squareness } from './square-pixels.js';
import { SLOTS, predict } from './unknowns.js';
import type { FixedSight, View } from './unknowns.js';

/** One place seen, ready for the solver. */
export interface Sight {
  readonly fixed: FixedSight;
  readonly photo: number;
  /** Where each of its slots stands in the row of unknowns. */
  readonly slots: Int32Array;
  /** Seen there, in units of the photo. */
  readonly x: number;
  readonly y: number;
  /** 1 over its deviation, in the same units. */
  readonly sharpness: number;
  /** Sights of one group share their weight. */
  readonly group: number;
}

/** What is to be made small: misses of sights, and how far unknowns lie from what is usual. */
export interface Problem {
  readonly sights: readonly Sight[];
  /** One for each photo. */
  readonly views: readonly View[];
  /** For each unknown its deviation about `usual`; 0: it stays as it is; Infinity: nothing is usual. */
  readonly deviations: Float64Array;
  readonly usual: Float64Array;
  readonly groups: number;
  /** For each photo the slots of the condition that its pixels are square. */
  readonly conditions: readonly Int32Array[];
}

export interface Solution {
  readonly values: Float64Array;
  /** For each group of sights how much it counts, 0 to 1. */
  readonly weights: Float64Array;
  readonly cost: number;
}

const MOST_STEPS = 40;
const ROBUST_ROUNDS = 4;
/** A group whose typical miss is so many deviations counts half: one bad marker must not bend the rest. */
const HALF_WEIGHT_AT = 3;
const FIRST_DAMPING = 1e-3;
const MOST_DAMPING = 1e9;
/** A step that lowers the cost by less than this share is the last one. */
const LEAST_GAIN = 1e-6;
/** For slopes by differences to both sides: the root of rounding times the usual curvature. */
const SLOPE_STEP = 1e-6;

/** Levenberg and Marquardt's method, repeated with weights that fall with a group's misses. */
export function solveRobustly(
  problem: Problem,
  start: Float64Array,
  { rounds = ROBUST_ROUNDS, mostSteps = MOST_STEPS } = {},
): Solution {
  let values = start;
  let weights: Float64Array = new Float64Array(problem.groups).fill(1);
  let cost = 0;
  for (let round = 0; round < rounds; round++) {
    ({ values, cost } = descend(problem, values, weights, mostSteps));
    if (round < rounds - 1) weights = groupWeights(problem, values);
  }
  return { values, weights, cost };
}

function descend(
  problem: Problem,
  start: Float64Array,
  weights: Float64Array,
  mostSteps: number,
): { values: Float64Array; cost: number } {
  let values = start;
  let cost = costOf(problem, values, weights);
  let damping = FIRST_DAMPING;
  const free = freeUnknowns(problem);
  for (let step = 0; step < mostSteps && damping < MOST_DAMPING; step++) {
    const { normal, right } = normalEquations(problem, values, weights, free);
    let gained = 0;
    while (damping < MOST_DAMPING) {
      const moved = dampedStep(normal, right, damping, values, free);
      const movedCost = moved === undefined ? Infinity : costOf(problem, moved, weights);
      if (moved !== undefined && movedCost < cost) {
        gained = cost - movedCost;
        values = moved;
        cost = movedCost;
        damping /= 10;
        break;
      }
      damping *= 8;
    }
    if (gained <= LEAST_GAIN * cost) break;
  }
  return { values, cost };
}

function dampedStep(
  normal: Float64Array,
  right: Float64Array,
  damping: number,
  values: Float64Array,
  free: Int32Array,
): Float64Array | undefined {
  const n = free.length;
  const damped = Float64Array.from(normal);
  for (let i = 0; i < n; i++) damped[i * n + i]! += damping * normal[i * n + i]! + Number.MIN_VALUE;
  const factor = choleskyFactor(damped);
  if (factor === undefined) return undefined;
  const step = solveFactored(factor, right);
  const moved = Float64Array.from(values);
  for (let i = 0; i < n; i++) moved[free[i]!]! -= step[i]!;
  return moved;
}

/** The unknowns that may move. */
export function freeUnknowns({ deviations }: Problem): Int32Array {
  const free: number[] = [];
  for (let i = 0; i < deviations.length; i++) if (deviations[i] !== 0) free.push(i);
  return Int32Array.from(free);
}

function costOf(problem: Problem, values: Float64Array, weights: Float64Array): number {
  const local = new Float64Array(SLOTS);
  const out = new Float64Array(2);
  let cost = 0;
  for (const sight of problem.sights) {
    gather(values, sight.slots, local);
    predict(local, sight.fixed, problem.views[sight.photo]!, out);
    const missSq = (out[0]! - sight.x) ** 2 + (out[1]! - sight.y) ** 2;
    cost += weights[sight.group]! * missSq * sight.sharpness ** 2;
  }
  const condition = new Float64Array(CONDITION_SLOTS);
  for (const slots of problem.conditions) {
    gather(values, slots, condition);
    squareness(condition, out);
    cost += (out[0]! ** 2 + out[1]! ** 2) / CONDITION_DEVIATION ** 2;
  }
  for (let i = 0; i < values.length; i++) {
    const deviation = problem.deviations[i]!;
    if (deviation !== 0 && deviation !== Infinity)
      cost += ((values[i]! - problem.usual[i]!) / deviation) ** 2;
  }
  return Number.isNaN(cost) ? Infinity : cost;
}

function gather(values: Float64Array, slots: Int32Array, local: Float64Array): void {
  for (let k = 0; k < slots.length; k++) local[k] = values[slots[k]!]!;
}

/** Room for the slopes of two numbers by what they depend on. */
interface SlopeRoom {
  readonly slopes: Float64Array;
  readonly above: Float64Array;
  readonly below: Float64Array;
}

const slopeRoom = (slots: number): SlopeRoom => ({
  slopes: new Float64Array(2 * slots),
  above: new Float64Array(2),
  below: new Float64Array(2),
});

/** Slopes of two numbers by each free slot, by differences to both sides: two rows. */
function slopesOf(
  local: Float64Array,
  evaluate: (v: Float64Array, out: Float64Array) => void,
  isFree: (slot: number) => boolean,
  { slopes, above, below }: SlopeRoom,
): void {
  for (let k = 0; k < local.length; k++) {
    slopes[k] = 0;
    slopes[local.length + k] = 0;
    if (!isFree(k)) continue;
    const value = local[k]!;
    local[k] = value + SLOPE_STEP;
    evaluate(local, above);
    local[k] = value - SLOPE_STEP;
    evaluate(local, below);
    local[k] = value;
    slopes[k] = (above[0]! - below[0]!) / (2 * SLOPE_STEP);
    slopes[local.length + k] = (above[1]! - below[1]!) / (2 * SLOPE_STEP);
  }
}

/** The normal matrix of the free unknowns and its right side, filled row by row. */
interface Normal {
  readonly place: Int32Array;
  readonly normal: Float64Array;
  readonly right: Float64Array;
}

function normalEquations(
  problem: Problem,
  values: Float64Array,
  weights: Float64Array,
  free: Int32Array,
): Normal {
  const place = new Int32Array(values.length).fill(-1);
  free.forEach((unknown, i) => (place[unknown] = i));
  const into: Normal = {
    place,
    normal: new Float64Array(free.length ** 2),
    right: new Float64Array(free.length),
  };
  const local = new Float64Array(SLOTS);
  const out = new Float64Array(2);
  const room = slopeRoom(SLOTS);
  for (const { slots, fixed, photo, group, sharpness, x, y } of problem.sights) {
    const view = problem.views[photo]!;
    const evaluate = (v: Float64Array, to: Float64Array): void => predict(v, fixed, view, to);
    gather(values, slots, local);
    evaluate(local, out);
    slopesOf(local, evaluate, (k) => place[slots[k]!]! >= 0, room);
    addRows(into, slots, room.slopes, out[0]! - x, out[1]! - y, weights[group]! * sharpness ** 2);
  }
  addConditions(problem, values, into);
  addUsual(problem, values, free, into.normal, into.right);
  return into;
}

function addConditions(problem: Problem, values: Float64Array, into: Normal): void {
  const local = new Float64Array(CONDITION_SLOTS);
  const out = new Float64Array(2);
  const room = slopeRoom(CONDITION_SLOTS);
  for (const slots of problem.conditions) {
    gather(values, slots, local);
    squareness(local, out);
    slopesOf(local, squareness, (k) => into.place[slots[k]!]! >= 0, room);
    addRows(into, slots, room.slopes, out[0]!, out[1]!, CONDITION_DEVIATION ** -2);
  }
}

function addRows(
  { place, normal, right }: Normal,
  slots: Int32Array,
  slopes: Float64Array,
  missX: number,
  missY: number,
  weight: number,
): void {
  const count = slots.length;
  const n = right.length;
  for (let a = 0; a < count; a++) {
    const [ax, ay] = [slopes[a]! * weight, slopes[count + a]! * weight];
    if (ax === 0 && ay === 0) continue;
    const row = place[slots[a]!]!;
    right[row]! += ax * missX + ay * missY;
    for (let b = 0; b < count; b++) {
      const column = place[slots[b]!]!;
      if (column >= 0) normal[row * n + column]! += ax * slopes[b]! + ay * slopes[count + b]!;
    }
  }
}

function addUsual(
  problem: Problem,
  values: Float64Array,
  free: Int32Array,
  normal: Float64Array,
  right: Float64Array,
): void {
  const n = free.length;
  for (let i = 0; i < n; i++) {
    const unknown = free[i]!;
    const deviation = problem.deviations[unknown]!;
    if (deviation === Infinity) continue;
    normal[i * n + i]! += deviation ** -2;
    right[i]! += (values[unknown]! - problem.usual[unknown]!) / deviation ** 2;
  }
}

/** For each group its typical miss in deviations: 1 where all is as it should be. */
export function groupMisses(problem: Problem, values: Float64Array): Float64Array {
  const sums = new Float64Array(problem.groups);
  const counts = new Float64Array(problem.groups);
  const local = new Float64Array(SLOTS);
  const out = new Float64Array(2);
  for (const sight of problem.sights) {
    gather(values, sight.slots, local);
    predict(local, sight.fixed, problem.views[sight.photo]!, out);
    const missSq = (out[0]! - sight.x) ** 2 + (out[1]! - sight.y) ** 2;
    sums[sight.group]! += missSq * sight.sharpness ** 2;
    counts[sight.group]! += 2;
  }
  return sums.map((sum, i) => Math.sqrt(sum / Math.max(1, counts[i]!)));
}

/** Of all unknowns the one that is least usual: how many deviations it lies off. */
export function mostUnusual(problem: Problem, values: Float64Array): number {
  let most = 0;
  for (let i = 0; i < values.length; i++) {
    const deviation = problem.deviations[i]!;
    if (deviation === 0 || deviation === Infinity) continue;
    most = Math.max(most, Math.abs(values[i]! - problem.usual[i]!) / deviation);
  }
  return most;
}

/** What is left, bad groups counting by the logarithm of their misses: comparable between ways of seeing one scene. */
export function robustCost(problem: Problem, values: Float64Array): number {
  const counts = new Float64Array(problem.groups);
  for (const { group } of problem.sights) counts[group]! += 2;
  const misses = groupMisses(problem, values);
  const half = HALF_WEIGHT_AT ** 2;
  const ofSights = misses.reduce(
    (sum, miss, i) => sum + counts[i]! * half * Math.log(1 + miss ** 2 / half),
    0,
  );
  return ofSights + costOf({ ...problem, sights: [] }, values, new Float64Array(problem.groups));
}

function groupWeights(problem: Problem, values: Float64Array): Float64Array {
  return groupMisses(problem, values).map((miss) => 1 / (1 + (miss / HALF_WEIGHT_AT) ** 2));
}

/** How the free unknowns can be off together: the inverse of the normal matrix at the solution, row by row. */
export function covarianceOf(problem: Problem, { values, weights }: Solution): Float64Array | undefined {
  const free = freeUnknowns(problem);
  return invertSymmetric(normalEquations(problem, values, weights, free).normal);
}
