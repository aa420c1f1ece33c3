import { regionArea, startNest } from '@hidebound/geometry';
import type { NestAnswer, NestProblem, NestRun } from '@hidebound/geometry';
import type { CommandContext } from './command-context.js';
import { reportProgress } from './lay-progress.js';
import type { LayGoal, LayProgress } from './lay-progress.js';
import { refuseNotPossibleYet } from './not-possible-yet.js';
import { watchForStop } from './stop-by-hand.js';

export interface SearchOutcome {
  readonly answer: NestAnswer;
  readonly wasStopped: boolean;
}

/** How long the search may keep Ctrl-C and the progress bar waiting, in ms. */
const PAUSE_EVERY_MS = 50;

/** Runs the search until its time or work is done, or until someone stops it by hand; the best so far is kept. */
export async function searchLayout(
  problem: NestProblem,
  goal: LayGoal,
  context: CommandContext,
): Promise<SearchOutcome> {
  refuseNotPossibleYet(problem);
  const started = context.now();
  const run = startNest(problem);
  const report = reportProgress(goal, context);
  const stop = watchForStop(() => {
    report.interrupt('hidebound: stopping; the best so far is being saved (Ctrl-C again ends at once).\n');
  });
  try {
    let yieldNow = { joins: -1, grossYield: 0 };
    let lastPause = started;
    while (!isOver(run, goal, context.now() - started, stop.isAsked())) {
      const { joins, placedCount, demandedCount, usedUpMm2 } = run.advance();
      const now = context.now();
      if (now - lastPause < PAUSE_EVERY_MS && !run.done) continue;
      lastPause = now;
      if (joins !== yieldNow.joins) yieldNow = { joins, grossYield: grossYieldOf(problem, run.best()) };
      const progress: LayProgress = {
        elapsedMs: now - started,
        joins,
        placed: placedCount,
        asked: demandedCount,
        grossYield: yieldNow.grossYield,
        usedUpMm2,
      };
      report.update(progress);
      await pause();
    }
    return { answer: run.best()!, wasStopped: stop.isAsked() };
  } finally {
    report.end();
    stop.release();
  }
}

/** The first layout is always finished, so that there is one to keep. */
function isOver(run: NestRun, goal: LayGoal, elapsedMs: number, isStopped: boolean): boolean {
  if (run.done) return true;
  if (run.best() === undefined) return false;
  return isStopped || ('seconds' in goal && elapsedMs >= goal.seconds * 1000);
}

/** Lets signals and timers be heard. */
function pause(): Promise<void> {
  return new Promise((resolve) => {
    setImmediate(resolve);
  });
}

/** Piece area over the gross area of the sheets that have a piece. */
function grossYieldOf(problem: NestProblem, answer: NestAnswer | undefined): number {
  const placements = answer?.placements ?? [];
  const areaOf = new Map(problem.items.map((item) => [item.id, regionArea(item.region)]));
  const pieces = placements.reduce((sum, { item }) => sum + (areaOf.get(item) ?? 0), 0);
  const opened = new Set(placements.map(({ sheet }) => sheet));
  const gross = problem.sheets
    .filter(({ id }) => opened.has(id))
    .reduce((sum, { region }) => sum + regionArea({ outer: region.outer, openings: [] }), 0);
  return gross === 0 ? 0 : pieces / gross;
}
