import type { IncomingMessage, ServerResponse } from 'node:http';
import { CliError } from '../cli-error.js';
import { systemCode } from '../io/system-words.js';
import type { AppFile } from './built-app.js';
import { TableRefusal } from './refusal.js';
import { appHeaders, dataHeaders } from './safe-headers.js';

const ONE_YEAR = 'max-age=31536000, immutable';

export function sendJson(
  response: ServerResponse,
  status: number,
  value: unknown,
  more: Readonly<Record<string, string>> = {},
): void {
  const bytes = Buffer.from(JSON.stringify(value));
  response.writeHead(status, {
    ...dataHeaders(),
    'Content-Type': 'application/json; charset=utf-8',
    'Content-Length': String(bytes.length),
    ...more,
  });
  response.end(bytes);
}

/** The content of a file of the folder: never as what it is, so that no browser shows it. */
export function sendContent(response: ServerResponse, bytes: Uint8Array, revision: string): void {
  response.writeHead(200, {
    ...dataHeaders(),
    'Content-Type': 'application/octet-stream',
    'Content-Length': String(bytes.length),
    ETag: `"${revision}"`,
  });
  response.end(bytes);
}

export async function sendAppFile(
  request: IncomingMessage,
  response: ServerResponse,
  path: string,
  file: AppFile,
): Promise<void> {
  const headers = {
    ...appHeaders(path),
    'Content-Type': file.type,
    'Cache-Control': file.isHashed ? ONE_YEAR : 'no-cache',
    ETag: file.etag,
    ...(file.packed === undefined ? {} : { Vary: 'Accept-Encoding' }),
  };
  if (request.headers['if-none-match'] === file.etag) {
    response.writeHead(304, headers).end();
    return;
  }
  const isPacked = file.packed !== undefined && takesGzip(request.headers['accept-encoding']);
  const bytes = isPacked ? await file.packed() : file.bytes;
  response.writeHead(200, {
    ...headers,
    ...(isPacked ? { 'Content-Encoding': 'gzip' } : {}),
    'Content-Length': String(bytes.length),
  });
  response.end(request.method === 'HEAD' ? undefined : bytes);
}

function takesGzip(accepted: string | string[] | undefined): boolean {
  return [accepted ?? '']
    .flat()
    .some((each) => /(^|[,\s])gzip\s*(,|$|;\s*q=(?!0(\.0*)?\s*(,|$)))/i.test(each));
}

/** Systems that say so have no room, or let nobody write there. */
const NO_ROOM = new Set(['ENOSPC', 'EDQUOT', 'EROFS', 'EACCES', 'EPERM', 'EFBIG']);

/** Whatever was thrown, as what is answered. `tell` hears of what should not have happened. */
export function refusalOf(error: unknown, tell: (error: unknown) => void): TableRefusal {
  if (error instanceof TableRefusal) return error;
  if (error instanceof CliError && error.code === 'can-not-write') {
    const isNoRoom = NO_ROOM.has(systemCode(error.cause) ?? '') || error.cause === undefined;
    // Without a cause: another program holds the files, or a link stands in the way. The same may do later.
    return new TableRefusal(isNoRoom ? 507 : 503, 'can-not-write', error.message);
  }
  tell(error);
  const sentence =
    'This should not have happened at the table; the terminal in which it was opened says more.';
  return new TableRefusal(500, 'internal', sentence);
}

/** Connections whose request was not taken to its end are closed: what else comes there is not looked at. */
export function sendRefusal(request: IncomingMessage, response: ServerResponse, refusal: TableRefusal): void {
  if (response.headersSent || response.destroyed) {
    response.destroy();
    return;
  }
  const { status, code, message, data } = refusal;
  sendJson(
    response,
    status,
    { code, sentence: message, ...data },
    {
      ...(request.complete ? {} : { Connection: 'close' }),
      ...(status === 405 ? { Allow: String(data['allow']) } : {}),
    },
  );
}
