import { expect } from 'vitest';
import { chromiumProgram, launchChromium } from '../support/chromium.js';
import { testWith } from '../tools/outside.js';
import { staticHost } from './support/static-host.js';

testWith(
  chromiumProgram,
  'when the web host is gone after a first visit, the app opens again and all five places are there; it can be installed',
  async () => {
    const [host, browser] = await Promise.all([staticHost(), launchChromium()]);
    try {
      const page = await browser.newPage({ viewport: { width: 390, height: 780 } });
      await page.goto(host.url);
      await page.locator('.hide-outline').waitFor({ state: 'attached' });
      await page.evaluate(async () => {
        await navigator.serviceWorker.ready;
      });
      const cdp = await page.context().newCDPSession(page);
      // Chromium's own judgement of the manifest, the icons and the page.
      const { installabilityErrors } = await cdp.send('Page.getInstallabilityErrors');
      expect(
        installabilityErrors.map(({ errorId }) => errorId).filter((id) => id !== 'in-incognito'),
      ).toEqual([]);
      await host.close();

      await page.reload();
      await page.locator('.hide-outline').waitFor({ state: 'attached' });
      for (const [i, place] of ['hide', 'pieces', 'lay', 'make', 'bench'].entries()) {
        await page.locator('.place').nth(i).click();
        await page.locator(`.table[data-shown="${place}"]`).waitFor();
        await page.locator('.card-paper h2').first().waitFor();
      }
      expect(await page.locator('.notice.error').count()).toBe(0);
    } finally {
      await browser.close();
      await host.close().catch(() => undefined);
    }
  },
);
