import type { TrialInput, TrialOutcome } from './run-trial.js';

/** What an owner tells a worker: first `start`, then one `trial` after the other. */
export type ToTrialWorker =
  | { readonly kind: 'start'; readonly inputs: readonly TrialInput[] }
  | { readonly kind: 'trial'; readonly input: number; readonly number: number };

/** What a worker tells its owner. */
export type FromTrialWorker =
  | { readonly kind: 'outcome'; readonly input: number; readonly outcome: TrialOutcome }
  | { readonly kind: 'failed'; readonly message: string };
