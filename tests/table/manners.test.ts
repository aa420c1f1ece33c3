import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { chromiumProgram, launchChromium } from '../support/chromium.js';
import { testWith } from '../tools/outside.js';
import { staticHost } from './support/static-host.js';

/** axe-core, an independent checker of accessibility by the rules of WCAG. */
const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
const PLACES = ['hide', 'pieces', 'lay', 'make', 'bench'];

const LOOKS = [
  { width: 1440, height: 900, colorScheme: 'light', locale: 'en-GB' },
  { width: 1440, height: 900, colorScheme: 'dark', locale: 'de-DE' },
  { width: 360, height: 740, colorScheme: 'dark', locale: 'en-GB' },
  { width: 320, height: 640, colorScheme: 'light', locale: 'de-DE' },
] as const;

/** What axe finds, by rule and element; only what is surely wrong. */
async function faults(page: Page): Promise<readonly string[]> {
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run(): Promise<{ violations: { id: string; nodes: { target: unknown[] }[] }[] }> };
    };
    const { violations } = await axe.run();
    return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target.join(' ')}`));
  });
}

/** Nothing is cut off at the side of a narrow screen (WCAG 2.2, 1.4.10 Reflow: 320 CSS pixels). */
function overflowOf(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    ['html', '.top', '.places', '.card-paper', '.middle'].flatMap((name) => {
      const element = document.querySelector(name);
      const over = element === null ? 0 : element.scrollWidth - element.clientWidth;
      return over > 1 ? [`${name} is ${over} px too wide`] : [];
    }),
  );
}

testWith(
  chromiumProgram,
  'when axe looks over the five places and the sheets, wide and narrow, light and dark, in both languages, it finds no fault, and nothing is cut off',
  async () => {
    const [host, browser] = await Promise.all([staticHost(), launchChromium()]);
    const found: string[] = [];
    try {
      for (const { width, height, colorScheme, locale } of LOOKS) {
        // The page's own content policy would refuse a foreign script: it is set aside for axe, and only here.
        const context = await browser.newContext({
          viewport: { width, height },
          colorScheme,
          locale,
          bypassCSP: true,
          serviceWorkers: 'block',
        });
        const page = await context.newPage();
        await page.goto(host.url);
        await page.locator('.hide-outline').waitFor({ state: 'attached' });
        await page.addScriptTag({ path: AXE });
        const look = async (where: string): Promise<void> => {
          const all = [...(await faults(page)), ...(await overflowOf(page))];
          found.push(...all.map((fault) => `${width} ${colorScheme} ${locale} ${where}: ${fault}`));
        };
        for (const [i, place] of PLACES.entries()) {
          await page.locator('.place').nth(i).click();
          await page.locator(`.table[data-shown="${place}"]`).waitFor();
          await page.locator('.card-paper h2').first().waitFor();
          await look(place);
        }
        await page.locator('.job-name').click();
        await page.locator('dialog[open]').waitFor();
        await look('job sheet');
        await page.keyboard.press('Escape');
        await page.locator('dialog[open]').waitFor({ state: 'detached' });
        const keys = page.locator('dialog[open] .keys').first();
        // While a sheet closes, its page may not have the keys yet.
        for (let tries = 0; tries < 5 && !(await keys.isVisible()); tries++) {
          await page.locator('.place').first().focus();
          await page.keyboard.press('?');
          await keys.waitFor({ timeout: 4000 }).catch(() => undefined);
        }
        await keys.waitFor();
        await look('keys');
        await context.close();
      }
      expect(found).toEqual([]);
    } finally {
      await Promise.all([browser.close(), host.close()]);
    }
  },
);
