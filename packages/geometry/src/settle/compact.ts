import type { ActiveSet } from './active-set.js';
import { createActiveSet } from './active-set.js';
import { COMPACT_LEAST_MM, COMPACT_REACH_MM, COMPACT_STEPS, COMPACT_TRUST_MM } from './constants.js';
import type { SettleTask } from './contacts.js';
import { collectContacts } from './contacts.js';
import type { PartDirection } from './part-direction.js';
import { createDirection } from './part-direction.js';
import type { Places } from './places.js';
import { createPlaces, readPlaces, writePlaces } from './places.js';
import { PLAIN_LIMITS, project } from './project.js';
import type { Rows } from './rows.js';
import { addMoveLimits, createRows, holdAsTheyAre, takeTies } from './rows.js';

export interface CompactedStrip {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** The greatest distance that is missing, mm: not more than at the start. */
  readonly worst: number;
  /** Rounds of choosing lines anew. */
  readonly rounds: number;
  /** Work done: pairs of parts looked at, and rows taken in or let go. */
  readonly pairs: number;
  readonly steps: number;
  /** The greatest x of any body that moves. */
  readonly length: number;
}

/**
 * Shortens a strip from a settled layout: moves bodies along their contacts until the greatest x of those that move
 * can't get less. Each step keeps, for every near pair of convex parts, the line that separates it now (Li &
 * Milenkovic 1995), and finds the least length under these lines; lines are chosen anew after it. Every step's
 * layout keeps all gaps as well as the start did. The right side of the bounds does not count. A local optimum.
 */
export function compactStrip(task: SettleTask): CompactedStrip {
  const work = startWork(task);
  const column = 2 * work.places.free;
  let length = greatestX(task, work.places);
  let stuck = 0;
  while (work.rounds < COMPACT_STEPS && work.places.free > 0) {
    collect(work);
    if (stuck === 1 && takeTies(work.rows) === 0) break;
    work.unknowns[column] = length;
    holdAsTheyAre(work.rows, work.unknowns);
    // Pulled this far, the length outweighs the moves of all bodies together, so that only it counts.
    work.unknowns[column] = length - 4 * COMPACT_TRUST_MM * work.places.free;
    if (!moveOnce(work)) break;
    const reached = greatestX(task, work.places);
    const gain = length - reached;
    length = Math.min(length, reached);
    // Where corners meet, the other line may leave the way free; which one was taken is a matter of the last bit.
    stuck = gain < COMPACT_LEAST_MM ? stuck + 1 : 0;
    if (stuck > 2) break;
  }
  const { places, rows, direction, rounds, steps } = work;
  const { worst, pairs } = collectContacts(task, places, 0, rows, direction, -1);
  return { x: places.x, y: places.y, worst, rounds, pairs: work.pairs + pairs, steps, length };
}

interface Work {
  readonly task: SettleTask;
  readonly places: Places;
  readonly rows: Rows;
  readonly direction: PartDirection;
  readonly unknowns: Float64Array;
  readonly set: ActiveSet;
  rounds: number;
  pairs: number;
  steps: number;
}

function startWork(task: SettleTask): Work {
  const places = createPlaces(task);
  const size = 2 * places.free + 1;
  return {
    task,
    places,
    rows: createRows(32 * task.shapes.length + 16),
    direction: createDirection(),
    unknowns: new Float64Array(size),
    set: createActiveSet(size),
    rounds: 0,
    pairs: 0,
    steps: 0,
  };
}

/** Rows of all contacts within reach, and of how far a body may move before other pairs would count. */
function collect(work: Work): void {
  const { task, places, rows, direction, unknowns } = work;
  const length = 2 * places.free;
  work.pairs += collectContacts(task, places, COMPACT_REACH_MM, rows, direction, length).pairs;
  readPlaces(places, unknowns);
  addMoveLimits(rows, unknowns, length, COMPACT_TRUST_MM);
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

function greatestX(task: SettleTask, { slot, x }: Places): number {
  let far = -Infinity;
  for (let i = 0; i < x.length; i++) if (slot[i]! >= 0) far = Math.max(far, x[i]! + task.shapes[i]!.maxX);
  return far;
}
