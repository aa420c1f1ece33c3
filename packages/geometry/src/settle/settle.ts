import type { ActiveSet } from './active-set.js';
import { createActiveSet } from './active-set.js';
import {
  EXACT_MM,
  FARTHEST_ALSO_MM,
  FARTHEST_SHARE,
  MAX_ROUNDS,
  PATIENCE,
  PROGRESS_SHARE,
  REACH_MM,
  SECOND_ALSO_MM,
  SECOND_SHARE,
} from './constants.js';
import type { SettleTask } from './contacts.js';
import { collectContacts } from './contacts.js';
import { createDirection } from './part-direction.js';
import { createPlaces, readPlaces, writePlaces } from './places.js';
import { PLAIN_LIMITS, project } from './project.js';
import { createRows } from './rows.js';

export interface Settled {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** The greatest distance that is missing, mm, over all pairs of parts and bounds; 0 if none is. */
  readonly worst: number;
  /** True if that is small enough to be called exact. */
  readonly isExact: boolean;
  readonly rounds: number;
  /** Work done: pairs of parts looked at, and rows taken in or let go. */
  readonly pairs: number;
  readonly steps: number;
}

/**
 * Moves bodies by as little as possible until every two of them keep their gap and all lie within the bounds.
 *
 * Each round chooses for every two near convex parts the line that separates them best, which makes one linear row,
 * and projects the places on all rows (least sum of squared moves). Rounds go on while lines are chosen anew at
 * the places reached. Where the layout can't be mended near by, the best places found and their shortfall are given.
 */
export function settle(task: SettleTask): Settled {
  const places = createPlaces(task);
  const rows = createRows(16 * task.shapes.length + 16);
  const direction = createDirection();
  let set: ActiveSet | undefined;
  const unknowns = new Float64Array(2 * places.free);
  let best: Settled | undefined;
  let pairs = 0;
  let steps = 0;
  let waited = 0;
  for (let round = 0; ; round++) {
    const shortfall = collectContacts(task, places, REACH_MM, rows, direction, -1);
    pairs += shortfall.pairs;
    const { worst } = shortfall;
    waited = best !== undefined && worst > PROGRESS_SHARE * best.worst ? waited + 1 : 0;
    if (best === undefined || worst < best.worst) {
      best = {
        x: places.x.slice(),
        y: places.y.slice(),
        worst,
        isExact: worst <= EXACT_MM,
        rounds: round,
        pairs,
        steps,
      };
    }
    if (best.isExact || round >= MAX_ROUNDS || waited >= PATIENCE) break;
    set ??= createActiveSet(unknowns.length);
    readPlaces(places, unknowns);
    const farthest = (FARTHEST_SHARE * worst + FARTHEST_ALSO_MM) * Math.sqrt(places.free);
    const secondMost = SECOND_SHARE * worst + SECOND_ALSO_MM;
    const projection = project(set, rows, unknowns, { ...PLAIN_LIMITS, secondMost, farthest });
    steps += projection.steps;
    if (!projection.isFinished) break;
    writePlaces(places, unknowns);
  }
  return { ...best, pairs, steps };
}
