import type { FailureReason, SaveOutcome } from './job-store.js';

/** Why something could not be read or kept. */
export class StoreError extends Error {
  constructor(
    readonly reason: FailureReason | 'no key',
    sentence: string,
  ) {
    super(sentence);
    this.name = 'StoreError';
  }
}

export type Failed = Extract<SaveOutcome, { kind: 'failed' }>;

/** What a save answers instead of throwing. */
export function failedBy(error: unknown): Failed {
  return { kind: 'failed', ...reasonFor(error) };
}

export function reasonFor(error: unknown): { readonly reason: FailureReason; readonly sentence: string } {
  const { reason, message } = storeErrorOf(error);
  return { reason: reason === 'no key' ? 'not allowed' : reason, sentence: message };
}

/** Whatever was thrown, as a StoreError: a full disk is "no room", all else may come right when tried again. */
export function storeErrorOf(error: unknown): StoreError {
  if (error instanceof StoreError) return error;
  const sentence = error instanceof Error ? error.message : String(error);
  return new StoreError(isNoRoom(error) ? 'no room' : 'out of reach', sentence);
}

/** The name is the same whether it is a DOMException or, in newer browsers, an error of its own kind. */
function isNoRoom(error: unknown): boolean {
  return error instanceof Error && error.name === 'QuotaExceededError';
}
