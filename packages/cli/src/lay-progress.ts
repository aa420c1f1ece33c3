import { Presets, SingleBar } from 'cli-progress';
import type { CommandContext } from './command-context.js';

/** How far a run has come. */
export interface LayProgress {
  readonly elapsedMs: number;
  /** Joins done; -1 before the first valid layout. */
  readonly joins: number;
  readonly placed: number;
  readonly asked: number;
  /** Piece area over the gross area of the hides that are opened, 0 to 1. */
  readonly grossYield: number;
}

/** What the run is measured by: time, or work. */
export type LayGoal = { readonly seconds: number } | { readonly joins: number };

export interface ProgressReport {
  readonly update: (progress: LayProgress) => void;
  readonly end: () => void;
}

/** Plain lines come no closer than this, so that a log stays readable. */
const LINE_EVERY_MS = 2000;

/** A bar on a terminal, plain lines elsewhere; both on standard error. */
export function reportProgress(goal: LayGoal, context: CommandContext): ProgressReport {
  return context.errIsTerminal ? reportByBar(goal) : reportByLines(goal, context);
}

function reportByLines(goal: LayGoal, context: CommandContext): ProgressReport {
  let lastMs = -Infinity;
  let lastLine = '';
  let held: string | undefined;
  const tell = (line: string): void => {
    if (line !== lastLine) context.err(line);
    lastLine = line;
  };
  return {
    update: (progress) => {
      const line = `${goalWords(goal, progress)}: ${progressWords(progress)}\n`;
      if (progress.elapsedMs - lastMs < LINE_EVERY_MS) {
        held = line;
        return;
      }
      lastMs = progress.elapsedMs;
      held = undefined;
      tell(line);
    },
    end: () => {
      if (held !== undefined) tell(held);
    },
  };
}

function reportByBar(goal: LayGoal): ProgressReport {
  const bar = new SingleBar(
    { format: '{bar} {goal}: {words}', hideCursor: true, stopOnComplete: false, gracefulExit: false },
    Presets.shades_classic,
  );
  bar.start(1, 0, { goal: 'laying', words: 'looking for a first layout' });
  return {
    update: (progress) => {
      bar.update(Math.min(1, shareDone(goal, progress)), {
        goal: goalWords(goal, progress),
        words: progressWords(progress),
      });
    },
    end: () => bar.stop(),
  };
}

function shareDone(goal: LayGoal, progress: LayProgress): number {
  if ('seconds' in goal) return goal.seconds === 0 ? 1 : progress.elapsedMs / 1000 / goal.seconds;
  return (progress.joins + 1) / (goal.joins + 1);
}

function goalWords(goal: LayGoal, progress: LayProgress): string {
  const seconds = (progress.elapsedMs / 1000).toFixed(1);
  if ('seconds' in goal) return `${seconds} of ${goal.seconds} s`;
  return `${seconds} s, step ${Math.max(0, progress.joins)} of ${goal.joins}`;
}

function progressWords(progress: LayProgress): string {
  if (progress.joins < 0) return 'looking for a first layout';
  const percent = (progress.grossYield * 100).toFixed(1);
  return `${progress.placed} of ${progress.asked} pieces laid, gross yield ${percent} %`;
}
