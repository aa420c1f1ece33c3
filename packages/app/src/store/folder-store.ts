import { contentToSend } from './content-to-send.js';
import type { FileRead, JobStore, SaveOutcome, StoredFile, StoreWrite } from './job-store.js';
import { pauseBefore } from './pauses.js';
import { StoreError, failedBy } from './store-error.js';
import { answerOf, reasonOf } from './table-answers.js';
import type { TableAnswer } from './table-answers.js';

/** A server on the same computer that takes longer than this has stopped. */
const ANSWER_WITHIN_MS = 60_000;

export const KEY_HEADER = 'X-Hidebound-Key';

export interface FolderStoreOptions {
  /** The table's address, with "/" at its end. */
  readonly at: string;
  readonly key: string;
  readonly fetch?: typeof fetch;
}

/** The folder behind `hidebound table`. */
export function folderStore({ at, key, fetch: ask = fetch }: FolderStoreOptions): JobStore {
  const request = async (path: string, init: RequestInit = {}): Promise<Response> => {
    const within = AbortSignal.timeout(ANSWER_WITHIN_MS);
    const signal = init.signal ? AbortSignal.any([init.signal, within]) : within;
    const headers = { ...init.headers, [KEY_HEADER]: key };
    try {
      return await ask(new URL(`api/${path}`, at), { cache: 'no-store', ...init, headers, signal });
    } catch (error) {
      throw new StoreError('out of reach', error instanceof Error ? error.message : String(error));
    }
  };
  const answered = async (path: string, init?: RequestInit): Promise<TableAnswer> => {
    const response = await request(path, init);
    const answer = await answerOf(response);
    if (!response.ok) throw refusal(response.status, answer);
    if (answer === undefined) throw new StoreError('out of reach', 'Something else answers at this address.');
    return answer;
  };

  return {
    kind: 'folder',
    list: async () => {
      const { folder, files } = await answered('files');
      return { name: folder ?? '', files: files ?? [] };
    },
    read: async (path) => {
      const response = await request(`file?path=${encodeURIComponent(path)}`);
      if (response.status === 404) return undefined;
      if (!response.ok) throw refusal(response.status, await answerOf(response));
      return fileRead(response);
    },
    save: async (writes) => {
      try {
        return await saveAll(request, writes);
      } catch (error) {
        return failedBy(error);
      }
    },
    watch: (listener) => {
      const ending = new AbortController();
      void follow(answered, listener, ending.signal);
      return () => ending.abort();
    },
  };
}

type Request = (path: string, init?: RequestInit) => Promise<Response>;

async function fileRead(response: Response): Promise<FileRead> {
  const revision = /^(?:W\/)?"([^"]+)"$/.exec(response.headers.get('ETag') ?? '')?.[1];
  if (revision === undefined) throw new StoreError('out of reach', 'Something else answers at this address.');
  try {
    return { bytes: new Uint8Array(await response.arrayBuffer()), revision };
  } catch (error) {
    throw new StoreError('out of reach', error instanceof Error ? error.message : String(error));
  }
}

async function saveAll(request: Request, writes: readonly StoreWrite[]): Promise<SaveOutcome> {
  const sent = await Promise.all(writes.map(writeToSend));
  const response = await request('save', {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ writes: sent }),
  });
  const answer = await answerOf(response);
  if (response.status === 409 && answer?.conflicts) return { kind: 'conflict', conflicts: answer.conflicts };
  if (response.status === 422)
    throw new StoreError('not written', answer?.sentence ?? 'The table does not take one of these files.');
  if (!response.ok) throw refusal(response.status, answer);
  return { kind: 'saved', files: savedFiles(answer, writes) };
}

async function writeToSend({ path, base, bytes }: StoreWrite): Promise<object> {
  return bytes === undefined ? { path, base, remove: true } : { path, base, ...(await contentToSend(bytes)) };
}

/** An answer without the new revisions is no answer: what was written would be taken for somebody else's. */
function savedFiles(answer: TableAnswer | undefined, writes: readonly StoreWrite[]): readonly StoredFile[] {
  const files = new Map((answer?.files ?? []).map((file) => [file.path, file] as const));
  return writes.flatMap(({ path, bytes }) => {
    if (bytes === undefined) return [];
    const file = files.get(path);
    if (file === undefined) throw new StoreError('out of reach', 'The answer of the table was cut off.');
    return [file];
  });
}

function refusal(status: number, answer: TableAnswer | undefined): StoreError {
  const reason = status === 401 ? 'no key' : reasonOf(status);
  return new StoreError(reason, answer?.sentence ?? `The table answered with status ${status}.`);
}

/** Asks for changes again and again; the server holds each answer back until there are some. */
async function follow(
  answered: (path: string, init?: RequestInit) => Promise<TableAnswer>,
  listener: () => void,
  signal: AbortSignal,
): Promise<void> {
  let stamp = '';
  let failures = 0;
  while (!signal.aborted) {
    try {
      const answer = await answered(`changes?after=${encodeURIComponent(stamp)}`, { signal });
      failures = 0;
      // The first answer counts too: something may have changed since the files were read.
      const isNews = answer.stamp !== stamp;
      stamp = answer.stamp ?? '';
      if (isNews && !signal.aborted) listener();
    } catch {
      if (!signal.aborted) await pauseBefore(++failures, signal);
    }
  }
}
