import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { parseJobBundle } from '@hidebound/leather';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect } from 'vitest';
import { hidebound } from '../cli-support.js';
import { chromiumProgram, launchChromium } from '../support/chromium.js';
import { testWith } from '../tools/outside.js';
import { staticHost } from './support/static-host.js';
import type { StaticHost } from './support/static-host.js';

let host: StaticHost;
let browser: Browser;
const folder = mkdtempSync(join(tmpdir(), 'hidebound-lay-'));

beforeAll(async () => {
  if (!chromiumProgram.isThere) return;
  host = await staticHost();
  browser = await launchChromium();
});
afterAll(async () => {
  await browser?.close();
  await host?.close();
  rmSync(folder, { recursive: true, force: true });
});

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const proven = (page: Page) => page.locator('.verdict .proven').waitFor({ timeout: 60_000 });

async function openLay(page: Page): Promise<void> {
  await page.goto(host.url);
  await button(page, 'Lay').click();
  await page.locator('.piece').first().waitFor();
  await proven(page);
}

/** The job as its one file holds it, laid out in a folder. */
async function savedFolder(page: Page): Promise<string> {
  await page.locator('.job-name').click();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the job as one file' }).click();
  const text = readFileSync(await (await download).path(), 'utf8');
  await button(page, 'Close').first().click();
  const to = mkdtempSync(join(folder, 'job-'));
  for (const { path, encoding, content } of parseJobBundle(text, { file: 'saved' }).files) {
    mkdirSync(dirname(join(to, path)), { recursive: true });
    writeFileSync(join(to, path), Buffer.from(content, encoding));
  }
  return to;
}

/** The proof is the command's, from the files alone. */
async function checkSaved(page: Page): Promise<{ readonly status: number | null; readonly stdout: string }> {
  return hidebound(['check', 'bicycle-goods.layout.json'], { cwd: await savedFolder(page) });
}

describe('laying the demo in real Chromium', () => {
  testWith(
    chromiumProgram,
    'when a piece is moved over another, left there, nailed, taken off and laid around, the check agrees each time',
    async () => {
      const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, locale: 'en-GB' });
      await openLay(page);
      const { x, y, width, height } = (await page.locator('.piece').nth(4).boundingBox())!;
      const [cx, cy] = [x + width / 2, y + height / 2];
      await page.mouse.move(cx, cy);
      await page.mouse.down();
      await page.mouse.move(cx + 24, cy + 12, { steps: 6 });
      await page.locator('.hand-slip li').first().waitFor();
      await page.mouse.up();
      await button(page, 'Leave it here all the same').click();
      await page.getByText('You let this stay all the same').waitFor();
      const accepted = await checkSaved(page);
      expect(accepted.status).toBe(0);
      expect(accepted.stdout).toContain('accepted');

      await button(page, 'Undo').click();
      await page.locator('.verdict', { hasNotText: 'You let this stay' }).waitFor();
      await proven(page);
      await button(page, 'Stay here').click();
      await page.locator('.piece.is-locked').waitFor();
      const nailed = await page.locator('.piece.is-locked').getAttribute('transform');
      await page.locator('.piece').nth(2).click();
      await button(page, 'Take off the hide').click();
      await page.getByText('One piece does not lie yet').waitFor();

      await page.getByLabel('How long').selectOption('');
      await button(page, 'Lay the rest around what stays').click();
      await page.locator('.run .curve').waitFor({ timeout: 60_000 });
      await button(page, 'Stop').click();
      await page.locator('.run-end').waitFor();
      await proven(page);
      expect(await page.locator('.piece.is-locked').getAttribute('transform')).toBe(nailed);
      await expect.poll(() => page.locator('.figures').first().innerText()).toContain('110 of 110');
      expect((await checkSaved(page)).status).toBe(0);
      await page.close();
    },
  );

  testWith(
    chromiumProgram,
    'when only keys are used, a piece is chosen, turned, put back, and taken in hand by the cross',
    async () => {
      const page = await browser.newPage({ viewport: { width: 390, height: 780 }, locale: 'en-GB' });
      await openLay(page);
      await page.keyboard.press('n');
      await page.locator('.piece.is-chosen').waitFor();
      const before = await page.locator('.piece.is-chosen').getAttribute('transform');
      await page.keyboard.press('Shift+;');
      await page.keyboard.press('.');
      await page.locator('.hand-slip li, .hand-slip .good').first().waitFor();
      expect(await page.locator('.piece.in-hand').getAttribute('transform')).not.toBe(before);
      await page.keyboard.press('Escape');
      await page.locator('.hand-slip').waitFor({ state: 'detached' });
      await expect.poll(() => page.locator('.piece.is-chosen').getAttribute('transform')).toBe(before);
      await page.keyboard.press('s');
      await page.locator('.piece.is-locked').waitFor();
      await page.keyboard.press('Control+z');
      await page.locator('.piece.is-locked').waitFor({ state: 'detached' });
      await page.keyboard.press('Delete');
      await page.getByText('One piece does not lie yet').waitFor({ state: 'attached' });
      await page.keyboard.press('Control+z');
      await page.getByText('One piece does not lie yet').waitFor({ state: 'detached' });
      await page.close();
    },
  );
});
