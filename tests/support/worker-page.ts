import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';

/** A bare page and, as `/worker.js`, the script of a worker, served on loopback. */
export interface WorkerPage {
  readonly url: string;
  close(): void;
}

export async function serveWorkerPage(workerFile: string): Promise<WorkerPage> {
  const server: Server = createServer((request, response) => {
    const isWorker = request.url === '/worker.js';
    response.setHeader('Content-Type', isWorker ? 'text/javascript' : 'text/html');
    response.end(isWorker ? readFileSync(workerFile) : '<!doctype html><title>job</title>');
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    close: () => void server.close(),
  };
}
