import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import type { Browser, Page } from 'playwright-core';
import { bundle, chromiumProgram } from '../../support/chromium.js';

export interface StoreHost {
  readonly url: string;
  close(): void;
}

/** A bare page with the storage of the app alone, served on loopback. */
export async function storeHost(): Promise<StoreHost> {
  const folder = mkdtempSync(join(tmpdir(), 'hidebound-store-'));
  const script = join(folder, 'page.js');
  await bundle({
    entry: join(import.meta.dirname, 'page.ts'),
    format: 'iife',
    outfile: script,
    from: 'source',
  });
  const server = createServer((request, response) => {
    const isScript = request.url === '/page.js';
    response.setHeader('Content-Type', isScript ? 'text/javascript' : 'text/html');
    response.end(
      isScript ? readFileSync(script) : '<!doctype html><title>job</title><script src="page.js"></script>',
    );
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    close: () => {
      server.closeAllConnections();
      server.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** A browser of its own process group, so that all of it can be killed at once. */
export interface OwnBrowser {
  newPage(url: string): Promise<Page>;
  /** As a power cut does it for the program: SIGKILL to its own processes. */
  kill(): Promise<void>;
}

export async function ownBrowser(profile: string): Promise<OwnBrowser> {
  const child = spawn(
    chromiumProgram.path,
    [
      '--headless=new',
      '--no-sandbox',
      '--disable-gpu',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--remote-debugging-port=0',
      `--user-data-dir=${profile}`,
      'about:blank',
    ],
    { detached: true, stdio: ['ignore', 'ignore', 'pipe'] },
  );
  const ended = new Promise<void>((done) => child.once('exit', () => done()));
  const address = await new Promise<string>((found, failed) => {
    let said = '';
    child.stderr.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      const [, at] = /DevTools listening on (ws:\S+)/.exec(said) ?? [];
      if (at !== undefined) found(at);
    });
    child.once('exit', () => failed(new Error(`Chromium ended at once: ${said}`)));
  });
  const browser: Browser = await chromium.connectOverCDP(address);
  return {
    newPage: async (url) => {
      const page = await browser.contexts()[0]!.newPage();
      await page.goto(url);
      return page;
    },
    kill: async () => {
      process.kill(-child.pid!, 'SIGKILL');
      await ended;
      await browser.close().catch(() => undefined);
    },
  };
}
