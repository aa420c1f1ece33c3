import type { IncomingMessage } from 'node:http';
import { TABLE_LIMITS, TABLE_TIMES } from './limits.js';
import { TableRefusal } from './refusal.js';

/**
 * The whole body of a request. One that is too long is let go by without being kept, so that its sender hears why; one
 * that is far too long is broken off.
 * Fails with a TableRefusal 400, 408 or 413.
 */
export function readBody(request: IncomingMessage): Promise<Buffer> {
  const most = TABLE_LIMITS.requestBytes;
  const farTooMuch = 2 * most;
  if (Number(request.headers['content-length'] ?? 0) > farTooMuch) return Promise.reject(tooLong());
  return new Promise((resolve, reject) => {
    let chunks: Buffer[] = [];
    let total = 0;
    const fail = (error: TableRefusal): void => {
      clearTimeout(silence);
      chunks = [];
      request.removeAllListeners('data');
      reject(error);
    };
    const silence = setTimeout(() => fail(tooSlow()), TABLE_TIMES.bodySilence);
    request.on('data', (chunk: Buffer) => {
      silence.refresh();
      total += chunk.length;
      if (total > farTooMuch) fail(tooLong());
      else if (total > most) chunks = [];
      else chunks.push(chunk);
    });
    request.on('end', () => {
      clearTimeout(silence);
      if (total > most) fail(tooLong());
      else resolve(Buffer.concat(chunks));
    });
    request.on('error', () => fail(cutOff()));
    request.on('close', () => {
      if (!request.complete) fail(cutOff());
    });
  });
}

function tooLong(): TableRefusal {
  const most = TABLE_LIMITS.requestBytes / 1e6;
  return new TableRefusal(413, 'too-large', `At most ${most} MB are taken at once; save in parts.`);
}

function tooSlow(): TableRefusal {
  return new TableRefusal(408, 'too-slow', 'The request came too slowly; send it again.');
}

function cutOff(): TableRefusal {
  return new TableRefusal(400, 'cut-off', 'The request was cut off; send it again.');
}
