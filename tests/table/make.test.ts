import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect } from 'vitest';
import { hidebound } from '../cli-support.js';
import { chromiumProgram, launchChromium } from '../support/chromium.js';
import { testWith } from '../tools/outside.js';
import { staticHost } from './support/static-host.js';
import type { StaticHost } from './support/static-host.js';

let host: StaticHost;
let browser: Browser;
const folder = mkdtempSync(join(tmpdir(), 'hidebound-make-'));
const layout = join(folder, 'bicycle-goods.layout.json');

beforeAll(async () => {
  cpSync(join(import.meta.dirname, '../../fixtures/demo'), folder, { recursive: true });
  if (!chromiumProgram.isThere) return;
  host = await staticHost();
  browser = await launchChromium();
});
afterAll(async () => {
  await browser?.close();
  await host?.close();
  rmSync(folder, { recursive: true, force: true });
});

const REFERENCE = ['markers', '--sheets', '1-4', '--paper', 'Letter', '--pdf'] as const;

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true });

async function openSheet(page: Page, name: string): Promise<void> {
  if (await button(page, 'All sheets').isVisible()) await button(page, 'All sheets').click();
  await page.locator('.make-entry', { hasText: name }).first().click();
  await page.locator('.make-page img').waitFor({ timeout: 60_000 });
  // Who works by keys or by ear is led to what came (WCAG 2.2, 2.4.3).
  expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('H2');
}

async function saved(page: Page, name: string | RegExp): Promise<Buffer> {
  const [file] = await Promise.all([page.waitForEvent('download'), button(page, name).click()]);
  return readFileSync(await file.path());
}

function madeByCommand(name: string, ...args: readonly string[]): Buffer {
  const file = join(folder, name);
  const { status, stderr } = hidebound([...args, file]);
  expect([status, stderr]).toEqual([0, '']);
  return readFileSync(file);
}

describe('making sheets in the app', () => {
  testWith(
    chromiumProgram,
    'when sheets are saved, they are what the commands write, byte for byte, and printing warns of scaling first',
    async () => {
      // The app chooses Letter where people measure in inches.
      const page = await browser.newPage({ locale: 'en-US' });
      const faults: string[] = [];
      page.on('pageerror', (error) => faults.push(error.message));
      await page.goto(host.url);
      await button(page, 'Make').click();

      await openSheet(page, 'Cutting sheets');
      const sheet = madeByCommand('sheet.pdf', 'sheet', layout, '--page', 'Letter', '--pdf');
      expect((await saved(page, 'Save PDF')).equals(sheet)).toBe(true);

      await openSheet(page, 'Templates');
      const templates = madeByCommand('t.pdf', 'template', layout, '--paper', 'Letter', '--pdf');
      expect((await saved(page, 'Save PDF')).equals(templates)).toBe(true);
      await button(page, 'Print').click();
      expect(await page.locator('.make-print').innerText()).toContain('Print at 100 %');
      expect(await page.getByRole('link', { name: 'Open to print' }).count()).toBe(0);
      await page.getByLabel('I print at 100 % and measure the bars').check();
      await page.getByRole('link', { name: 'Open to print' }).waitFor();

      await openSheet(page, 'Cut files');
      const dxf = madeByCommand('c.dxf', 'cutfile', layout, '--hide', '1', '--dxf');
      expect((await saved(page, 'Save 3 files')).equals(dxf)).toBe(true);

      const files = [
        ['Setting out', 'Save PDF', 'setout.pdf', ['setout', layout, '--page', 'Letter', '--pdf']],
        ['Piece list', 'Save table', 'list.csv', ['list', layout, '--csv']],
        ['Quote', 'Save PDF', 'quote.pdf', ['cost', layout, '--quote', '--page', 'Letter', '--pdf']],
        ['Sheets for the photo', 'Save PDF', 'marks.pdf', REFERENCE],
      ] as const;
      for (const [sheetName, save, name, command] of files) {
        await openSheet(page, sheetName);
        const made = madeByCommand(name, ...command);
        expect((await saved(page, save)).equals(made), sheetName).toBe(true);
      }
      await page.keyboard.press('Escape');
      await page.locator('.make-entry[data-sheet="reference"]:focus').waitFor();

      await openSheet(page, 'What it costs');
      const cost = madeByCommand('cost.pdf', 'cost', layout, '--page', 'Letter', '--pdf');
      expect((await saved(page, 'Save PDF')).equals(cost)).toBe(true);
      await button(page, 'In words').click();
      await page.locator('.make-text table').first().waitFor();
      expect(faults).toEqual([]);
      await page.close();
    },
  );
});
