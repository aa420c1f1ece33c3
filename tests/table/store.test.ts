import { createRandom } from '@hidebound/geometry';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect } from 'vitest';
import { chromiumProgram, launchChromium } from '../support/chromium.js';
import { testWith } from '../tools/outside.js';
import type {} from './store-page/page.js';
import { ownBrowser, storeHost } from './store-page/serve.js';
import type { StoreHost } from './store-page/serve.js';

const HIDE = 'side.hide.json';

let host: StoreHost;

beforeAll(async () => {
  if (chromiumProgram.isThere) host = await storeHost();
});
afterAll(() => host?.close());

describe('jobs in the storage of real Chromium', () => {
  let browser: Browser;
  let context: BrowserContext;

  beforeAll(async () => {
    if (chromiumProgram.isThere) browser = await launchChromium();
  });
  afterAll(() => browser?.close());
  beforeEach(async () => {
    context = await browser.newContext();
  });
  afterEach(() => context?.close());

  async function tab(): Promise<Page> {
    const page = await context.newPage();
    await page.goto(host.url);
    return page;
  }
  async function jobWith(page: Page, files: Record<string, string>): Promise<number> {
    return page.evaluate((given) => window.storePage.create(given), files);
  }

  // Indexed Database API 3.0 (W3C; from memory): readwrite transactions whose scopes overlap run one after the other.
  testWith(
    chromiumProgram,
    'when two tabs save from the same revision at once, one is refused whole',
    async () => {
      const [one, other] = [await tab(), await tab()];
      const job = await jobWith(one, { a: '1', b: '1' });
      const base = (await one.evaluate((id) => window.storePage.revision(id, 'a'), job))!;
      const save = (page: Page, text: string) =>
        page.evaluate(
          ([id, revision, content]) =>
            window.storePage.save(id, [
              { path: 'a', base: revision, text: content },
              { path: content, base: null, text: content },
            ]),
          [job, base, text] as const,
        );
      const outcomes = await Promise.all([save(one, 'x'), save(other, 'y')]);
      expect(outcomes.map(({ kind }) => kind).sort()).toEqual(['conflict', 'saved']);
      const winner = outcomes[0].kind === 'saved' ? 'x' : 'y';
      const stored = await one.evaluate((id) => window.storePage.stored(id), job);
      expect(stored).toEqual({ a: winner, b: '1', [winner]: winner });
      expect(await one.evaluate((id) => window.storePage.before(id, 'a'), job)).toBe('1');
    },
  );

  testWith(chromiumProgram, 'when two tabs start for the first time, there is one job', async () => {
    const pages = [await tab(), await tab()];
    await Promise.all(pages.map((page) => page.evaluate(() => window.storePage.first({ a: '1' }))));
    expect(await pages[0]!.evaluate(() => window.storePage.names())).toEqual(['Satchel']);
  });

  testWith(
    chromiumProgram,
    'when a job is put into the bin, it can be fetched back, until it is thrown away',
    async () => {
      const page = await tab();
      const job = await jobWith(page, { a: '1' });
      const second = await jobWith(page, { a: '2' });
      expect(await page.evaluate(() => window.storePage.names())).toEqual(['Satchel', 'Satchel 2']);
      expect(await page.evaluate((id) => window.storePage.rename(id, 'Satchel'), second)).toBe('Satchel 2');
      // Not in the bin: nothing happens.
      await page.evaluate((id) => window.storePage.throwAway(id), job);
      await page.evaluate((id) => window.storePage.bin(id), job);
      expect(await page.evaluate(() => window.storePage.names())).toEqual(['Satchel 2']);
      expect(await page.evaluate(() => window.storePage.binned())).toEqual(['Satchel']);
      await page.evaluate((id) => window.storePage.fetchBack(id), job);
      expect(await page.evaluate((id) => window.storePage.stored(id), job)).toEqual({ a: '1' });
      await page.evaluate((id) => window.storePage.bin(id), job);
      await page.evaluate((id) => window.storePage.throwAway(id), job);
      expect(await page.evaluate(() => window.storePage.binned())).toEqual([]);
      expect(await page.evaluate((id) => window.storePage.stored(id), second)).toEqual({ a: '2' });
    },
  );

  // Web Locks API (W3C; from memory), "steal": the holder's lock is released and its request is rejected.
  testWith(
    chromiumProgram,
    'when two tabs have one job, one holds the pen, the other sees, takes it, gives it back',
    async () => {
      const [one, other] = [await tab(), await tab()];
      const job = await jobWith(one, { [HIDE]: '1' });
      await one.evaluate((id) => window.storePage.open(id), job);
      await one.waitForFunction(() => window.storePage.penHeld());
      await other.evaluate((id) => window.storePage.open(id), job);
      expect(await other.evaluate(() => window.storePage.penHeld())).toBe(false);
      expect(await one.evaluate((path) => window.storePage.change(path, '2'), HIDE)).toEqual({
        kind: 'saved',
      });
      await other.waitForFunction((path) => window.storePage.texts()[path] === '2', HIDE);
      await other.evaluate(() => window.storePage.takePen());
      await other.waitForFunction(() => window.storePage.penHeld());
      await one.waitForFunction(() => !window.storePage.penHeld());
      await other.close();
      await one.waitForFunction(() => window.storePage.penHeld());
    },
  );

  testWith(
    chromiumProgram,
    'when a tab is closed between journal and store, the next one has its change; a living tab keeps its own',
    async () => {
      const [one, other] = [await tab(), await tab()];
      const job = await jobWith(one, { [HIDE]: '1' });
      const base = (await one.evaluate(([id, path]) => window.storePage.revision(id, path), [
        job,
        HIDE,
      ] as const))!;
      const left = [job, HIDE, 'unsaved', base] as const;
      await one.evaluate((given) => window.storePage.leaveInJournal(...given), left);
      expect(await other.evaluate((id) => window.storePage.open(id), job)).toEqual({ [HIDE]: '1' });
      await one.close();
      const third = await tab();
      expect(await third.evaluate((id) => window.storePage.open(id), job)).toEqual({ [HIDE]: 'unsaved' });
      await third.evaluate(() => window.storePage.idle());
      expect(await third.evaluate((id) => window.storePage.stored(id), job)).toEqual({ [HIDE]: 'unsaved' });
      await other.waitForFunction((path) => window.storePage.texts()[path] === 'unsaved', HIDE);
      expect(await third.evaluate(() => window.storePage.waiting())).toBe(0);
    },
  );
});

describe('the browser is killed', () => {
  const KILLS = 2;
  // Indexed Database API 3.0 (W3C; from memory): a strict transaction is complete only once it is on the disk.
  testWith(
    chromiumProgram,
    'when it is killed at a moment of chance while a file is changed again and again, nothing that was kept is lost',
    async () => {
      const profile = mkdtempSync(join(tmpdir(), 'hidebound-profile-'));
      const random = createRandom(8);
      let job: number | undefined;
      let least = 0;
      try {
        for (let kill = 0; kill <= KILLS; kill++) {
          const browser = await ownBrowser(profile);
          try {
            const page = await browser.newPage(host.url);
            job ??= await page.evaluate((path) => window.storePage.create({ [path]: '0' }), HIDE);
            const texts = await page.evaluate((id) => window.storePage.open(id), job);
            const found = Number(texts[HIDE]);
            expect(found, `after kill ${kill}`).toBeGreaterThanOrEqual(least);
            expect(Object.keys(texts), `after kill ${kill}`).toEqual([HIDE]);
            await page.evaluate(([path, from]) => window.storePage.count(path, from), [HIDE, found] as const);
            await page.waitForFunction(([from, more]) => window.storePage.kept() > from + more, [
              found,
              random.integer(40),
            ] as const);
            least = await page.evaluate(() => window.storePage.kept());
          } finally {
            await browser.kill();
          }
        }
        expect(least).toBeGreaterThan(KILLS);
      } finally {
        rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
      }
    },
  );
});
