import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect } from 'vitest';
import { launchChromium } from '../support/chromium.js';
import { testWith } from '../tools/outside.js';
// @ts-expect-error: plain JavaScript, run by hand too
import { DRAWN } from '../tools/program-drawings.mjs';
import { filesIn } from './support/parse-folder.js';
import { startTable, TABLE, unpackDemo } from './support/real-table.js';
import type { RealTable } from './support/real-table.js';
import { SITE } from './support/static-host.js';
import { dropFiles, watchPage } from './support/watch-page.js';
import type { DroppedFile } from './support/watch-page.js';

/** Saved by Inkscape 1; what was drawn is in program-drawings.mjs. */
const PROGRAM_SVG = new URL('../../fixtures/patterns/inkscape-mm.svg', import.meta.url);

/** What was drawn, mm. */
interface Drawn {
  readonly panel: { readonly width: number; readonly height: number };
  readonly twin: { readonly width: number; readonly height: number };
  readonly tab: { readonly radius: number; readonly length: number; readonly turnedDeg: number };
}

/**
 * Ways in which a browser runs or fetches something for an SVG that is put into a page: SVG 2 (W3C), chapters on
 * scripting, embedded content and linking; from memory.
 */
const HOSTILE = `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"
  width="100mm" height="100mm" viewBox="0 0 100 100" onload="window.ran = 'onload'">
  <script>window.ran = 'script'; alert(1)</script>
  <script href="https://stranger.invalid/a.js"/>
  <style>@import url("https://stranger.invalid/a.css"); * { fill: url("https://stranger.invalid/b.svg#a") }</style>
  <image href="https://stranger.invalid/a.png" width="9" height="9" onerror="window.ran = 'onerror'"/>
  <use xlink:href="https://stranger.invalid/c.svg#a"/>
  <animate attributeName="x" begin="0s" dur="1s" onbegin="window.ran = 'onbegin'"/>
  <a xlink:href="javascript:window.ran='link'"><text x="5" y="5">link</text></a>
  <foreignObject width="9" height="9"><body xmlns="http://www.w3.org/1999/xhtml">
    <iframe src="https://stranger.invalid/"></iframe><img src="x" onerror="window.ran = 'img'"/></body></foreignObject>
  <rect id="flap" x="10" y="10" width="60" height="40" fill="none" stroke="#000" onclick="window.ran = 'onclick'"/>
</svg>`;

const PAST_THE_LIMIT_BYTES = 65 * 1024 * 1024;
const { panel, twin, tab } = DRAWN as Drawn;

describe('the real table among strangers', () => {
  const folder = mkdtempSync(join(tmpdir(), 'hidebound-hostile-'));
  let table: RealTable;
  let browser: Browser;

  beforeAll(async () => {
    if (!TABLE.isThere) return;
    unpackDemo(folder);
    writeFileSync(join(folder, 'later.hide.json'), newerHide(folder));
    [table, browser] = await Promise.all([startTable(folder), launchChromium()]);
  });
  afterAll(async () => {
    await browser?.close();
    await table?.kill();
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  });

  testWith(
    TABLE,
    'when all five places are gone through and strange files are brought, nothing runs, nothing is fetched, each bad file has its sentence, and what was there stays',
    async () => {
      const before = contentsOf(folder);
      const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, locale: 'en-GB' });
      const faults = watchPage(page, table.url);
      await page.addInitScript(() => {
        addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI }) => {
          console.error(`refused by the content policy: ${violatedDirective} ${blockedURI}`);
        });
      });
      await page.goto(table.address);

      await walkThrough(page);
      await bringHides(page);
      await bringPatterns(page);
      await bringJobFiles(page);

      await page.getByText('Saved', { exact: true }).waitFor();
      await page.reload();
      await page.getByText('Saved', { exact: true }).waitFor();
      await button(page, 'Pieces').click();
      await page
        .getByRole('button', { name: /^(! )?flap/ })
        .first()
        .waitFor();
      expect(await page.locator('.drawing path').count()).toBeGreaterThan(0);
      const strange = 'script, image, foreignObject, iframe, use[href*=stranger], a, animate';
      expect(await page.locator('.drawing').locator(strange).count()).toBe(0);
      expect(await page.evaluate(() => (window as { ran?: string }).ran)).toBeUndefined();
      expect(faults).toEqual({ errors: [], strangers: [], dialogs: [] });

      // What she brought is kept as it is, for other programs; the app alone reads it with care.
      expect(readFileSync(join(folder, 'patterns/hostile.svg'), 'utf8')).toBe(HOSTILE);
      const after = contentsOf(folder);
      const changed = [...before].filter(([path, text]) => after.get(path) !== text).map(([path]) => path);
      expect(changed).toEqual(['bicycle-goods.order.yaml']);
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

function button(page: Page, name: string) {
  return page.getByRole('button', { name, exact: true });
}

function cardOf(page: Page) {
  return page.getByRole('region', { name: 'Card' });
}

function newerHide(folder: string): string {
  const text = readFileSync(join(folder, 'side.hide.json'), 'utf8');
  return text.replace('"hidebound/hide@1"', '"hidebound/hide@2"');
}

function contentsOf(folder: string): ReadonlyMap<string, string> {
  return new Map(filesIn(folder).map((path) => [path, readFileSync(join(folder, path), 'latin1')]));
}

async function walkThrough(page: Page): Promise<void> {
  const card = cardOf(page);
  await page
    .getByText(
      'One file could not be read and stays as it is: later.hide.json, line 2, format: The file was written by a newer Hidebound',
    )
    .waitFor();
  await button(page, 'Close').click();
  await button(page, 'Flaws').click();
  await card.getByText('Tap to set a spot').waitFor();
  await button(page, 'Flaws').click();
  await card.getByText('Tap to set a spot').waitFor({ state: 'detached' });
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
}

/** At Hide: pictures that are none, a hide of a later version, a drawing that runs things. */
async function bringHides(page: Page): Promise<void> {
  const alert = cardOf(page).getByRole('alert');
  const drop = async (file: DroppedFile, sentence: string): Promise<void> => {
    await dropFiles(page, [file]);
    await alert.getByText(sentence).waitFor();
  };
  await button(page, 'Hide').click();
  await page.locator('.marks').waitFor();
  const noPicture = 'is no photo that can be read here; choose a JPEG, PNG or WebP.';
  await drop({ name: 'photo.jpg', text: 'not a picture' }, `photo.jpg ${noPicture}`);
  await drop({ name: 'notes.txt', text: 'notes' }, `notes.txt ${noPicture}`);
  // The first bytes of a JPEG picture (JPEG, ISO/IEC 10918-1: SOI, then an APP0 marker), and nothing behind them.
  const halfJpeg = [0xff, 0xd8, 0xff, 0xe0, 0x00, 0x10, 0x4a, 0x46];
  await drop({ name: 'half.jpg', bytes: halfJpeg }, 'half.jpg is damaged or stops in the middle;');
  await drop(
    { name: 'later.hide.json', text: '{"format": "hidebound/hide@2"}' },
    'The file was written by a newer Hidebound',
  );
  await drop({ name: 'half.hide.json', text: '{"format": "hidebound/hi' }, 'The file stops in the middle');
  // Its one line that is fit for it becomes a hide; all else is left out, and told.
  await dropFiles(page, [{ name: 'hostile.svg', text: HOSTILE }]);
  await cardOf(page).getByRole('heading', { name: 'hostile', exact: true }).waitFor();
  await cardOf(page)
    .getByText('Left out, scripts are never run: 2 elements (<script> in line 3, <script> in line 4).')
    .waitFor();
}

/** At Pieces: what is no pattern, what breaks, what runs things, and what a real drawing program saved. */
async function bringPatterns(page: Page): Promise<void> {
  const card = cardOf(page);
  await button(page, 'Pieces').click();
  await page.getByRole('button', { name: /^gusset/ }).waitFor();
  await dropFiles(page, [
    { name: 'hostile.svg', text: HOSTILE },
    { name: 'empty.svg', text: '' },
    { name: 'huge.svg', sizeBytes: PAST_THE_LIMIT_BYTES },
    { name: 'notes.docx', text: 'PK' },
    { name: 'letter.odt', text: 'PK' },
    { name: 'picture.pdf', text: 'not a PDF' },
    { name: 'half.pdf', text: '%PDF-1.7\n1 0 obj\n<< /Type /Catalog' },
    { name: 'program.svg', text: readFileSync(PROGRAM_SVG, 'utf8') },
  ]);
  await page.getByText('2 files are no patterns, notes.docx among them: SVG, PDF and DXF are read').waitFor();
  await page.getByText('huge.svg has 65 MB; 64 MB is the most, so take pictures and hidden layers').waitFor();
  const section = (file: string) => card.getByRole('heading', { name: file }).locator('..');
  // Where it is, then one plain sentence that ends.
  const SENTENCE = /^patterns\/[a-z]+\.[a-z]{3}(, line 1)?: [^.]+\.$/;
  for (const file of ['empty.svg', 'picture.pdf', 'half.pdf'])
    await expect.poll(() => section(file).getByRole('alert').innerText()).toMatch(SENTENCE);
  await card.getByText('The file is empty; save the drawing again.').waitFor();

  const size = (width: number, height: number) => `${rounded(width)} mm × ${rounded(height)} mm`;
  const turn = (tab.turnedDeg * Math.PI) / 180;
  const tabWidth = tab.radius * (1 + Math.cos(turn)) + tab.length * Math.sin(turn);
  const tabHeight = tab.radius * (1 + Math.sin(turn)) + tab.length * Math.cos(turn);
  const ofProgram = section('program.svg');
  for (const [name, sizes] of [
    ['panel', size(panel.width, panel.height)],
    ['twin', size(twin.width, twin.height)],
    ['tab', size(tabWidth, tabHeight)],
  ] as const)
    await ofProgram.getByRole('listitem').filter({ hasText: name }).getByText(sizes).waitFor();

  await card.getByRole('checkbox', { name: 'flap' }).waitFor();
  await button(page, 'Take these 4 pieces').click();
  await card
    .getByRole('button', { name: /^(! )?flap/ })
    .last()
    .click();
  await card.getByText('60 mm × 40 mm, from hostile.svg').waitFor();
}

/** As the app writes lengths: to a tenth of a millimetre. */
function rounded(mm: number): number {
  return Math.round(mm * 10) / 10;
}

/** The job's sheet: what can't be read is told on the sheet itself. */
async function bringJobFiles(page: Page): Promise<void> {
  const demo = readFileSync(join(SITE, 'demo.job.json'), 'utf8');
  await page.locator('.job-name').click();
  const sheet = page.getByRole('dialog');
  const open = async (name: string, text: string, sentence: string): Promise<void> => {
    const chooser = page.waitForEvent('filechooser');
    await sheet.getByRole('button', { name: 'Open a job file' }).click();
    await (await chooser).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
    const told = sheet.getByText(sentence);
    await told.waitFor();
    // Nothing lies over it: it can be read and put away.
    await told.locator('..').getByRole('button', { name: 'Close' }).click();
    await told.waitFor({ state: 'detached' });
  };
  await open('half.job.json', demo.slice(0, 5000), 'half.job.json, line 1: The file stops in the middle');
  await open(
    'side.job.json',
    '{"format": "hidebound/hide@1"}',
    'This is a hide file, but a job file is wanted',
  );
  await open(
    'later.job.json',
    demo.replace('hidebound/job@1', 'hidebound/job@2'),
    'The file was written by a newer Hidebound (hidebound/job@2)',
  );
  await open(
    'out.job.json',
    demo.replace('"path":"side.hide.json"', '"path":"../side.hide.json"'),
    'is not a path within the bundle',
  );
  await page.keyboard.press('Escape');
}
