import { webWorkerHandle } from '@hidebound/geometry/parallel';
import { runTrials } from '@hidebound/leather';
import type { TrialRounds } from '@hidebound/leather';
import type { App } from '../../app/app.js';
import { drawAgain, makeTable } from './table.js';

/** By then the answer is a good one on two cores; the command tries as long. */
export const TRY_SECONDS = 45;
/** One core is left to the hand at the table. */
const MOST_WORKERS = 4;

/** Lays the order on hides of chance until the time is up or someone stops it; the answer so far counts. */
export async function tryHides(app: App): Promise<void> {
  const table = makeTable(app);
  const inputs = table.shown?.made.trials ?? [];
  if (table.trying !== undefined || inputs.length === 0) return;
  const end = new AbortController();
  const startedMs = performance.now();
  table.trying = { end, startedMs, trials: 0 };
  table.wasStopped = false;
  const alarm = setTimeout(() => end.abort('time'), TRY_SECONDS * 1000);
  const tick = setInterval(() => app.redraw(), 1000);
  app.redraw();
  try {
    table.rounds = await runTrials({
      inputs,
      workers: Math.max(1, Math.min(MOST_WORKERS, navigator.hardwareConcurrency - 1)),
      createWorker: () => webWorkerHandle(newWorker()),
      signal: end.signal,
      onTrial: (rounds) => {
        table.trying = { end, startedMs, trials: leastOf(rounds) };
      },
    });
    table.wasStopped = end.signal.reason === 'hand';
  } catch (error) {
    app.tellFailure(error);
  } finally {
    clearTimeout(alarm);
    clearInterval(tick);
    table.trying = undefined;
    drawAgain(app);
    app.redraw();
  }
}

function newWorker(): Worker {
  return new Worker(new URL('../../work/make-trial-worker.ts', import.meta.url), {
    type: 'module',
    name: 'trial',
  });
}

function leastOf(rounds: TrialRounds): number {
  return Math.min(...rounds.map((own) => own.length));
}
