import { mkdtempSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { curveBox } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { parseHide, parseLayout, parseOrder } from '@hidebound/leather';
import type { Hide } from '@hidebound/leather';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect } from 'vitest';
import { judgeTrace } from '../camera/index.js';
import type { HideTruth } from '../camera/index.js';
import { DEMO, hidebound, testFolder } from '../cli-support.js';
import { launchChromium } from '../support/chromium.js';
import { poppler } from '../support/printed-sheets.js';
import { outsideProgram, testWith } from '../tools/outside.js';
import { pathBoxes } from '../tools/pdf-boxes.js';
import { darkBox, readPgm } from '../tools/pixels.js';
import { TABLE, startTable } from './support/real-table.js';
import type { RealTable } from './support/real-table.js';
import { photographSmallHide } from './support/small-hide.js';
import { keysHand, pointerHand } from './support/walk-hands.js';
import type { WalkHand } from './support/walk-hands.js';
import { watchPage } from './support/watch-page.js';

const folder = testFolder();
const PHOTO = join(folder, 'goat.jpg');
const PATTERNS = ['saddlebag-pockets.svg', 'saddlebag-gusset.svg'].map((name) =>
  join(DEMO, 'patterns', name),
);
const pdftotext = outsideProgram('pdftotext');
const needed = {
  name: `${TABLE.name}, ${poppler.name} and ${pdftotext.name}`,
  isThere: TABLE.isThere && poppler.isThere && pdftotext.isThere,
};

let browser: Browser;
let truth: HideTruth;
beforeAll(async () => {
  if (!needed.isThere) return;
  const photo = await photographSmallHide(PHOTO);
  truth = photo.truth.hides[0]!;
  browser = await launchChromium();
});
afterAll(async () => {
  await browser?.close();
});

/** What a walk has to hand: a page on an empty folder, and the hand that all of it is done by. */
interface Walk {
  readonly page: Page;
  readonly hand: WalkHand;
  readonly job: string;
}

/** The one file of a kind, as soon as it holds what is waited for. */
async function saved<T>(
  { job }: Walk,
  ending: string,
  parse: (text: string, options: { readonly file: string }) => T,
  isReady: (file: T) => boolean,
): Promise<T> {
  let found: T | undefined;
  await expect
    .poll(
      () => {
        const [name] = readdirSync(job).filter((each) => each.endsWith(ending));
        found = name === undefined ? undefined : parse(readFileSync(join(job, name), 'utf8'), { file: name });
        return found !== undefined && isReady(found);
      },
      { timeout: 30_000 },
    )
    .toBe(true);
  return found!;
}

const savedHide = (walk: Walk, isReady: (hide: Hide) => boolean) =>
  saved(walk, '.hide.json', parseHide, isReady);

const button = ({ page }: Walk, name: string | RegExp) =>
  page.getByRole('button', { name, exact: true }).first();

/** From an empty folder to the first cut. */
async function walkThrough(walk: Walk): Promise<void> {
  await bringHideIn(walk);
  await markHide(walk);
  await lookThroughDoubts(walk);
  await bringPiecesIn(walk);
  await layPieces(walk);
  await measureTemplates(walk);
  await cutFirst(walk);
  const checked = hidebound(['check', layoutName(walk)], { cwd: walk.job });
  expect(checked.status, checked.stdout + checked.stderr).toBe(0);
}

async function bringHideIn(walk: Walk): Promise<void> {
  const { page, hand } = walk;
  await hand.chooseFiles(page.getByLabel('Choose photos'), [PHOTO]);
  await hand.press(button(walk, 'Grain side'));
  await hand.press(button(walk, 'Trace the hide'));
  await page.getByText('4 printed sheets').waitFor({ timeout: 120_000 });
  await hand.press(button(walk, 'See it on the photo'));
  await page.getByRole('heading', { name: 'What was found on the photo' }).waitFor();
  await hand.press(button(walk, 'Back to the hide'));
  // The judge is the scene: where the simulated skin truly ends.
  const { medianMm, areaError, openings } = judgeTrace(await savedHide(walk, () => true), truth);
  expect(medianMm).toBeLessThan(2);
  expect(Math.abs(areaError)).toBeLessThan(0.02);
  expect(openings.found).toBe(openings.asked);
}

interface Place {
  readonly mm: Point;
  readonly px: Point;
}

/** Tells where a place of the hide's box, as shares of its sides, is on the hide, mm, and on the page, px. */
async function placesOn({ page }: Walk, hide: Hide): Promise<(x: number, y: number) => Place> {
  const outline = page.locator('.hide-outline').first();
  // It is drawn anew while it is looked for; its box stays.
  let seen = await outline.boundingBox();
  await expect.poll(async () => (seen = await outline.boundingBox()) !== null).toBe(true);
  const box = seen!;
  const { minX, minY, maxX, maxY } = curveBox(hide.outline);
  return (x, y) => ({
    mm: { x: minX + x * (maxX - minX), y: minY + y * (maxY - minY) },
    px: { x: box.x + x * box.width, y: box.y + y * box.height },
  });
}

/** The cross of the keys comes within 5 px of a place in each direction; so much leather is that on this screen. */
const NEAR_MM = 12;

function expectNear(found: Point, wished: Point): void {
  expect(Math.hypot(found.x - wished.x, found.y - wished.y)).toBeLessThan(NEAR_MM);
}

/** A flaw by a tap; the backbone found right; a stroke along which the leather stretches least. */
async function markHide(walk: Walk): Promise<void> {
  const { hand } = walk;
  const before = await savedHide(walk, () => true);
  const placeAt = await placesOn(walk, before);
  const bite = placeAt(0.4, 0.35);
  await hand.press(button(walk, 'Flaws'));
  await hand.tap(bite.px);
  await hand.press(button(walk, 'Only where hidden'));
  const marked = await savedHide(walk, ({ flaws }) => flaws.at(-1)?.effect?.isVoid === false);
  expect(marked.flaws).toHaveLength(before.flaws.length + 1);
  const { shape, effect } = marked.flaws.at(-1)!;
  expectNear(shape.kind === 'point' ? shape.at : { x: NaN, y: NaN }, bite.mm);
  expect(effect?.looks).toBe('C');

  await hand.press(button(walk, 'Backbone'));
  await hand.press(button(walk, 'It is right'));
  await savedHide(walk, ({ guessed }) => guessed?.includes('backbone') !== true);
  await hand.press(button(walk, 'Stretches least'));
  const from = placeAt(0.3, 0.6);
  const to = placeAt(0.6, 0.6);
  await hand.draw([from.px, to.px]);
  const drawn = await savedHide(walk, ({ tightness }) => tightness.length === 1);
  expectNear(drawn.tightness[0]![0]!, from.mm);
  expectNear(drawn.tightness[0]!.at(-1)!, to.mm);
  // Put away, so that the card is about the hide again.
  await hand.press(button(walk, 'Backbone'));
}

/** The first place that the photo makes doubtful is taken for a flaw, the others are not. */
async function lookThroughDoubts(walk: Walk): Promise<void> {
  const { page, hand } = walk;
  const { candidates, flaws } = await savedHide(walk, () => true);
  expect(candidates.length).toBeGreaterThan(1);
  await hand.press(button(walk, 'Look through them'));
  for (let left = candidates.length; left > 0; left--) {
    await page.getByText(left === 1 ? '1 is left.' : `${left} are left.`).waitFor();
    await hand.press(button(walk, left === candidates.length ? 'A flaw' : 'Not a flaw'));
  }
  const decided = await savedHide(walk, (hide) => hide.candidates.length === 0);
  expect(decided.flaws).toHaveLength(flaws.length + 1);
}

async function bringPiecesIn(walk: Walk): Promise<void> {
  const { page, hand } = walk;
  await hand.press(button(walk, 'Go to the pieces'));
  await hand.chooseFiles(button(walk, 'Add patterns'), PATTERNS);
  await hand.press(page.getByRole('checkbox', { name: 'flap' }));
  await hand.press(button(walk, 'Take these 2 pieces'));
  await hand.press(button(walk, /^gusset/));
  await hand.press(button(walk, 'Pieces per set: one more'));
  await hand.press(button(walk, /All pieces/));
  const { articles } = await saved(walk, '.order.yaml', parseOrder, (order) =>
    JSON.stringify(order).includes('"count":2'),
  );
  expect(articles[0]).toMatchObject({
    pieces: [
      { name: 'pocket', count: 1 },
      { name: 'gusset', count: 2 },
    ],
  });
}

async function layPieces(walk: Walk): Promise<void> {
  const { page, hand } = walk;
  await hand.press(button(walk, 'Go and lay them'));
  // So that it is surely still at it when it is stopped.
  await hand.pick(page.getByLabel('How long to look for a good layout'), 'Until I stop it');
  await hand.press(button(walk, 'Lay the pieces'));
  await page.getByText('3 of 3 pieces lie. Now they are moved closer together.').waitFor({ timeout: 60_000 });
  await hand.press(button(walk, 'Stop'));
  await page.getByText('Proven: every piece lies within its rules.').waitFor({ timeout: 60_000 });
}

/** A pixel of a print at this resolution is 0.04 mm; what falls on a part of it may darken all of it. */
const DPI = 600;

/** The templates, saved, are as large on paper as the patterns say. */
async function measureTemplates(walk: Walk): Promise<void> {
  const { page, hand, job } = walk;
  await hand.press(button(walk, 'Go to Make'));
  await hand.press(button(walk, /^Templates/));
  await page.getByRole('img', { name: /^Templates/ }).waitFor({ timeout: 60_000 });
  await hand.press(page.getByText('2 of 2 pieces'));
  await hand.press(page.getByRole('checkbox', { name: /^pocket/ }));
  await page.getByText('1 of 2 pieces').waitFor();
  const [download] = await Promise.all([page.waitForEvent('download'), hand.press(button(walk, 'Save PDF'))]);
  const pdf = join(job, '..', `${hand.name}.pdf`);
  await download.saveAs(pdf);

  // Judge: pdf.js. Two bars of 100 mm at right angles on every page, as tests/template-pages.test.ts asks of the command's.
  for (const boxes of await pathBoxes(pdf)) {
    const isBar = (long: number, short: number): boolean =>
      Math.abs(long - 100) <= 0.1 && Math.abs(short - 3) <= 0.1;
    expect(boxes.filter(({ width, height }) => isBar(width, height))).toHaveLength(1);
    expect(boxes.filter(({ width, height }) => isBar(height, width))).toHaveLength(1);
  }
  // Judge: poppler's rasteriser. By its file (M 8,0 … V 160 mm) the gusset is 160 mm long.
  expect(pdftotext.run([pdf, '-']).toString('utf8')).toMatch(/gusset[^]*page 1 of 1/);
  const target = join(job, '..', hand.name);
  poppler.run(['-r', String(DPI), '-gray', '-singlefile', pdf, target]);
  // The window of an A4 page: right of the band of 16 mm and above the one of 33 mm (docs/templates.md).
  const window = { minX: 27, minY: 10, maxX: 200, maxY: 253 };
  const piece = darkBox(readPgm(readFileSync(`${target}.pgm`)), window, DPI / 25.4);
  const long = Math.max(piece.maxX - piece.minX, piece.maxY - piece.minY);
  // Outer edges of a cut line of 0.35 mm.
  expect(Math.abs(long - 160.35)).toBeLessThanOrEqual(0.1);
}

async function cutFirst(walk: Walk): Promise<void> {
  const { page, hand } = walk;
  await hand.press(button(walk, 'All sheets'));
  await hand.press(button(walk, 'Go to the bench'));
  await page.getByText('0 of 3 cut').waitFor();
  await hand.press(button(walk, 'Cut'));
  await page.getByText('1 of 3 cut').waitFor();
  const { placements } = await saved(walk, '.layout.json', parseLayout, (layout) =>
    layout.placements.some(({ state }) => state === 'cut'),
  );
  expect(placements.map(({ state }) => state).sort()).toEqual(['cut', 'planned', 'planned']);
}

function layoutName({ job }: Walk): string {
  return readdirSync(job).find((name) => name.endsWith('.layout.json'))!;
}

/** Counts what the page got from each kind of hand; what the browser makes of a key by itself is no pointer's. */
async function countInput(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const counts = { pointer: 0, keys: 0 };
    Object.assign(window, { counts });
    addEventListener('pointerdown', () => counts.pointer++, true);
    addEventListener('keydown', () => counts.keys++, true);
  });
}

interface Counts {
  readonly pointer: number;
  readonly keys: number;
}

describe('the whole job on an empty folder, from photo to first cut', () => {
  const byHand: readonly (readonly [string, (page: Page) => WalkHand, (counts: Counts) => boolean])[] = [
    ['a mouse alone', pointerHand, ({ pointer, keys }) => pointer > 20 && keys === 0],
    ['keys alone', keysHand, ({ pointer, keys }) => keys > 100 && pointer === 0],
  ];
  for (const [words, handOf, isOnly] of byHand)
    testWith(
      needed,
      `when it is done by ${words}, the hide is traced and marked, pieces are laid and proven, the templates are true on paper, and check agrees`,
      async () => {
        const job = mkdtempSync(join(folder, 'job-'));
        let table: RealTable | undefined;
        const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, locale: 'en-GB' });
        try {
          table = await startTable(job);
          const faults = watchPage(page, table.url);
          await countInput(page);
          await page.goto(table.address);
          await page.getByText('Take a photo').waitFor();
          await walkThrough({ page, hand: handOf(page), job });
          expect(faults).toEqual({ errors: [], strangers: [], dialogs: [] });
          const counts = await page.evaluate(() => (window as unknown as { counts: Counts }).counts);
          expect(isOnly(counts), JSON.stringify(counts)).toBe(true);
        } finally {
          await page.close();
          await table?.kill();
        }
      },
    );
});
