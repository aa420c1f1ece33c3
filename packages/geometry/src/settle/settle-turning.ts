import { createActiveSet } from './active-set.js';
import type { CompactOptions, CompactedStrip } from './compact.js';
import { compactStrip } from './compact.js';
import {
  COMPACT_EXACT_MM,
  COMPACT_LEAST_MM,
  COMPACT_REACH_MM,
  COMPACT_STEPS,
  EXACT_MM,
  FARTHEST_ALSO_MM,
  FARTHEST_SHARE,
  LOOSEN_MM,
  MAX_ROUNDS,
  PATIENCE,
  PROGRESS_SHARE,
  REACH_MM,
  TURNING_LEAST_TRUST_MM,
  TURNING_LOOSEN_SHARE,
  TURNING_SPAN_LEFT_SQ,
  TURNING_TRUST_SHARE,
} from './constants.js';
import type { SettleTask } from './contacts.js';
import { createDirection } from './part-direction.js';
import { createPlaces, readPlaces, writePlaces } from './places.js';
import { PLAIN_LIMITS, project } from './project.js';
import { addMoveLimits, createRows, holdAsTheyAre, TURNING_WIDTH } from './rows.js';
import type { SettleOptions, Settled } from './settle.js';
import { settle } from './settle.js';
import type { Turning, TurningTask } from './turning.js';
import { addTurnLimits, collectTurningContacts, createTurning, turnBody, writeTurns } from './turning.js';

/** As many decimals as a stored rotation has. */
const STORED_PER_DEG = 1_000_000;

/** As `settle`, with bodies that turn as well. Angles come out as a file stores them, and places belong to these. */
export function settleTurning(
  task: TurningTask,
  options: SettleOptions = {},
): Settled & { readonly angleDeg: Float64Array } {
  const exact = options.exactMm ?? EXACT_MM;
  const places = createPlaces(task);
  const turning = createTurning(task, places, 2 * places.free);
  const rows = createRows(32 * task.shapes.length + 16, TURNING_WIDTH);
  const set = createActiveSet(turning.unknowns);
  const unknowns = new Float64Array(turning.unknowns);
  const direction = createDirection();
  const maxRounds = options.maxRounds ?? MAX_ROUNDS;
  let least = Infinity;
  let waited = 0;
  let pairs = 0;
  let steps = 0;
  let round = 0;
  for (; ; round++) {
    const shortfall = collectTurningContacts(turning, options.reachMm ?? REACH_MM, rows, direction, -1);
    addTurnLimits(turning, rows, Infinity);
    pairs += shortfall.pairs;
    waited = shortfall.worst > PROGRESS_SHARE * least ? waited + 1 : 0;
    least = Math.min(least, shortfall.worst);
    if (shortfall.worst <= exact || round >= maxRounds || waited >= PATIENCE) break;
    readPlaces(places, unknowns);
    const farthest = (FARTHEST_SHARE * shortfall.worst + FARTHEST_ALSO_MM) * Math.sqrt(places.free);
    const projection = project(set, rows, unknowns, {
      ...PLAIN_LIMITS,
      farthest,
      loosen: Math.max(LOOSEN_MM, TURNING_LOOSEN_SHARE * shortfall.worst),
      spanLeftSq: TURNING_SPAN_LEFT_SQ,
    });
    steps += projection.steps;
    if (!projection.isFinished) break;
    writePlaces(places, unknowns);
    writeTurns(turning, unknowns);
  }
  storeAngles(turning);
  const settled = settle(stillTask(turning), options);
  return {
    ...settled,
    angleDeg: turning.angleDeg,
    rounds: round + settled.rounds,
    pairs: pairs + settled.pairs,
    steps: steps + settled.steps,
  };
}

/**
 * As `compactStrip`, with bodies that turn as well. A step is linear in the turns, so what it leaves short is settled
 * by moves alone; a step that gains nothing in the end is taken back, and the next ones are half as long.
 */
export function compactStripTurning(
  task: TurningTask,
  options: CompactOptions = {},
): CompactedStrip & { readonly angleDeg: Float64Array } {
  const maxSteps = options.maxSteps ?? COMPACT_STEPS;
  let best = compactStrip(stillTask(createTurning(task, createPlaces(task), 0)), options);
  let angleDeg: Float64Array = Float64Array.from(task.angleDeg);
  let reach = options.reachMm ?? COMPACT_REACH_MM;
  let { rounds, pairs, steps } = best;
  while (rounds < maxSteps && reach * TURNING_TRUST_SHARE > TURNING_LEAST_TRUST_MM) {
    const tried = turnOnce({ ...task, x: best.x, y: best.y, angleDeg }, best.length, reach);
    const settled = settle(tried.still, { exactMm: COMPACT_EXACT_MM });
    rounds++;
    pairs += settled.pairs;
    steps += settled.steps + tried.steps;
    const length = settled.isExact ? lengthOf(tried.still, settled) : Infinity;
    if (length < best.length - (options.leastMm ?? COMPACT_LEAST_MM)) {
      const { x, y, worst } = settled;
      best = { ...best, x, y, worst, length };
      angleDeg = tried.angleDeg;
    } else reach /= 2;
  }
  const final = { ...task, x: best.x, y: best.y, angleDeg };
  const last = compactStrip(stillTask(createTurning(final, createPlaces(final), 0)), options);
  return {
    ...last,
    angleDeg,
    rounds: rounds + last.rounds,
    pairs: pairs + last.pairs,
    steps: steps + last.steps,
  };
}

interface Turned {
  /** The bodies after the step, at angles as stored; the strip is open to the right. */
  readonly still: SettleTask;
  readonly angleDeg: Float64Array;
  readonly steps: number;
}

/** One step: the least length under the lines of now, with moves and turns within what these lines speak of. */
function turnOnce(task: TurningTask, length: number, reach: number): Turned {
  const places = createPlaces(task);
  const column = 2 * places.free;
  const turning = createTurning(task, places, column + 1);
  const rows = createRows(64 * task.shapes.length + 16, TURNING_WIDTH);
  const unknowns = new Float64Array(turning.unknowns);
  const trust = reach * TURNING_TRUST_SHARE;
  collectTurningContacts(turning, reach, rows, createDirection(), column);
  readPlaces(places, unknowns);
  addMoveLimits(rows, unknowns, column, trust);
  addTurnLimits(turning, rows, trust);
  unknowns[column] = length;
  holdAsTheyAre(rows, unknowns);
  unknowns[column] = length - 4 * trust * places.free;
  const set = createActiveSet(turning.unknowns);
  const { steps, isFinished, broken } = project(set, rows, unknowns, PLAIN_LIMITS);
  if (isFinished && broken === 0) {
    writePlaces(places, unknowns);
    writeTurns(turning, unknowns);
    storeAngles(turning);
  }
  return { still: openToTheRight(stillTask(turning)), angleDeg: turning.angleDeg, steps };
}

/** Rounds the angles of bodies that turn to what a file stores, within their ranges. */
function storeAngles(turning: Turning): void {
  const { column, angleDeg, task } = turning;
  for (let i = 0; i < column.length; i++) {
    if (column[i]! < 0) continue;
    const rounded = Math.round(angleDeg[i]! * STORED_PER_DEG) / STORED_PER_DEG;
    const least = task.leastDeg?.[i] ?? -Infinity;
    const most = task.mostDeg?.[i] ?? Infinity;
    turnBody(turning, i, Math.min(Math.max(rounded, least), most));
  }
}

/** The bodies at their present angles and places, as bodies that don't turn. */
function stillTask({ task, places, shapes }: Turning): SettleTask {
  const open = task.bounds;
  return {
    shapes,
    x: places.x,
    y: places.y,
    gap: task.gap,
    ...(task.fixed === undefined ? {} : { fixed: task.fixed }),
    ...(open === undefined ? {} : { bounds: open }),
  };
}

function openToTheRight(task: SettleTask): SettleTask {
  return task.bounds === undefined ? task : { ...task, bounds: { ...task.bounds, maxX: Infinity } };
}

function lengthOf(task: SettleTask, { x }: Settled): number {
  let far = -Infinity;
  for (let i = 0; i < x.length; i++)
    if (task.fixed?.[i] !== 1) far = Math.max(far, x[i]! + task.shapes[i]!.maxX);
  return far;
}
