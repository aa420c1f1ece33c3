import type { NestProblem, Placement, RoughCut } from '../types/problem.js';
import type { RoughCutConflict } from './conflicts.js';
import { keyOf, roughCutsFor } from './rough-cuts.js';

export interface DrawnRoughCuts {
  /** What stays laid, in the given order. */
  readonly placements: readonly Placement[];
  readonly roughCuts: readonly RoughCut[];
  /** Taken up because their rough cuts, or those of others, could not be drawn: to be laid again elsewhere. */
  readonly lifted: readonly Placement[];
  /** What is left: fixed copies alone are in each other's way. */
  readonly conflicts: readonly RoughCutConflict[];
}

/**
 * Rough cuts for as many of the placements as they can be drawn for. Each round takes up what is in the way, so there
 * are no more rounds than placements. Sets are not looked at: where one lost a copy, what to do is the caller's choice.
 */
export function drawRoughCuts(problem: NestProblem, placements: readonly Placement[]): DrawnRoughCuts {
  let laid = placements;
  const lifted: Placement[] = [];
  for (;;) {
    const { roughCuts, conflicts } = roughCutsFor(problem, laid);
    const up = new Set(conflicts.flatMap(({ lift }) => lift.map(keyOf)));
    if (up.size === 0) return { placements: laid, roughCuts, lifted, conflicts };
    lifted.push(...laid.filter((placement) => up.has(keyOf(placement))));
    laid = laid.filter((placement) => !up.has(keyOf(placement)));
  }
}
