import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, readdirSync, rmSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join, relative, resolve } from 'node:path';
import { build } from 'esbuild';
import { chromium } from 'playwright-core';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect } from 'vitest';
import { outsideProgram, testWith } from '../tools/outside.js';
import type { LayJob } from './lay-job.js';

const ROOT = resolve(import.meta.dirname, '../..');
const DEMO = join(ROOT, 'fixtures/demo');
const JOB: LayJob = { orderFile: 'bicycle-goods.order.yaml', files: textsBelow(DEMO), seed: 7, joins: 1 };

/** Chromium would otherwise ask the network for updates at every start. */
const CHROMIUM_FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

function textsBelow(folder: string): Record<string, string> {
  const texts: Record<string, string> = {};
  for (const name of readdirSync(folder, { recursive: true }) as string[]) {
    const path = join(folder, name);
    if (statSync(path).isFile())
      texts[relative(folder, path).replaceAll('\\', '/')] = readFileSync(path, 'utf8');
  }
  return texts;
}

/** One script of the built packages (`dist`), as a browser would load it. */
async function bundle(entry: string, format: 'iife' | 'esm', outfile: string): Promise<void> {
  await build({
    entryPoints: [join(import.meta.dirname, entry)],
    bundle: true,
    format,
    platform: 'browser',
    target: 'es2022',
    outfile,
    logLevel: 'silent',
  });
}

function pathOf(name: string): string {
  return execFileSync('/bin/sh', ['-c', `command -v ${name}`], { encoding: 'utf8' }).trim();
}

const program = outsideProgram('chromium', ['--version']);

describe('the demo order in Chromium and in Node', () => {
  const folder = mkdtempSync(join(tmpdir(), 'hidebound-browser-'));
  let server: Server;
  let browser: Browser;

  beforeAll(async () => {
    if (!program.isThere) return;
    await bundle('worker.ts', 'iife', join(folder, 'worker.js'));
    await bundle('lay-job.ts', 'esm', join(folder, 'lay-job.mjs'));
    server = createServer((request, response) => {
      const isWorker = request.url === '/worker.js';
      response.setHeader('Content-Type', isWorker ? 'text/javascript' : 'text/html');
      response.end(isWorker ? readFileSync(join(folder, 'worker.js')) : '<!doctype html><title>job</title>');
    });
    await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
    browser = await chromium.launch({ executablePath: pathOf(program.name), args: CHROMIUM_FLAGS });
  });

  afterAll(async () => {
    await browser?.close();
    server?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  testWith(
    program,
    'when the same job runs in a worker of the browser, the layout file has the same bytes',
    async () => {
      const page = await browser.newPage();
      await page.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
      const inBrowser = await page.evaluate(
        (job) =>
          new Promise<{ layout?: string; failure?: string }>((done) => {
            const worker = new Worker('/worker.js');
            worker.onmessage = (event) => done(event.data as { layout?: string; failure?: string });
            worker.onerror = (event) => done({ failure: event.message });
            worker.postMessage(job);
          }),
        JOB,
      );
      expect(inBrowser.failure).toBeUndefined();
      const { layJob } = (await import(join(folder, 'lay-job.mjs'))) as { layJob: (job: LayJob) => string };
      const inNode = layJob(JOB);
      expect(inBrowser.layout).toBe(inNode);
      expect(layJob(JOB)).toBe(inNode);
      expect(JSON.parse(inNode)).toMatchObject({ format: 'hidebound/layout@1', unplaced: [] });
    },
  );
});
