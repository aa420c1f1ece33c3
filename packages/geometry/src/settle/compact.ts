import type { ActiveSet } from './active-set.js';
import { createActiveSet } from './active-set.js';
import { COMPACT_LEAST_MM, COMPACT_REACH_MM, COMPACT_STEPS, COMPACT_TRUST_SHARE } from './constants.js';
import type { SettleTask, Shortfall } from './contacts.js';
import { collectContacts } from './contacts.js';
import type { PartDirection } from './part-direction.js';
import { createDirection } from './part-direction.js';
import type { Places } from './places.js';
import { createPlaces, readPlaces, writePlaces } from './places.js';
import { PLAIN_LIMITS, project } from './project.js';
import type { Rows } from './rows.js';
import { addMoveLimits, createRows, holdAsTheyAre, MOVING_WIDTH, takeTies } from './rows.js';

export interface CompactOptions {
  /** Pairs within this reach are looked at in a step, and no body moves farther than a third of it, mm. */
  readonly reachMm?: number;
  readonly maxSteps?: number;
  /** A step that gains less is the last one, mm. */
  readonly leastMm?: number;
}

export interface Compacted {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** The greatest distance that is missing, mm: not more than at the start. */
  readonly worst: number;
  /** Rounds of choosing lines anew. */
  readonly rounds: number;
  /** Work done: pairs of parts looked at, and rows taken in or let go. */
  readonly pairs: number;
  readonly steps: number;
}

export interface CompactedStrip extends Compacted {
  /** The greatest x of any body that moves. */
  readonly length: number;
}

/**
 * Shortens a strip from a settled layout: moves bodies along their contacts until the greatest x of those that move
 * can't get less. Each step keeps, for every near pair of convex parts, the line that separates it now (Li &
 * Milenkovic 1995), and finds the least length under these lines; lines are chosen anew after it. Every step's
 * layout keeps all gaps as well as the start did. The right side of the bounds does not count. A local optimum.
 */
export function compactStrip(task: SettleTask, options: CompactOptions = {}): CompactedStrip {
  const work = startWork(task, options, 1);
  const column = 2 * work.places.free;
  let length = greatestX(task, work.places);
  let stuck = 0;
  while (work.rounds < work.maxSteps && work.places.free > 0) {
    collect(work, column);
    if (stuck === 1 && takeTies(work.rows) === 0) break;
    work.unknowns[column] = length;
    holdAsTheyAre(work.rows, work.unknowns);
    // Pulled this far, the length outweighs the moves of all bodies together, so that only it counts.
    work.unknowns[column] = length - 4 * work.trust * work.places.free;
    if (!moveOnce(work)) break;
    const reached = greatestX(task, work.places);
    const gain = length - reached;
    length = Math.min(length, reached);
    // Where corners meet, the other line may leave the way free; which one was taken is a matter of the last bit.
    stuck = gain < work.least ? stuck + 1 : 0;
    if (stuck > 2) break;
  }
  return { ...resultOf(work), length };
}

/**
 * Pulls all bodies that move the same way, (pullX, pullY) being a unit vector, until the sum of their moves along
 * it grows no more: pieces draw together towards one end of a hide. Every gap is kept as well as at the start.
 */
export function compactTowards(
  task: SettleTask,
  pullX: number,
  pullY: number,
  options: CompactOptions = {},
): Compacted {
  const work = startWork(task, options, 0);
  while (work.rounds < work.maxSteps && work.places.free > 0) {
    collect(work, -1);
    holdAsTheyAre(work.rows, work.unknowns);
    const { unknowns, trust } = work;
    for (let i = 0; i < 2 * work.places.free; i += 2) {
      unknowns[i] = unknowns[i]! + 4 * trust * pullX;
      unknowns[i + 1] = unknowns[i + 1]! + 4 * trust * pullY;
    }
    const before = alongPull(work.places, pullX, pullY);
    if (!moveOnce(work)) break;
    if (alongPull(work.places, pullX, pullY) - before < work.least) break;
  }
  return resultOf(work);
}

interface Work {
  readonly task: SettleTask;
  readonly places: Places;
  readonly rows: Rows;
  readonly direction: PartDirection;
  readonly unknowns: Float64Array;
  readonly set: ActiveSet;
  readonly reach: number;
  readonly trust: number;
  readonly least: number;
  readonly maxSteps: number;
  rounds: number;
  pairs: number;
  steps: number;
}

function startWork(task: SettleTask, options: CompactOptions, more: number): Work {
  const places = createPlaces(task);
  const size = 2 * places.free + more;
  const reach = options.reachMm ?? COMPACT_REACH_MM;
  return {
    task,
    places,
    rows: createRows(32 * task.shapes.length + 16, MOVING_WIDTH),
    direction: createDirection(),
    unknowns: new Float64Array(size),
    set: createActiveSet(size),
    reach,
    trust: reach * COMPACT_TRUST_SHARE,
    least: options.leastMm ?? COMPACT_LEAST_MM,
    maxSteps: options.maxSteps ?? COMPACT_STEPS,
    rounds: 0,
    pairs: 0,
    steps: 0,
  };
}

/** Rows of all contacts within reach, and of how far a body may move before other pairs would count. */
function collect(work: Work, lengthColumn: number): Shortfall {
  const { task, places, rows, direction, unknowns, trust } = work;
  const shortfall = collectContacts(task, places, work.reach, rows, direction, lengthColumn);
  work.pairs += shortfall.pairs;
  readPlaces(places, unknowns);
  addMoveLimits(rows, unknowns, 2 * places.free, trust);
  return shortfall;
}

/** One projection; false, with the places as they were, if doubles did not suffice for it. */
function moveOnce(work: Work): boolean {
  const { rows, places, unknowns, set } = work;
  const { steps, broken, isFinished } = project(set, rows, unknowns, PLAIN_LIMITS);
  work.steps += steps;
  work.rounds++;
  if (broken > 0 || !isFinished) return false;
  writePlaces(places, unknowns);
  return true;
}

function resultOf(work: Work): Compacted {
  const { worst, pairs } = collectContacts(work.task, work.places, 0, work.rows, work.direction, -1);
  const { x, y } = work.places;
  return { x, y, worst, rounds: work.rounds, pairs: work.pairs + pairs, steps: work.steps };
}

function greatestX(task: SettleTask, { slot, x }: Places): number {
  let far = -Infinity;
  for (let i = 0; i < x.length; i++) if (slot[i]! >= 0) far = Math.max(far, x[i]! + task.shapes[i]!.maxX);
  return far;
}

function alongPull({ slot, x, y }: Places, pullX: number, pullY: number): number {
  let sum = 0;
  for (let i = 0; i < x.length; i++) if (slot[i]! >= 0) sum += x[i]! * pullX + y[i]! * pullY;
  return sum;
}
