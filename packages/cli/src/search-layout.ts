import { regionArea } from '@hidebound/geometry';
import type { NestAnswer, NestProblem, NestProgress } from '@hidebound/geometry';
import { runNestInThreads } from '@hidebound/geometry/node';
import type { CommandContext } from './command-context.js';
import { reportProgress } from './lay-progress.js';
import type { LayGoal, ProgressReport } from './lay-progress.js';
import { refuseNotPossibleYet } from './not-possible-yet.js';
import { watchForStop } from './stop-by-hand.js';

export interface SearchOutcome {
  readonly answer: NestAnswer;
  readonly wasStopped: boolean;
}

export interface SearchOptions {
  readonly goal: LayGoal;
  /** Processor cores to use; absent: all there are. */
  readonly cores?: number;
}

/** Progress is told no more often than this, in ms: several threads report several times in every 50 ms. */
const TELL_EVERY_MS = 50;

/** Runs the search until its time or work is done, or until someone stops it by hand; the best so far is kept. */
export async function searchLayout(
  problem: NestProblem,
  { goal, cores }: SearchOptions,
  context: CommandContext,
): Promise<SearchOutcome> {
  refuseNotPossibleYet(problem);
  const report = reportProgress(goal, context);
  const end = new AbortController();
  const stop = watchForStop(() => {
    report.interrupt('hidebound: stopping; the best so far is being saved (Ctrl-C again ends at once).\n');
    end.abort();
  });
  const alarm = 'seconds' in goal ? setTimeout(() => end.abort(), goal.seconds * 1000) : undefined;
  try {
    const answer = await runNestInThreads(problem, {
      signal: end.signal,
      ...tellProgress(problem, report, context),
      ...(cores === undefined ? {} : { threads: cores }),
    });
    return { answer, wasStopped: stop.isAsked() };
  } finally {
    clearTimeout(alarm);
    report.end();
    stop.release();
  }
}

/** What the search posts, as what the report tells. */
function tellProgress(problem: NestProblem, report: ProgressReport, context: CommandContext) {
  const started = context.now();
  let grossYield = 0;
  let lastTold = -Infinity;
  return {
    onBest: (best: NestAnswer): void => {
      grossYield = grossYieldOf(problem, best);
    },
    onProgress: ({ phase, joins, placedCount, demandedCount, usedUpMm2 }: NestProgress): void => {
      const now = context.now();
      if (now - lastTold < TELL_EVERY_MS && phase !== 'done') return;
      lastTold = now;
      const elapsedMs = now - started;
      report.update({ elapsedMs, joins, placed: placedCount, asked: demandedCount, grossYield, usedUpMm2 });
    },
  };
}

/** Piece area over the gross area of the sheets that have a piece. */
function grossYieldOf(problem: NestProblem, { placements }: NestAnswer): number {
  const areaOf = new Map(problem.items.map((item) => [item.id, regionArea(item.region)]));
  const pieces = placements.reduce((sum, { item }) => sum + (areaOf.get(item) ?? 0), 0);
  const opened = new Set(placements.map(({ sheet }) => sheet));
  const gross = problem.sheets
    .filter(({ id }) => opened.has(id))
    .reduce((sum, { region }) => sum + regionArea({ outer: region.outer, openings: [] }), 0);
  return gross === 0 ? 0 : pieces / gross;
}
