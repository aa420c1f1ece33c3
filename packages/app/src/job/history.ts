import { withEdits } from './job.js';
import type { Edits, Job } from './job.js';

/** One change of a person's, with both ways to go. */
export interface Step {
  /** In words that stand after "Undo": "Undo: flaw marked". */
  readonly label: string;
  readonly before: Edits;
  readonly after: Edits;
}

/** What was done and what was taken back, the newest last. Without limit: steps share all that did not change. */
export interface History {
  readonly done: readonly Step[];
  readonly undone: readonly Step[];
}

export const NO_HISTORY: History = { done: [], undone: [] };

export interface Changed {
  readonly job: Job;
  readonly history: History;
  /** What has to be saved. */
  readonly edits: Edits;
}

/** The job after a change. Edits that change nothing are left out; with none left, undefined. */
export function changeJob(job: Job, history: History, label: string, edits: Edits): Changed | undefined {
  const after = new Map([...edits].filter(([path, file]) => job.files.get(path) !== file));
  if (after.size === 0) return undefined;
  const before = new Map([...after.keys()].map((path) => [path, job.files.get(path)] as const));
  return {
    job: withEdits(job, after),
    history: { done: [...history.done, { label, before, after }], undone: [] },
    edits: after,
  };
}

export function undoStep(job: Job, { done, undone }: History): Changed | undefined {
  const step = done.at(-1);
  if (step === undefined) return undefined;
  return {
    job: withEdits(job, step.before),
    history: { done: done.slice(0, -1), undone: [...undone, step] },
    edits: step.before,
  };
}

export function redoStep(job: Job, { done, undone }: History): Changed | undefined {
  const step = undone.at(-1);
  if (step === undefined) return undefined;
  return {
    job: withEdits(job, step.after),
    history: { done: [...done, step], undone: undone.slice(0, -1) },
    edits: step.after,
  };
}
