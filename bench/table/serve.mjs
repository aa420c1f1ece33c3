import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, normalize } from 'node:path';

const TYPES = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.webmanifest': 'application/manifest+json',
  '.ttf': 'font/ttf',
};

/** Serves a folder on loopback, with some files in place of its own; notes what was asked for. */
export async function serve(folder, instead) {
  const served = [];
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url, 'http://127.0.0.1');
    const name = pathname === '/' ? 'index.html' : decodeURIComponent(pathname.slice(1));
    try {
      const content = instead[name] ?? readFileSync(normalize(join(folder, name)));
      served.push({ name, content });
      response.setHeader('Content-Type', TYPES[extname(name)] ?? 'application/octet-stream');
      response.end(content);
    } catch {
      response.statusCode = 404;
      response.end();
    }
  });
  await new Promise((done) => server.listen(0, '127.0.0.1', done));
  return {
    url: `http://127.0.0.1:${server.address().port}/`,
    served,
    close: () =>
      new Promise((done) => {
        server.closeAllConnections();
        server.close(done);
      }),
  };
}
