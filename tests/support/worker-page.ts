import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { bundle, chromiumProgram, launchChromium } from './chromium.js';

/** A bare page in Chromium, served on loopback, and a folder for what a test bundles or draws. */
export interface WorkerPage {
  readonly folder: string;
  /** Of the page; `/worker.js` beside it is the worker's script. There once the tests begin. */
  readonly url: () => string;
  readonly browser: () => Browser;
}

/** Bundles a worker and serves it before the tests of a suite, where Chromium is there; takes all away after them. */
export function workerPage(workerEntry: string): WorkerPage {
  const folder = mkdtempSync(join(tmpdir(), 'hidebound-browser-'));
  const script = join(folder, 'worker.js');
  const server = createServer((request, response) => {
    const isWorker = request.url === '/worker.js';
    response.setHeader('Content-Type', isWorker ? 'text/javascript' : 'text/html');
    response.end(isWorker ? readFileSync(script) : '<!doctype html><title>job</title>');
  });
  let browser: Browser | undefined;

  beforeAll(async () => {
    if (!chromiumProgram.isThere) return;
    await bundle({ entry: workerEntry, format: 'iife', outfile: script });
    await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
    browser = await launchChromium();
  });

  afterAll(async () => {
    await browser?.close();
    server.close();
    rmSync(folder, { recursive: true, force: true });
  });

  return {
    folder,
    url: () => `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    browser: () => browser!,
  };
}
