import { readFileSync } from 'node:fs';
import { parseHide, parseJobBundle } from '@hidebound/leather';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { chromiumProgram, launchChromium } from '../support/chromium.js';
import { testWith } from '../tools/outside.js';
import { staticHost } from './support/static-host.js';

testWith(
  chromiumProgram,
  'when a plain host serves the app, it asks for no folder and says what it keeps; when it breaks at the start, every job can be taken away',
  async () => {
    const [host, browser] = await Promise.all([staticHost(), launchChromium()]);
    try {
      const page = await browser.newPage({ viewport: { width: 390, height: 780 }, locale: 'en-GB' });
      const missed: string[] = [];
      page.on('response', (answer) => answer.status() >= 400 && missed.push(answer.url()));
      await page.goto(host.url);
      await page.locator('.hide-outline').waitFor({ state: 'attached' });
      await page.evaluate(async () => {
        await navigator.serviceWorker.ready;
      });
      expect(missed).toEqual([]);
      await allIsKeptForUseWithoutANetwork(page);
      await jobsAreTakenAway(page);
    } finally {
      await browser.close();
      await host.close();
    }
  },
);

async function allIsKeptForUseWithoutANetwork(page: Page): Promise<void> {
  await page.locator('.job-name').click();
  await page.getByRole('button', { name: 'Settings' }).last().click();
  await page.getByText(/but for what photos are read with: [\d.]+ of [\d.]+ MB/).waitFor();
  await page.getByRole('button', { name: 'Keep the rest, too' }).click();
  await page.getByText(/All of the app is kept on this device \([\d.]+ MB\)/).waitFor();
  // What the browser itself has: all but the small files in one cache, the vision library among them.
  const kept = await page.evaluate(async () => {
    const [name = ''] = await caches.keys();
    return (await (await caches.open(name)).keys()).map(({ url }) => url);
  });
  expect(kept.some((url) => /\/assets\/vision-\w+\.js$/.test(url))).toBe(true);
  await page.keyboard.press('Escape');
}

async function jobsAreTakenAway(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const listen = document.addEventListener.bind(document);
    document.addEventListener = (type: string, ...rest: [EventListener]) => {
      if (type === 'keydown') throw new Error('there are no keys here');
      listen(type, ...rest);
    };
  });
  await page.reload();
  await page.getByText('there are no keys here').waitFor();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save “Bicycle goods” as a file' }).click();
  const text = readFileSync(await (await download).path(), 'utf8');
  const { files } = parseJobBundle(text, { file: 'rescued' });
  const hide = files.find(({ path }) => path === 'side.hide.json')!;
  expect(parseHide(hide.content, { file: hide.path }).id).toBe('side-0231-a');
}
