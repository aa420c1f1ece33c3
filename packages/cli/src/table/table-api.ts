import type { IncomingMessage, ServerResponse } from 'node:http';
import { basename } from 'node:path';
import { sendContent, sendJson } from './answers.js';
import { findFile, readFound } from './find-file.js';
import type { FolderChanges } from './folder-changes.js';
import type { FolderListing, ListFolder } from './folder-listing.js';
import { TABLE_LIMITS } from './limits.js';
import { parseSave } from './parse-save.js';
import { readBody } from './read-body.js';
import { TableRefusal } from './refusal.js';
import { revisionOf } from './revision.js';
import type { SavedFile, SaveWrite } from './save-files.js';

/** What the page can ask for. */
export interface TableApi {
  /** `path`: what follows "/api/". Fails with a TableRefusal, or with what saving fails with. */
  readonly answer: (request: IncomingMessage, response: ServerResponse, asked: Asked) => Promise<void>;
}

export interface Asked {
  readonly path: string;
  readonly query: URLSearchParams;
  /** Given when the table is closing. */
  readonly closing: AbortSignal;
}

export interface ApiParts {
  /** Free of links. */
  readonly folder: string;
  readonly list: ListFolder;
  readonly changes: FolderChanges;
  /** Saves one after the other. */
  readonly save: (writes: readonly SaveWrite[]) => Promise<readonly SavedFile[]>;
}

export function tableApi(parts: ApiParts): TableApi {
  let taking = 0;
  const save = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    if (taking >= TABLE_LIMITS.savesAtOnce) throw busy();
    taking += 1;
    try {
      const files = await parts.save(parseSave(await readBody(request)));
      parts.changes.touch();
      sendJson(response, 200, { files });
    } finally {
      taking -= 1;
    }
  };
  return {
    answer: async (request, response, { path, query, closing }) => {
      switch (path) {
        case 'files':
          refuseMethod(request, 'GET');
          sendJson(response, 200, listed(parts.folder, await parts.list()));
          return;
        case 'file':
          refuseMethod(request, 'GET');
          sendFile(response, parts.folder, onePath(query));
          return;
        case 'changes':
          refuseMethod(request, 'GET');
          await tellChanges(response, parts, { query, closing });
          return;
        case 'save':
          refuseMethod(request, 'POST');
          refuseOtherType(request);
          await save(request, response);
          return;
        default:
          throw new TableRefusal(404, 'no-such-address', 'There is nothing at this address of the table.');
      }
    },
  };
}

function listed(folder: string, { files, isMore, tooLarge }: FolderListing): object {
  return {
    folder: basename(folder),
    files,
    ...(isMore ? { more: true } : {}),
    ...(tooLarge.length === 0 ? {} : { tooLarge }),
  };
}

function sendFile(response: ServerResponse, folder: string, path: string): void {
  const file = findFile(folder, path);
  const bytes = file.stat === undefined ? undefined : readFound(file);
  if (bytes === undefined)
    throw new TableRefusal(404, 'no-such-file', 'There is no such file in the folder.');
  sendContent(response, bytes, revisionOf(bytes));
}

function onePath(query: URLSearchParams): string {
  const paths = query.getAll('path');
  if (paths.length !== 1) throw new TableRefusal(400, 'bad-request', 'Ask for one path.');
  return paths[0]!;
}

async function tellChanges(
  response: ServerResponse,
  { folder, changes }: ApiParts,
  { query, closing }: Pick<Asked, 'query' | 'closing'>,
): Promise<void> {
  const gone = new AbortController();
  const end = (): void => gone.abort();
  response.on('close', end);
  closing.addEventListener('abort', end);
  try {
    const listing = await changes.after(query.get('after') ?? '', gone.signal);
    if (!response.destroyed) sendJson(response, 200, { stamp: listing.stamp, ...listed(folder, listing) });
  } finally {
    closing.removeEventListener('abort', end);
  }
}

function refuseMethod({ method }: IncomingMessage, right: string): void {
  if (method === right) return;
  throw new TableRefusal(405, 'wrong-method', `This address is asked with ${right}.`, { allow: right });
}

/** A page of another origin can send other types without asking first (Fetch standard, CORS-safelisted request headers). */
function refuseOtherType({ headers }: IncomingMessage): void {
  if (/^application\/json\s*(;|$)/i.test(headers['content-type'] ?? '')) return;
  throw new TableRefusal(415, 'wrong-type', 'A save is sent as application/json.');
}

function busy(): TableRefusal {
  return new TableRefusal(503, 'busy', 'The table is busy; ask again in a moment.');
}
