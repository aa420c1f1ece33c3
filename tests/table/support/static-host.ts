import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize, resolve } from 'node:path';

/** The built app. */
export const SITE = resolve(import.meta.dirname, '../../../packages/app/dist/site');

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.webmanifest': 'application/manifest+json',
  '.ttf': 'font/ttf',
};

export interface StaticHost {
  readonly url: string;
  close(): Promise<void>;
}

/** Serves the built app as a plain web host does: no headers but the type, so that no memory is shared. */
export async function staticHost(): Promise<StaticHost> {
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url!, 'http://127.0.0.1');
    const path = normalize(join(SITE, pathname === '/' ? 'index.html' : decodeURIComponent(pathname)));
    try {
      if (!path.startsWith(SITE)) throw new Error('outside');
      const content = readFileSync(path);
      response.setHeader('Content-Type', TYPES[extname(path)] ?? 'application/octet-stream');
      response.end(content);
    } catch {
      response.statusCode = 404;
      response.end();
    }
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    close: () =>
      new Promise((done) => {
        server.closeAllConnections();
        server.close(() => done());
      }),
  };
}
