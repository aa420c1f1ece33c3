import type { Told } from '../words/told.js';

/** Tasks that a worker does: what each takes and gives. Declared by the worker's module, used by whoever asks. */
export type TaskTable = Record<string, { input: unknown; output: unknown; progress?: unknown }>;

/** What went wrong in a worker, in a sentence for a person where one of our packages said it. */
export interface WorkFailure extends Told {
  readonly code: string;
  /** True where our own packages refuse the input; else it is a fault of the program. */
  readonly isRefusal: boolean;
}

export interface TaskRequest {
  readonly id: number;
  readonly task: string;
  readonly input: unknown;
}

export type TaskReply =
  | { readonly id: number; readonly kind: 'progress'; readonly progress: unknown }
  | { readonly id: number; readonly kind: 'done'; readonly output: unknown }
  | { readonly id: number; readonly kind: 'failed'; readonly failure: WorkFailure };

/** Thrown to whoever asked. */
export class WorkError extends Error {
  constructor(readonly failure: WorkFailure) {
    super(failure.sentence);
    this.name = 'WorkError';
  }
}
