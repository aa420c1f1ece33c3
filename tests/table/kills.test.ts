import { mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createRandom } from '@hidebound/geometry';
import type { Random } from '@hidebound/geometry';
import { parseHide, parseOrder } from '@hidebound/leather';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect } from 'vitest';
import { testWith } from '../tools/outside.js';
import { ownBrowser } from './store-page/serve.js';
import type { OwnBrowser } from './store-page/serve.js';
import { filesIn, parseFolder } from './support/parse-folder.js';
import { startTable, TABLE, unpackDemo } from './support/real-table.js';
import type { RealTable } from './support/real-table.js';
import { witness } from './support/witness.js';
import type { Witnessed } from './support/witness.js';

const MOMENTS = 20;
const SEED = 20;
const HIDE = 'side.hide.json';
const ORDER = 'bicycle-goods.order.yaml';
/** A moment of chance: after up to so many taps, and up to so long on. */
const TAPS_BEFORE = 4;
const WITHIN_MS = 60;

const ENDS = ['the tab is closed', 'the browser is killed', 'the server is killed'] as const;

/** What there has to be, and what there may be at most. */
interface Account {
  /** Flaws that the screen showed as safe, or that were in the journal. */
  readonly promised: Set<string>;
  /** Sets of the first article, told to be safe. */
  promisedSets: number;
  /** How often a person tapped the hide. */
  taps: number;
  /** Sets that a person asked for. */
  askedSets: number;
}

interface Work {
  readonly page: Page;
  /** The last state that the screen told. */
  readonly state: () => string;
}

describe('the table or its page is killed', () => {
  const root = mkdtempSync(join(tmpdir(), 'hidebound-kills-'));
  const [folder, profile] = [join(root, 'goods'), join(root, 'profile')];
  let table: RealTable;
  let browser: OwnBrowser | undefined;

  beforeAll(async () => {
    if (!TABLE.isThere) return;
    mkdirSync(folder);
    unpackDemo(folder);
    table = await startTable(folder);
    browser = await ownBrowser(profile);
  });
  afterAll(async () => {
    await browser?.kill();
    await table?.kill();
    rmSync(root, { recursive: true, force: true, maxRetries: 5 });
  });

  const hideNow = () => parseHide(readFileSync(join(folder, HIDE), 'utf8'), { file: HIDE });
  const setsNow = (): number =>
    Number(parseOrder(readFileSync(join(folder, ORDER), 'utf8'), { file: ORDER }).articles[0]!.sets);

  async function open(account: Account): Promise<Work> {
    browser ??= await ownBrowser(profile);
    const page = await browser.newPage(table.address);
    await page.setViewportSize({ width: 1280, height: 800 });
    await page.getByRole('button', { name: 'Hide', exact: true }).click();
    await page.locator('[data-kind=flaw]:not(.core)').first().waitFor();
    let state = '';
    await witness(page, { hide: HIDE, order: ORDER }, (what) => {
      state = what.seen?.state ?? state;
      remember(account, what);
    });
    return { page, state: () => state };
  }

  testWith(
    TABLE,
    'when tab, browser or server end at 20 moments of chance, all that was told to be safe is there, once',
    async () => {
      const random = createRandom(SEED);
      const before = { paths: filesIn(folder), flaws: hideNow().flaws.length, sets: setsNow() };
      const account: Account = {
        promised: new Set(hideNow().flaws.map(({ id }) => id)),
        promisedSets: before.sets,
        taps: 0,
        askedSets: before.sets,
      };
      let work = await open(account);
      for (let moment = 1; moment <= MOMENTS; moment++) {
        const end = ENDS[random.integer(ENDS.length)]!;
        const isMarking = random.integer(3) > 0;
        const deeds = isMarking ? await taps(work.page, random, account) : await clicks(work.page, account);
        const [count, more] = [random.integer(TAPS_BEFORE), random.integer(WITHIN_MS)];
        for (const deed of deeds.slice(1, 1 + count)) await deed();
        let isOver = false;
        const doing = (async (): Promise<void> => {
          for (const deed of deeds.slice(1 + count)) if (!isOver) await deed();
        })().catch(() => undefined);
        await new Promise((done) => setTimeout(done, more));
        const state = work.state();

        if (end === 'the tab is closed') await work.page.close();
        else if (end === 'the browser is killed') {
          await browser!.kill();
          browser = undefined;
        } else await table.kill();
        const told = `moment ${moment}, ${isMarking ? 'marking' : 'counting'}, ${more} ms after ${count} taps: ${end} (“${state}”)`;
        parseFolder(folder);

        if (end === 'the server is killed') {
          // She goes on working; what she does then is kept in the browser.
          await doing;
          await deeds[0]!();
          await expect.poll(work.state, { timeout: 30_000, message: told }).toBe('waiting');
          if (random.integer(2) === 0) await work.page.close();
          table = await startTable(folder);
        }
        isOver = true;
        await doing;
        const [promised, promisedSets] = [account.promised.size, account.promisedSets];
        if (work.page.isClosed() || browser === undefined) work = await open(account);
        await expect.poll(work.state, { timeout: 30_000, message: told }).toBe('saved');

        const { flaws } = hideNow();
        const ids = flaws.map(({ id }) => id);
        for (const id of account.promised) expect(ids, told).toContain(id);
        expect(new Set(ids).size, told).toBe(ids.length);
        const places = flaws.map(({ shape }) => JSON.stringify(shape));
        expect(new Set(places).size, told).toBe(places.length);
        expect(ids.length, told).toBeLessThanOrEqual(before.flaws + account.taps);
        expect(setsNow(), told).toBeGreaterThanOrEqual(account.promisedSets);
        expect(setsNow(), told).toBeLessThanOrEqual(account.askedSets);
        // No version of the own work was taken for somebody else's.
        expect(filesIn(folder), told).toEqual(before.paths);
        console.log(
          `${told}; ${promised} flaws and ${promisedSets} sets were promised, ${ids.length} and ${setsNow()} are there`,
        );
      }
      expect(account.promised.size).toBeGreaterThan(before.flaws + MOMENTS / 2);
      expect(account.promisedSets).toBeGreaterThan(before.sets);
    },
  );
});

/** Takes what was seen or found into the account of what must never be lost. */
function remember(account: Account, { seen, journaled }: Witnessed): void {
  const isSafe = seen?.state === 'saved' || seen?.state === 'waiting';
  for (const id of [...(isSafe ? (seen?.flaws ?? []) : []), ...(journaled?.flaws ?? [])])
    account.promised.add(id);
  account.promisedSets = Math.max(account.promisedSets, isSafe ? (seen?.sets ?? 0) : 0, journaled?.sets ?? 0);
}

type Deed = () => Promise<void>;

/** Five to twelve taps on leather that bears no mark yet. */
async function taps(page: Page, random: Random, account: Account): Promise<readonly Deed[]> {
  await page.getByRole('button', { name: 'Hide', exact: true }).click();
  const tool = page.getByRole('button', { name: 'Flaws', exact: true });
  await tool.waitFor();
  if ((await tool.getAttribute('aria-pressed')) !== 'true') await tool.click();
  await page.getByRole('button', { name: 'Spot', exact: true }).click();
  const chances = Array.from({ length: 200 }, () => [random.next(), random.next()] as const);
  const places = await page.evaluate(freePlaces, [chances, 5 + random.integer(8)] as const);
  expect(places.length).toBeGreaterThan(1);
  return places.map(([x, y]) => async () => {
    account.taps++;
    await page.mouse.click(x, y);
  });
}

/** Runs in the page: places of the drawing where only leather lies, apart from each other. */
function freePlaces([chances, wanted]: readonly [
  readonly (readonly [number, number])[],
  number,
]): readonly (readonly [number, number])[] {
  const NEAR_PX = 9;
  const box = document.querySelector('.stage')!.getBoundingClientRect();
  const found: (readonly [number, number])[] = [];
  for (const [u, v] of chances) {
    const [x, y] = [box.x + u * box.width, box.y + v * box.height];
    const isLeather = [-NEAR_PX, 0, NEAR_PX].every((dx) =>
      [-NEAR_PX, 0, NEAR_PX].every((dy) => {
        const hit = document.elementFromPoint(x + dx, y + dy);
        return ['outline', 'zone'].includes(hit?.getAttribute('data-kind') ?? '');
      }),
    );
    const isApart = found.every(([ox, oy]) => Math.hypot(ox - x, oy - y) > 2 * NEAR_PX);
    if (isLeather && isApart && found.length < wanted) found.push([x, y]);
  }
  return found;
}

/** One set more of the first article, some times. */
async function clicks(page: Page, account: Account): Promise<readonly Deed[]> {
  await page.getByRole('button', { name: 'Pieces', exact: true }).click();
  const more = page.getByRole('button', { name: /^Sets of .*: one more$/ }).first();
  await more.waitFor();
  return Array.from({ length: 8 }, () => async () => {
    account.askedSets++;
    await more.click();
  });
}
