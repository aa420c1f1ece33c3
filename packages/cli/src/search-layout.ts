import { GeometryError, regionArea } from '@hidebound/geometry';
import type { NestAnswer, NestProblem, NestProgress } from '@hidebound/geometry';
import { runNestInThreads } from '@hidebound/geometry/node';
import type { Diagnostic } from '@hidebound/leather';
import type { CommandContext } from './command-context.js';
import { countWords } from './count-words.js';
import { sentenceOf } from './finding-words.js';
import { reportProgress } from './lay-progress.js';
import type { LayGoal, ProgressReport } from './lay-progress.js';
import { refuseNotPossibleYet } from './not-possible-yet.js';
import { watchForStop } from './stop-by-hand.js';

export interface SearchOutcome {
  readonly answer: NestAnswer;
  readonly wasStopped: boolean;
  /** Why the search ended early, where a worker of it failed; the answer is the best up to then. */
  readonly failure?: GeometryError;
}

export interface SearchOptions {
  readonly goal: LayGoal;
  /** Processor cores to use; absent: all there are. */
  readonly cores?: number;
}

/** Progress is told no more often than this, in ms: several threads report several times in every 50 ms. */
const TELL_EVERY_MS = 50;

/**
 * Runs the search until its time or work is done, or until someone stops it by hand; the best so far is kept, also where
 * a worker fails after the first layout.
 */
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
  const told = tellProgress(problem, report, context);
  try {
    const answer = await runNestInThreads(problem, {
      signal: end.signal,
      onBest: told.onBest,
      onProgress: told.onProgress,
      ...(cores === undefined ? {} : { threads: cores }),
    });
    return { answer, wasStopped: stop.isAsked() };
  } catch (error) {
    const best = told.best();
    if (best === undefined || !(error instanceof GeometryError) || error.code !== 'worker-failed')
      throw error;
    report.interrupt(`hidebound: ${sentenceOf(endedEarlyFinding(error, best))}\n`);
    return { answer: best, wasStopped: stop.isAsked(), failure: error };
  } finally {
    clearTimeout(alarm);
    report.end();
    stop.release();
  }
}

/** A search that ended early, as a finding. */
export function endedEarlyFinding({ message }: GeometryError, { placements }: NestAnswer): Diagnostic {
  return {
    code: 'search-ended-early',
    severity: 'warning',
    params: { reason: message.replace(/\.$/, ''), placed: countWords(placements.length, 'piece') },
  };
}

/** What the search posts, as what the report tells; and the best that it has posted. */
function tellProgress(problem: NestProblem, report: ProgressReport, context: CommandContext) {
  const started = context.now();
  let grossYield = 0;
  let lastTold = -Infinity;
  let best: NestAnswer | undefined;
  return {
    best: () => best,
    onBest: (answer: NestAnswer): void => {
      best = answer;
      grossYield = grossYieldOf(problem, answer);
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
