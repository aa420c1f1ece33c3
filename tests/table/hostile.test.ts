import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect } from 'vitest';
import { launchChromium } from '../support/chromium.js';
import { testWith } from '../tools/outside.js';
import { filesIn } from './support/parse-folder.js';
import { startTable, TABLE, unpackDemo } from './support/real-table.js';
import type { RealTable } from './support/real-table.js';
import { watchPage } from './support/watch-page.js';

describe('the real table among strangers', () => {
  const folder = mkdtempSync(join(tmpdir(), 'hidebound-hostile-'));
  let table: RealTable;
  let browser: Browser;

  beforeAll(async () => {
    if (!TABLE.isThere) return;
    unpackDemo(folder);
    [table, browser] = await Promise.all([startTable(folder), launchChromium()]);
  });
  afterAll(async () => {
    await browser?.close();
    await table?.kill();
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  });

  const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

  testWith(
    TABLE,
    'when all five places are gone through, nothing is refused by the content policy, and nothing is asked of others',
    async () => {
      const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, locale: 'en-GB' });
      const faults = watchPage(page, table.url);
      await page.addInitScript(() => {
        addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI }) => {
          console.error(`refused by the content policy: ${violatedDirective} ${blockedURI}`);
        });
      });
      await page.goto(table.address);
      const card = page.getByRole('region', { name: 'Card' });

      await button(page, 'Flaws').click();
      await card.getByText('Tap to set a spot').waitFor();
      await button(page, 'Pieces').click();
      await page.getByRole('button', { name: /^gusset/ }).waitFor();
      await button(page, 'Lay').click();
      await card.getByText('Proven: every piece lies within its rules.').waitFor();
      await button(page, 'Make').click();
      await card.getByText('The layout of each hide on a page, with its figures.').click();
      await page
        .getByRole('img', { name: /^Cutting sheets:/ })
        .first()
        .waitFor();
      await button(page, 'At the bench').click();
      await page
        .getByText(/^0 of 110 cut/)
        .first()
        .waitFor();
      expect(faults).toEqual({ errors: [], strangers: [], dialogs: [] });

      await page.close();
    },
  );

  // Fetch (WHATWG; from memory): a page of another origin may send simple requests, and read nothing without leave.
  testWith(
    TABLE,
    'when a page of another origin asks the table, with the key or without, it reads nothing and changes nothing',
    async () => {
      const stranger = createServer((_, response) => {
        response.setHeader('Content-Type', 'text/html');
        response.end('<!doctype html><title>stranger</title>');
      });
      await new Promise<void>((done) => stranger.listen(0, '127.0.0.1', done));
      try {
        const before = filesIn(folder);
        const page = await browser.newPage();
        await page.goto(`http://127.0.0.1:${(stranger.address() as AddressInfo).port}/`);
        const key = /#key=(.+)$/.exec(table.address)![1]!;
        const writes = JSON.stringify({ writes: [{ path: 'stranger.svg', base: null, text: 'x' }] });
        const answers = await page.evaluate(askAsStranger, [table.url, key, writes] as const);
        expect(answers).toEqual(['refused', 'refused', 'refused', 'refused', 'no frame']);
        expect(filesIn(folder)).toEqual(before);
        await page.close();
      } finally {
        stranger.closeAllConnections();
        stranger.close();
      }
    },
  );
});

/** Runs in the stranger's page. */
async function askAsStranger([table, key, writes]: readonly [string, string, string]): Promise<string[]> {
  const ask = async (path: string, init: RequestInit): Promise<string> => {
    try {
      const { type, status } = await fetch(table + path, init);
      return type === 'opaque' ? type : String(status);
    } catch {
      return 'refused';
    }
  };
  const headers = { 'X-Hidebound-Key': key };
  const answers = [
    await ask('api/files', { headers }),
    await ask('api/save', { method: 'POST', headers, body: writes }),
    await ask('api/files', { mode: 'no-cors' }),
    await ask('api/save', { mode: 'no-cors', method: 'POST', body: writes }),
  ];
  const frame = document.createElement('iframe');
  frame.src = `${table}#key=${key}`;
  const loaded = new Promise((done) => frame.addEventListener('load', done));
  document.body.append(frame);
  await loaded;
  // A frame that was refused is of nobody's origin; nothing of it can be read either way.
  let words: string | undefined;
  try {
    words = frame.contentDocument?.body.innerText;
  } catch {
    words = undefined;
  }
  return [...answers, words === undefined || words === '' ? 'no frame' : words];
}
