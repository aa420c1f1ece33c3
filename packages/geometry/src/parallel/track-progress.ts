import { placedRings, usedUpArea } from '../leftover/used-up.js';
import type { NestProgress } from '../nest/run.js';
import type { NestAnswer, NestProblem } from '../types/problem.js';

/** Words a search's state as its progress; what is costly is computed once for each better answer. */
export interface ProgressTracker {
  /** A join is complete. */
  readonly joined: (answer: NestAnswer, isBetter: boolean) => void;
  /** `underWay`: pieces of the first layout that lie so far; counts before join 0 only. */
  readonly progress: (state: { readonly underWay: number; readonly isDone: boolean }) => NestProgress;
}

export function trackProgress(problem: NestProblem): ProgressTracker {
  const demandedCount = demandedCopies(problem);
  let best: NestAnswer | undefined;
  let usedUpMm2 = 0;
  let isStale = false;
  return {
    joined: (answer, isBetter) => {
      best = answer;
      if (isBetter) isStale = true;
    },
    progress: ({ underWay, isDone }) => {
      if (isStale) usedUpMm2 = usedUpBy(problem, best!);
      isStale = false;
      return {
        phase: isDone ? 'done' : best === undefined ? 'first-layout' : 'improving',
        joins: best?.joins ?? -1,
        placedCount: best?.placements.length ?? underWay,
        demandedCount,
        usedUpMm2,
      };
    },
  };
}

function demandedCopies({ setKinds }: NestProblem): number {
  let count = 0;
  for (const { sets, members } of setKinds) {
    if (sets === 'many') continue;
    for (const member of members) count += sets * member.count;
  }
  return count;
}

/** Used-up area of all sheets, in mm²; a sheet that is not opened counts 0. */
function usedUpBy({ sheets, items, objective }: NestProblem, { placements }: NestAnswer): number {
  let usedUpMm2 = 0;
  for (const sheet of sheets) {
    const own = placements.filter((placement) => placement.sheet === sheet.id);
    if (own.length === 0) continue;
    usedUpMm2 += usedUpArea(sheet, placedRings(own, items), objective.keepMm).areaMm2;
  }
  return usedUpMm2;
}
