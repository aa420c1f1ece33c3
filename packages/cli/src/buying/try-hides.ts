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
/** By then a first answer is told, from the trials that are done. */
const FIRST_ANSWER_MS = 4000;

/**
 * Runs trials until their time or number is up, or someone stops them by hand. Progress and first answers go to standard
 * error: `firstWords` puts the answer so far into a few lines.
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
  let isFirstTold = false;
  let lastTold = 0;
  const first = setTimeout(() => {
    isFirstTold = true;
    tellFirst(firstWords(rounds), leastOf(rounds), context);
  }, FIRST_ANSWER_MS);
  try {
    const done = await runTrialsInThreads({
      inputs,
      signal: end.signal,
      ...('trials' in goal ? { trials: goal.trials } : {}),
      ...(goal.cores === undefined ? {} : { threads: goal.cores }),
      onTrial: (soFar) => {
        rounds = soFar;
        const elapsed = context.now() - started;
        if (!isFirstTold || elapsed - lastTold < TELL_EVERY_MS) return;
        lastTold = elapsed;
        context.err(`${progressWords(goal, elapsed, leastOf(soFar))}\n`);
      },
    });
    return { rounds: done, wasStopped: stop.isAsked() };
  } finally {
    clearTimeout(alarm);
    clearTimeout(first);
    stop.release();
  }
}

function leastOf(rounds: TrialRounds): number {
  return Math.min(...rounds.map((own) => own.length));
}

function tellFirst(lines: readonly string[], trials: number, context: CommandContext): void {
  const rests =
    trials === 0 ? 'before any trial layout' : `after ${countWords(trials, 'trial layout')} a kind`;
  context.err(`First answer, ${rests}:\n${lines.map((line) => `  ${line}\n`).join('')}`);
}

function progressWords(goal: TrialGoal, elapsedMs: number, trials: number): string {
  const seconds = (elapsedMs / 1000).toFixed(1);
  return 'seconds' in goal
    ? `${seconds} of ${goal.seconds} s: ${countWords(trials, 'trial layout')} for each kind of hide`
    : `${seconds} s: ${trials} of ${countWords(goal.trials, 'trial layout')} for each kind of hide`;
}
