import { KEY_HEADER } from './folder-store.js';
import { answerOf } from './table-answers.js';

export type TableFound =
  | { readonly kind: 'table'; readonly key: string; readonly folder: string }
  /** A plain web host. */
  | { readonly kind: 'none' }
  | { readonly kind: 'key needed' }
  | { readonly kind: 'out of reach'; readonly sentence: string };

/**
 * Whether the page comes from a table with a folder, and which of the keys is its. `at`: the page's address. A page that no
 * table marked, and that knows no key, asks nobody.
 */
export async function findTable(
  at: string,
  keys: readonly string[],
  isMarked: boolean,
  ask: typeof fetch = fetch,
): Promise<TableFound> {
  if (!isMarked && keys.length === 0) return { kind: 'none' };
  for (const key of [...keys, ...(keys.length === 0 ? [''] : [])]) {
    const found = await tryKey(at, key, ask);
    if (found.kind !== 'key needed') return found;
  }
  return { kind: 'key needed' };
}

async function tryKey(at: string, key: string, ask: typeof fetch): Promise<TableFound> {
  let response: Response;
  try {
    const headers: HeadersInit = key === '' ? {} : { [KEY_HEADER]: key };
    response = await ask(new URL('api/files', at), { headers, cache: 'no-store' });
  } catch (error) {
    // Only an address that had a table once is one whose table is away; else it is a web host, and there is no network.
    if (key === '') return { kind: 'none' };
    return { kind: 'out of reach', sentence: error instanceof Error ? error.message : String(error) };
  }
  const answer = await answerOf(response);
  if (response.ok && answer?.files !== undefined && answer.folder !== undefined)
    return { kind: 'table', key, folder: answer.folder };
  if (answer?.sentence === undefined) return { kind: 'none' };
  if (response.status === 401) return { kind: 'key needed' };
  return response.status === 404 ? { kind: 'none' } : { kind: 'out of reach', sentence: answer.sentence };
}
