import type { JobStore } from './job-store.js';
import { StoreError, reasonFor } from './store-error.js';

/** The one revision of all files. */
export const UNKEPT = 'unkept';

/** Stands in where the browser keeps nothing at all: one can work, but has to save a job file. */
export function unkeptStore(name: string, paths: readonly string[], cause: unknown): JobStore {
  const { reason, sentence } = reasonFor(cause);
  // It won't come within reach by itself.
  const refusal = { reason: reason === 'out of reach' ? 'not allowed' : reason, sentence } as const;
  const files = paths.map((path) => ({ path, size: 0, revision: UNKEPT }));
  return {
    kind: 'browser',
    list: () => Promise.resolve({ name, files }),
    read: () => Promise.reject(new StoreError(refusal.reason, sentence)),
    save: () => Promise.resolve({ kind: 'failed', ...refusal }),
    watch: () => () => undefined,
  };
}
