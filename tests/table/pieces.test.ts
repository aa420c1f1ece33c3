import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect } from 'vitest';
import type { Browser, Page } from 'playwright-core';
import { chromiumProgram, launchChromium } from '../support/chromium.js';
import { testWith } from '../tools/outside.js';
import { staticHost } from './support/static-host.js';
import type { StaticHost } from './support/static-host.js';
import { keysHand, pointerHand } from './support/walk-hands.js';

/** Everything in it that a browser would run or fetch, were it put into a page. */
const HOSTILE = `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"
  width="100mm" height="100mm" viewBox="0 0 100 100" onload="window.ran = 1">
  <script>window.ran = 2</script><style>@import url("https://stranger.invalid/a.css");</style>
  <image xlink:href="https://stranger.invalid/a.png" width="9" height="9" onerror="window.ran = 3"/>
  <foreignObject width="9" height="9"><iframe xmlns="http://www.w3.org/1999/xhtml" src="https://stranger.invalid/"/></foreignObject>
  <rect id="flap" x="10" y="10" width="60" height="40" fill="none" stroke="#000" onclick="window.ran = 4"/>
</svg>`;
/** Some 20 MB of one drawing: blanks, as programs write them that put each number on a line of its own. */
const LARGE = HOSTILE.replace('</svg>', `${' \n'.repeat(10_000_000)}</svg>`);

let host: StaticHost;
let browser: Browser;

beforeAll(async () => {
  host = await staticHost();
  browser = await launchChromium();
});
afterAll(async () => {
  await browser.close();
  await host.close();
});

async function bring(
  page: Page,
  files: readonly { readonly name: string; readonly content: string | Buffer }[],
) {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Add patterns' }).click();
  const payload = files.map(({ name, content }) => ({
    name,
    mimeType: 'application/octet-stream',
    buffer: Buffer.from(content),
  }));
  await (await chooser).setFiles(payload);
}

/** Of something drawn, px of the page. */
async function middleOf(page: Page, selector: string): Promise<{ readonly x: number; readonly y: number }> {
  return page.locator(selector).evaluate((element) => {
    const { left, top, width, height } = element.getBoundingClientRect();
    return { x: left + width / 2, y: top + height / 2 };
  });
}

const fixture = (name: string): Buffer =>
  readFileSync(join(import.meta.dirname, '../../fixtures/patterns', name));

describe('patterns in the app', () => {
  testWith(
    chromiumProgram,
    'when patterns are brought in, hostile ones too, pieces are taken, sized and turned; nothing of theirs runs or is fetched',
    async () => {
      const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, locale: 'en-GB' });
      const asked: string[] = [];
      page.on('request', (request) => asked.push(request.url()));
      await page.goto(host.url);
      await page.getByRole('button', { name: 'Pieces', exact: true }).click();
      await page.getByRole('button', { name: /^gusset/ }).waitFor();

      await bring(page, [
        { name: 'hostile.svg', content: HOSTILE },
        { name: 'large.svg', content: LARGE },
        { name: 'empty.svg', content: '' },
        { name: 'panel.svg', content: fixture('inkscape-mm.svg') },
      ]);
      const card = page.getByRole('region', { name: 'Card' });
      // The empty file and the others beside each other: one refusal takes nothing from the rest.
      await card.getByRole('alert').getByText('The file is empty').waitFor();
      await page.getByRole('checkbox', { name: 'panel' }).waitFor();
      expect(await page.getByRole('checkbox', { name: 'flap' }).count()).toBe(2);
      expect(await page.evaluate(() => (window as { ran?: number }).ran)).toBeUndefined();
      expect(asked.filter((url) => !url.startsWith(host.url) && !url.startsWith('blob:'))).toEqual([]);
      expect(await page.locator('.drawing script, .drawing image, .drawing foreignObject').count()).toBe(0);

      await page.getByRole('checkbox', { name: 'twin' }).uncheck();
      await page.getByRole('button', { name: /^Take these \d+ pieces$/ }).click();
      await card.getByRole('button', { name: /^panel/ }).click();
      await card.getByText('80 mm × 50 mm, from panel.svg').waitFor();

      // By keys alone: the arrow a quarter of a turn, in steps of its buttons.
      const arrow = card.getByText(/arrow/i).filter({ hasText: '°' });
      const before = await arrow.innerText();
      await card.getByRole('button', { name: 'Turn right' }).focus();
      await page.keyboard.press('Enter');
      await expect.poll(() => arrow.innerText()).not.toBe(before);
      await page.keyboard.press('Control+z');
      await expect.poll(() => arrow.innerText()).toBe(before);

      // By its tip: down with a mouse, to the left with the cross of the keys. Angles go clockwise as seen.
      const middle = await middleOf(page, '.arrow-middle');
      const reach = 0.8 * Math.abs((await middleOf(page, '.arrow-head')).x - middle.x);
      await pointerHand(page).draw([
        await middleOf(page, '.arrow-head'),
        { x: middle.x, y: middle.y + reach },
      ]);
      await expect.poll(() => arrow.innerText()).toMatch(/\b90\b/);
      // A focus that came by the mouse is not shown; keys go away from it and come back.
      await page.keyboard.press('Tab');
      await keysHand(page).draw([await middleOf(page, '.arrow-head'), { x: middle.x - reach, y: middle.y }]);
      await expect.poll(() => arrow.innerText()).toMatch(/\b1(7\d|8\d)/);

      // A side of 80 mm that is known to be 100: everything of the file grows by a quarter.
      await page.getByRole('button', { name: 'All pieces' }).first().click();
      await card.getByText(/pattern files$/).click();
      await card.getByRole('button', { name: /^panel\.svg/ }).click();
      await card.getByText('Is the size right?').click();
      await card.getByLabel('Choose a side').selectOption({ label: 'panel, width: 80 mm' });
      await card.getByLabel('Its true length').fill('100');
      await card.getByRole('button', { name: 'Use this size' }).click();
      await card.getByText('100 mm × 62.5 mm').first().waitFor();

      // Six pages of one drawing, three side by side (fixtures/patterns/programs/make.py): all of them, then without one.
      await bring(page, [{ name: 'roll.pdf', content: fixture('programs/bar-roll-bare.pdf') }]);
      await page.getByRole('checkbox', { name: 'roll pockets' }).waitFor();
      await card.getByText('Its 6 pages').click();
      await card.getByText('By lines that go on over their edges: 1-6').waitFor();
      expect(await page.locator('.pattern-page-number').allTextContents()).toEqual([
        '1',
        '2',
        '3',
        '4',
        '5',
        '6',
      ]);
      await card.getByRole('button', { name: 'Page 6', exact: true }).click();
      await card.getByText('Left out: 6').waitFor();
      await card.getByLabel('The same by their numbers').fill('1-6');
      await page.keyboard.press('Enter');
      await card.getByText('By lines that go on over their edges: 1-6').waitFor();
      await card.getByLabel('How they lie together').selectOption('in rows and columns');
      await card.getByRole('group', { name: 'Pages side by side' }).getByRole('textbox').fill('3');
      await page.keyboard.press('Enter');
      await card.getByText('In rows and columns: 1-6').waitFor();
      await page.getByRole('checkbox', { name: 'roll pockets' }).waitFor();
      await page.close();
    },
  );
});
