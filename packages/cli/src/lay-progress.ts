import { Presets, SingleBar } from 'cli-progress';
import type { CommandContext } from './command-context.js';
import { percent, squareMetres } from './yield-words.js';

/** How far a run has come. */
export interface LayProgress {
  readonly elapsedMs: number;
  /** Joins done; -1 before the first valid layout. */
  readonly joins: number;
  readonly placed: number;
  readonly asked: number;
  /** Piece area over the gross area of the hides that are opened, 0 to 1. */
  readonly grossYield: number;
  /** What of the hides is used up so far, mm². */
  readonly usedUpMm2: number;
}

/** What the run is measured by: time, or work. */
export type LayGoal = { readonly seconds: number } | { readonly joins: number };

export interface ProgressReport {
  readonly update: (progress: LayProgress) => void;
  /** Says something in between, on a line of its own; progress is told no more after it. */
  readonly interrupt: (text: string) => void;
  readonly end: () => void;
}

/** Plain lines come no closer than this, so that a log stays readable. */
const LINE_EVERY_MS = 2000;

/** A bar on a terminal, plain lines elsewhere; both on standard error. */
export function reportProgress(goal: LayGoal, context: CommandContext): ProgressReport {
  return context.errIsTerminal ? reportByBar(goal, context) : reportByLines(goal, context);
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
    interrupt: context.err,
    end: () => {
      if (held !== undefined) tell(held);
    },
  };
}

/** Leaves the words room on a terminal of 80 columns. */
const BAR_COLUMNS = 10;

function reportByBar(goal: LayGoal, context: CommandContext): ProgressReport {
  const bar = new SingleBar(
    {
      format: '{bar} {goal}: {words}',
      barsize: BAR_COLUMNS,
      hideCursor: true,
      stopOnComplete: false,
      gracefulExit: false,
    },
    Presets.shades_classic,
  );
  bar.start(1, 0, { goal: '0.0 s', words: 'making a first layout' });
  return {
    update: (progress) => {
      bar.update(Math.min(1, shareDone(goal, progress)), {
        goal: goalWords(goal, progress),
        words: progressWords(progress),
      });
    },
    interrupt: (text) => {
      bar.stop();
      context.err(text);
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
  return progress.joins < 0 ? `${seconds} s` : `${seconds} s, round ${progress.joins} of ${goal.joins}`;
}

function progressWords(progress: LayProgress): string {
  const laid = `${progress.placed} of ${progress.asked} laid`;
  if (progress.joins < 0) return `making a first layout, ${laid}`;
  return `${laid}, ${squareMetres(progress.usedUpMm2)} used up, gross yield ${percent(progress.grossYield)}`;
}
