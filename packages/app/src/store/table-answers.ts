import type { Conflict, FailureReason, StoredFile } from './job-store.js';

/** What the table's server says in JSON; it is read with care all the same, for another program may answer. */
export interface TableAnswer {
  readonly folder?: string;
  readonly stamp?: string;
  readonly files?: readonly StoredFile[];
  readonly conflicts?: readonly Conflict[];
  readonly code?: string;
  readonly sentence?: string;
}

/** The answer's JSON; undefined where it is none, as a plain web host's page for a missing address. */
export async function answerOf(response: Response): Promise<TableAnswer | undefined> {
  if (!(response.headers.get('Content-Type') ?? '').includes('json')) return undefined;
  try {
    const value: unknown = await response.json();
    return typeof value === 'object' && value !== null ? value : undefined;
  } catch {
    return undefined;
  }
}

/** What a status other than 2xx means for a person. */
export function reasonOf(status: number): FailureReason {
  if (status === 413) return 'too large';
  if (status === 507) return 'no room';
  // Too many requests, a server that is closing or stumbles: the same request may do later.
  if (status === 408 || status === 429 || (status >= 500 && status !== 501)) return 'out of reach';
  return 'not allowed';
}
