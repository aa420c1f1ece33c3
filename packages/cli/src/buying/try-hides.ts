import type { TrialInput, TrialRounds } from '@hidebound/leather';
import type { CommandContext } from '../command-context.js';
import { countWords } from '../count-words.js';
import { watchForStop } from '../stop-by-hand.js';
import { runTrialsInThreads } from './run-trials-in-threads.js';

/** How long to try, or how often. */
export type TrialGoal = { readonly seconds: number } | { readonly trials: number };

export interface TriedHides {
  readonly rounds: TrialRounds;
  readonly wasStopped: boolean;
}

/** Progress is told no more often than this. */
const TELL_EVERY_MS = 2000;

/**
 * Runs trials until their time or number is up, or someone stops them by hand. Progress and the first answer go to
 * standard error: `firstWords` puts what is known before any trial into a few lines, so that nobody waits for it.
 */
export async function tryHides(
  inputs: readonly TrialInput[],
  goal: TrialGoal & { readonly cores?: number },
  firstWords: (rounds: TrialRounds) => readonly string[],
  context: CommandContext,
): Promise<TriedHides> {
  const started = context.now();
  const end = new AbortController();
  const stop = watchForStop(() => {
    context.err('hidebound: stopping; the answer so far follows (Ctrl-C again ends at once).\n');
    end.abort();
  });
  const alarm = 'seconds' in goal ? setTimeout(() => end.abort(), goal.seconds * 1000) : undefined;
  let rounds: TrialRounds = inputs.map(() => []);
  let lastTold = 0;
  tellFirst(firstWords(rounds), context);
  try {
    const done = await runTrialsInThreads({
      inputs,
      signal: end.signal,
      ...('trials' in goal ? { trials: goal.trials } : {}),
      ...(goal.cores === undefined ? {} : { threads: goal.cores }),
      onTrial: (soFar) => {
        rounds = soFar;
        const elapsed = context.now() - started;
        if (elapsed - lastTold < TELL_EVERY_MS) return;
        lastTold = elapsed;
        context.err(`${progressWords(goal, elapsed, leastOf(soFar))}\n`);
      },
    });
    return { rounds: done, wasStopped: stop.isAsked() };
  } finally {
    clearTimeout(alarm);
    stop.release();
  }
}

function leastOf(rounds: TrialRounds): number {
  return Math.min(...rounds.map((own) => own.length));
}

function tellFirst(lines: readonly string[], context: CommandContext): void {
  context.err(`First answer, before any trial layout:\n${lines.map((line) => `  ${line}\n`).join('')}`);
}

function progressWords(goal: TrialGoal, elapsedMs: number, trials: number): string {
  const seconds = (elapsedMs / 1000).toFixed(1);
  return 'seconds' in goal
    ? `${seconds} of ${goal.seconds} s: ${countWords(trials, 'trial layout')} for each kind of hide`
    : `${seconds} s: ${trials} of ${countWords(goal.trials, 'trial layout')} for each kind of hide`;
}
