import { createServer } from 'node:http';
import type { IncomingMessage, Server, ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { refusalOf, sendAppFile, sendRefusal } from './answers.js';
import type { BuiltApp } from './built-app.js';
import { watchFolder } from './folder-changes.js';
import { folderLister } from './folder-listing.js';
import { TABLE_LIMITS, TABLE_TIMES } from './limits.js';
import { TableRefusal } from './refusal.js';
import { refuseForeign, refuseKeyless } from './request-checks.js';
import { saveFiles } from './save-files.js';
import type { SavedFile, SaveWrite } from './save-files.js';
import { tableApi } from './table-api.js';
import type { TableApi } from './table-api.js';
import { HOST, listenOn } from './table-port.js';

export interface TableSetup {
  /** Free of links. */
  readonly folder: string;
  readonly key: string;
  readonly app: BuiltApp;
  /** Ports to be tried, in this order; 0 is any free one. */
  readonly ports: readonly number[];
  /** Hears of what should not have happened. */
  readonly tell: (error: unknown) => void;
}

export interface OpenTable {
  readonly port: number;
  /** With the key in it, behind "#": no server and no log ever sees that part. */
  readonly address: string;
  /** Takes no more, finishes what is under way, and ends. */
  readonly close: () => Promise<void>;
}

/** Longer than any line and headers that a browser sends to this table. */
const MOST_HEADER_BYTES = 16_384;
const MOST_CONNECTIONS = 200;

/** Serves the app and the files of one folder to the browsers of this computer. Fails with a CliError. */
export async function openTable(setup: TableSetup): Promise<OpenTable> {
  const { folder, key } = setup;
  const list = folderLister(folder);
  const changes = watchFolder(list);
  const saving = savesInTurn(folder);
  const api = tableApi({ folder, list, changes, save: saving.save });
  const closing = new AbortController();
  const server = createServer({
    maxHeaderSize: MOST_HEADER_BYTES,
    headersTimeout: TABLE_TIMES.headers,
    requestTimeout: TABLE_TIMES.request,
    connectionsCheckingInterval: TABLE_TIMES.headers / 2,
  });
  server.maxConnections = MOST_CONNECTIONS;
  await listenOn(server, setup.ports);
  const { port } = server.address() as AddressInfo;
  answerAll(server, { ...setup, port, api, closing: closing.signal });
  const close = async (): Promise<void> => {
    const closed = new Promise<void>((resolve) => server.close(() => resolve()));
    closing.abort();
    changes.close();
    await saving.isIdle();
    server.closeIdleConnections();
    const last = setTimeout(() => server.closeAllConnections(), LAST_ANSWERS_MS);
    await closed;
    clearTimeout(last);
  };
  return { port, address: `http://${HOST}:${port}/#key=${key}`, close };
}

/** Answers that are on their way when the table is closed are let through. */
const LAST_ANSWERS_MS = 500;

interface Serving extends TableSetup {
  readonly port: number;
  readonly api: TableApi;
  readonly closing: AbortSignal;
}

function answerAll(server: Server, serving: Serving): void {
  let underWay = 0;
  server.on('request', (request: IncomingMessage, response: ServerResponse) => {
    underWay += 1;
    response.on('close', () => (underWay -= 1));
    const isFull = underWay > TABLE_LIMITS.requests;
    answer(request, response, { ...serving, isFull }).catch((error: unknown) => {
      sendRefusal(request, response, refusalOf(error, serving.tell));
    });
  });
  // Bytes that are no request of HTTP: a short answer, and the end.
  server.on('clientError', (_, socket) => {
    if (socket.writable)
      socket.end('HTTP/1.1 400 Bad Request\r\nConnection: close\r\nContent-Length: 0\r\n\r\n');
    else socket.destroy();
  });
}

async function answer(
  request: IncomingMessage,
  response: ServerResponse,
  { port, key, app, api, closing, isFull }: Serving & { readonly isFull: boolean },
): Promise<void> {
  refuseForeign(request.headers, port);
  if (isFull || closing.aborted) {
    throw new TableRefusal(503, 'busy', 'The table is busy or closing; ask again in a moment.');
  }
  const [path = '', ...rest] = (request.url ?? '').split('?');
  if (path.startsWith('/api/')) {
    refuseKeyless(request.headers, key);
    const query = new URLSearchParams(rest.join('?'));
    await api.answer(request, response, { path: path.slice('/api/'.length), query, closing });
    return;
  }
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    throw new TableRefusal(405, 'wrong-method', 'This address is asked with GET.', { allow: 'GET, HEAD' });
  }
  // The whole of what is served, by name: nothing of a request ever becomes a part of a path on the disk.
  const file = app.get(path);
  if (file === undefined) throw new TableRefusal(404, 'no-such-address', 'There is nothing at this address.');
  await sendAppFile(request, response, path, file);
}

/** One save after the other. */
function savesInTurn(folder: string) {
  const keptOfToday = new Set<string>();
  let last: Promise<unknown> = Promise.resolve();
  const save = (writes: readonly SaveWrite[]): Promise<readonly SavedFile[]> => {
    const next = last.then(() => saveFiles(folder, writes, { now: new Date(), keptOfToday }));
    last = next.catch(() => undefined);
    return next;
  };
  return { save, isIdle: async () => void (await last) };
}
