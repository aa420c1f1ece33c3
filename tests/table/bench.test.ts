import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseHide, parseLayout } from '@hidebound/leather';
import type { Browser, CDPSession, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect } from 'vitest';
import { TOUCH_GUARD_MS } from '../../packages/app/src/stations/bench/logic/touch-guard.js';
import { hideboundHere } from '../cli-support.js';
import { launchChromium } from '../support/chromium.js';
import { testWith } from '../tools/outside.js';
import { filesIn } from './support/parse-folder.js';
import { startTable, TABLE, unpackDemo } from './support/real-table.js';
import type { RealTable } from './support/real-table.js';
import { watchPage } from './support/watch-page.js';

const LAYOUT = 'bicycle-goods.layout.json';
const ORDER = 'bicycle-goods.order.yaml';
/** CSS Values and Units (W3C): an inch is 96 px, a millimetre 1/25.4 of it. */
const PX_PER_MM = 96 / 25.4;
const LEAST_BUTTON_MM = 20;

interface WakeLocks {
  readonly asked: string[];
  released: number;
  isHidden: boolean;
}
type WatchedWindow = typeof globalThis & { wakeLocks: WakeLocks };

describe('at the bench', () => {
  const folder = mkdtempSync(join(tmpdir(), 'hidebound-bench-'));
  const layoutPath = join(folder, LAYOUT);
  let table: RealTable;
  let browser: Browser;

  beforeAll(async () => {
    if (!TABLE.isThere) return;
    unpackDemo(folder);
    // All but three small pieces are cut.
    await run(['tick', layoutPath, '--all']);
    await run(['tick', layoutPath, '--planned', '5, 8, 20']);
    [table, browser] = await Promise.all([startTable(folder), launchChromium()]);
  });
  afterAll(async () => {
    await browser?.close();
    await table?.kill();
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  });

  testWith(
    TABLE,
    'when the bench is worked at by keys alone, pieces are passed over, cut and taken back',
    async () => {
      const page = await openBench(await browser.newPage({ locale: 'en-GB' }));
      await inFront(page, '5 outer pocket');
      await page.keyboard.press('n');
      await inFront(page, '8 protector');
      // Back goes to what is done, too; next to what is not, and at the end of it to what was passed over.
      await page.keyboard.press('Shift+N');
      await inFront(page, '7 guard');
      await page.getByText('Cut already').waitFor();
      for (const name of ['8 protector', '20 pockets', '5 outer pocket']) {
        await page.keyboard.press('n');
        await inFront(page, name);
      }
      await page.keyboard.press('c');
      await counted(page, 108);
      await inFront(page, '8 protector');
      await page.keyboard.press('x');
      await page.getByText('8 protector: spoiled. Lay it again now, or go on and do it later.').waitFor();
      // At once, also while the tick is still being worked out: the last thing that was done is taken back first.
      await page.keyboard.press('Control+z');
      await counted(page, 108);
      await page.getByText('8 protector: spoiled.').waitFor({ state: 'hidden' });
      await page.keyboard.press('Control+z');
      await counted(page, 107);
      await expect.poll(() => statesOf(layoutPath)).toEqual({ cut: 107, planned: 3 });
      await page.close();
    },
  );

  testWith(
    TABLE,
    'when the last pieces are cut with a thumb, one of them spoiled and laid again, the end of the job is told and the offcuts are kept',
    async () => {
      const page = await browser.newPage({
        viewport: { width: 390, height: 780 },
        ...{ hasTouch: true, isMobile: true, deviceScaleFactor: 2, locale: 'en-GB' },
      });
      const faults = watchPage(page, table.url);
      await page.addInitScript(watchWakeLocks);
      await openBench(page);
      const thumb = await thumbOn(page);

      await largeEnough(page, ['Back', 'Spoiled', 'Next', 'Cut']);
      await staysLit(page);
      await inFront(page, '5 outer pocket');
      await measuresAreThoseOfTheDrawing(page);

      // A knuckle that comes down twice cuts one piece.
      await thumb.tapTwice('Cut');
      await counted(page, 108);
      await inFront(page, '8 protector');
      await thumb.tap('Take that back');
      await counted(page, 107);
      await inFront(page, '5 outer pocket');

      await thumb.tap('Spoiled');
      await page.getByText('5 outer pocket: spoiled.').waitFor();
      await counted(page, 107);
      await largeEnough(page, ['Back', 'A flaw is here', 'Next', 'Lay it again']);
      await thumb.tap('Lay it again');
      await page.getByText('outer pocket has a new place on').waitFor({ timeout: 90_000 });
      await page.locator('.bench-name').getByText('outer pocket').waitFor();
      await measuresAreThoseOfTheDrawing(page);
      await expect.poll(() => statesOf(layoutPath)).toEqual({ cut: 107, planned: 3, spoiled: 1 });
      expect((await hideboundHere(['check', layoutPath])).status).toBe(0);

      for (const cut of [108, 109, 110]) {
        await thumb.tap('Cut');
        await counted(page, cut);
      }
      await page.getByRole('heading', { name: 'All cut' }).waitFor();
      await page.getByText('3 offcuts are worth keeping: put them into stock.').waitFor();
      await largeEnough(page, ['Back', 'Offcuts into stock']);

      await thumb.tap('Articles');
      await articlesAsReckoned(page, folder);
      await thumb.tap('Stock');
      await page.getByText('Hide side-0231-a').waitFor();
      await page.getByLabel('Where the offcuts are put').fill('shelf 3');
      await thumb.tap('Take this layout’s leather, keep its offcuts');
      await button(page, 'Put back what was taken last').waitFor();
      const offcuts = page
        .getByRole('listitem')
        .filter({ hasText: /^\s*Offcut / })
        .filter({ hasText: 'shelf 3' });
      await expect.poll(() => offcuts.count()).toBe(3);

      await expect.poll(() => hideStates(folder)).toEqual({ 'hide cut': 3, 'offcut on hand': 3 });
      await thumb.tap('Put back what was taken last');
      await expect.poll(() => hideStates(folder)).toEqual({ 'hide on hand': 3 });
      expect(statesOf(layoutPath)).toEqual({ cut: 110, spoiled: 1 });
      const check = await hideboundHere(['check', layoutPath]);
      expect(check.status, check.stdout).toBe(0);
      expect(faults).toEqual({ errors: [], strangers: [], dialogs: [] });
      await page.close();
    },
  );

  async function openBench(page: Page): Promise<Page> {
    await page.goto(table.address);
    await page.getByRole('button', { name: 'At the bench' }).click();
    await page.locator('.bench-marks').waitFor();
    return page;
  }
});

function button(page: Page, name: string) {
  return page.getByRole('button', { name, exact: true });
}

async function run(args: readonly string[]): Promise<void> {
  const { status, stderr } = await hideboundHere(args);
  expect(status, stderr).toBe(0);
}

async function inFront(page: Page, name: string): Promise<void> {
  await expect
    .poll(async () => (await page.locator('.bench-name').innerText()).replace(/\s+/g, ' '))
    .toBe(name);
}

async function counted(page: Page, cut: number): Promise<void> {
  await page.getByText(`${cut} of 110 cut`).waitFor();
}

/** How many pieces of a layout file are in each state. */
function statesOf(path: string): Readonly<Record<string, number>> {
  const { placements } = parseLayout(readFileSync(path, 'utf8'), { file: path });
  return tally(placements.map(({ state }) => state));
}

function hideStates(folder: string): Readonly<Record<string, number>> {
  const hides = filesIn(folder)
    .filter((path) => path.endsWith('.hide.json'))
    .map((path) => parseHide(readFileSync(join(folder, path), 'utf8'), { file: path }));
  return tally(hides.map(({ cut, state }) => `${cut === 'offcut' ? 'offcut' : 'hide'} ${state}`));
}

function tally(words: readonly string[]): Readonly<Record<string, number>> {
  const counts: Record<string, number> = {};
  for (const word of words) counts[word] = (counts[word] ?? 0) + 1;
  return counts;
}

async function largeEnough(page: Page, names: readonly string[]): Promise<void> {
  for (const name of names) {
    const box = (await button(page, name).boundingBox())!;
    expect(Math.min(box.width, box.height) / PX_PER_MM, name).toBeGreaterThanOrEqual(LEAST_BUTTON_MM);
  }
}

/** In the page, before its own scripts: a screen that says what is asked of it (Screen Wake Lock API, W3C). */
function watchWakeLocks(): void {
  const wakeLocks: WakeLocks = { asked: [], released: 0, isHidden: false };
  (globalThis as WatchedWindow).wakeLocks = wakeLocks;
  Object.defineProperty(navigator, 'wakeLock', {
    value: {
      request: (kind: string) => {
        wakeLocks.asked.push(kind);
        return Promise.resolve({ release: () => Promise.resolve(void wakeLocks.released++) });
      },
    },
  });
  Object.defineProperty(document, 'visibilityState', {
    get: () => (wakeLocks.isHidden ? 'hidden' : 'visible'),
  });
}

/** The browser lets the screen go dark once the page is hidden: it is asked again when the page is back, not before. */
async function staysLit(page: Page): Promise<void> {
  const asked = () => page.evaluate(() => (globalThis as WatchedWindow).wakeLocks.asked);
  const turn = (isHidden: boolean) =>
    page.evaluate((hidden) => {
      (globalThis as WatchedWindow).wakeLocks.isHidden = hidden;
      document.dispatchEvent(new Event('visibilitychange'));
    }, isHidden);
  expect(await asked()).toEqual(['screen']);
  await turn(true);
  expect(await asked()).toEqual(['screen']);
  await turn(false);
  expect(await asked()).toEqual(['screen', 'screen']);
}

/**
 * What the card says of A and B is where they are drawn: along the line from S to E, and out at a right angle to it, to
 * half a millimetre of rounding (plane geometry).
 */
async function measuresAreThoseOfTheDrawing(page: Page): Promise<void> {
  const told = async (): Promise<readonly number[]> => {
    const cells = await page.locator('.bench-marks td').filter({ hasText: 'mm' }).allInnerTexts();
    return cells.map((text) => Number(text.replace(/,/g, '').replace(' mm', '')));
  };
  const drawn = () =>
    page.evaluate(() => {
      const numbers = (path: Element): number[] =>
        path
          .getAttribute('d')!
          .match(/-?[\d.]+/g)!
          .map(Number);
      const [sx, sy, ex, ey] = numbers(document.querySelector('.bench-line')!) as [
        number,
        number,
        number,
        number,
      ];
      const length = Math.hypot(ex - sx, ey - sy);
      const [ux, uy] = [(ex - sx) / length, (ey - sy) / length];
      const letters = [...document.querySelectorAll<SVGElement>('.bench-letter')];
      return ['A', 'B'].flatMap((name) => {
        const { x, y } = letters.find(({ textContent }) => textContent === name)!.dataset;
        const [dx, dy] = [Number(x) - sx, Number(y) - sy];
        return [dx * ux + dy * uy, Math.abs(dx * uy - dy * ux)];
      });
    });
  await expect
    .poll(async () => {
      const [words, places] = [await told(), await drawn()];
      return words.length === places.length
        ? Math.max(...words.map((mm, i) => Math.abs(mm - places[i]!)))
        : Infinity;
    })
    .toBeLessThan(0.3);
}

/** Prices are those of `hidebound cost`, and the leather of the order is told with what is there of it. */
async function articlesAsReckoned(page: Page, folder: string): Promise<void> {
  const { stdout } = await hideboundHere(['cost', join(folder, ORDER), '--json']);
  interface Money {
    readonly amount: string;
    readonly currency: string;
  }
  const { articles } = (
    JSON.parse(stdout) as {
      result: { cost: { articles: { article: string; price: { low: Money; high: Money } }[] } };
    }
  ).result.cost;
  const money = ({ amount, currency }: Money): string =>
    new Intl.NumberFormat('en-GB', { style: 'currency', currency }).format(Number(amount));
  const shown = page.locator('.bench-article');
  await expect.poll(() => shown.count()).toBe(articles.length);
  for (const { article, price } of articles)
    await shown
      .filter({ has: page.getByRole('heading', { name: article, exact: true }) })
      .getByText(`${money(price.low)} – ${money(price.high)}`)
      .waitFor();
  await page.getByRole('heading', { name: 'Leather for all of it' }).waitFor();
  for (const leather of ['body', 'straps', 'wraps'])
    await page.getByRole('heading', { name: leather, exact: true }).waitFor();
  await page.getByText('What is in stock is likely to be enough.').waitFor();
}

interface Thumb {
  tap(name: string): Promise<void>;
  /** Twice within a tenth of a second. */
  tapTwice(name: string): Promise<void>;
}

/** A thumb that is never faster on another button than people are: what comes sooner is held for the same touch. */
async function thumbOn(page: Page): Promise<Thumb> {
  const cdp = await page.context().newCDPSession(page);
  return {
    tap: async (name) => {
      await page.waitForTimeout(TOUCH_GUARD_MS);
      await button(page, name).tap();
    },
    tapTwice: async (name) => {
      await page.waitForTimeout(TOUCH_GUARD_MS);
      const box = (await button(page, name).boundingBox())!;
      const at = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
      const now = Date.now() / 1000;
      for (const timestamp of [now, now + 0.1]) await touchAt(cdp, at, timestamp);
    },
  };
}

async function touchAt(cdp: CDPSession, at: { x: number; y: number }, timestamp: number): Promise<void> {
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [at], timestamp });
  await cdp.send('Input.dispatchTouchEvent', {
    type: 'touchEnd',
    touchPoints: [],
    timestamp: timestamp + 0.02,
  });
}
