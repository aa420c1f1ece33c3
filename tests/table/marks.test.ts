import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect } from 'vitest';
import { chromiumProgram, launchChromium } from '../support/chromium.js';
import { testWith } from '../tools/outside.js';
import { staticHost } from './support/static-host.js';
import type { StaticHost } from './support/static-host.js';

let host: StaticHost;
let browser: Browser;

beforeAll(async () => {
  if (!chromiumProgram.isThere) return;
  host = await staticHost();
  browser = await launchChromium();
});
afterAll(async () => {
  await browser?.close();
  await host?.close();
});

/** A place of the drawing by shares of its width and height. */
async function placesOf(page: Page): Promise<(x: number, y: number) => [number, number]> {
  const box = (await page.locator('.stage').boundingBox())!;
  return (x, y) => [box.x + box.width * x, box.y + box.height * y];
}

async function drag(page: Page, places: readonly (readonly [number, number])[]): Promise<void> {
  const [first, ...others] = places;
  await page.mouse.move(...(first as [number, number]));
  await page.mouse.down();
  for (const place of others) await page.mouse.move(...(place as [number, number]), { steps: 4 });
  await page.mouse.up();
}

async function marked(page: Page): Promise<number> {
  return page.locator('[data-kind=flaw]:not(.core)').count();
}

/** Waits for the label of the step that could be taken back. */
async function undoSays(page: Page, words: string): Promise<void> {
  await page.locator(`header button[title="Undo: ${words}"]`).waitFor();
}

describe('marking the demo hide in real Chromium', () => {
  testWith(
    chromiumProgram,
    'when a hide is marked by pointer, each stroke is one change, and 25 flaws take 25 strokes',
    async () => {
      const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, locale: 'en-GB' });
      await page.goto(host.url);
      const tool = async (name: string): Promise<void> =>
        page.getByRole('button', { name, exact: true }).click();
      await tool('Flaws');
      const at = await placesOf(page);
      const before = await marked(page);
      for (let i = 0; i < 25; i++) await page.mouse.click(...at(0.25 + 0.02 * i, 0.365));
      await expect.poll(() => marked(page)).toBe(before + 25);
      await undoSays(page, 'flaw marked');
      await tool('Along it');
      await drag(page, [at(0.3, 0.55), at(0.35, 0.6), at(0.4, 0.6)]);
      await tool('Around it');
      await drag(page, [at(0.5, 0.5), at(0.54, 0.5), at(0.54, 0.55), at(0.5, 0.55)]);
      await expect.poll(() => marked(page)).toBe(before + 27);
      await tool('Only where hidden');
      await undoSays(page, 'what may lie on a flaw');

      await tool('Zones');
      await tool('Paint');
      await drag(page, [at(0.3, 0.4), at(0.4, 0.4)]);
      await undoSays(page, 'zone painted');

      await tool('Backbone');
      await tool('Stretches least');
      await drag(page, [at(0.3, 0.5), at(0.45, 0.5)]);
      await undoSays(page, 'direction drawn');

      await tool('Thickness');
      await page.mouse.click(...at(0.2, 0.5));
      // The field that the tap asks for has the focus by itself.
      await page.locator('#thickness-here:focus').waitFor();
      await page.keyboard.type('2.4');
      await page.keyboard.press('Enter');
      await undoSays(page, 'thickness noted');

      // All of it is taken back, step by step: 25 spots, two strokes, a choice, a zone, a direction and a thickness.
      const undo = page.locator('header button', { hasText: 'Undo' });
      for (let step = 0; step < 31; step++) await undo.click();
      await expect.poll(() => undo.isDisabled()).toBe(true);
      await expect.poll(() => marked(page)).toBe(before);
      await page.close();
    },
  );

  testWith(chromiumProgram, 'when only keys are used, a flaw is set, changed and taken away', async () => {
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, locale: 'en-GB' });
    await page.goto(host.url);
    await page.locator('.marks').waitFor();
    const before = await marked(page);
    await page.locator('.stage').focus();
    await page.keyboard.press('f');
    await page.keyboard.press('Enter');
    await expect.poll(() => marked(page)).toBe(before + 1);
    // Space takes hold of free leather, the arrows draw from the middle to the rim, Space lets go.
    for (let i = 0; i < 6; i++) await page.keyboard.press('ArrowLeft');
    await page.keyboard.press(' ');
    for (let i = 0; i < 2; i++) await page.keyboard.press('ArrowDown');
    await page.keyboard.press(' ');
    await expect.poll(() => marked(page)).toBe(before + 2);
    await page.keyboard.press('Delete');
    await expect.poll(() => marked(page)).toBe(before + 1);
    await undoSays(page, 'flaw taken away');
    await page.keyboard.press('Control+z');
    await expect.poll(() => marked(page)).toBe(before + 2);
    await page.close();
  });
});
