import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseJobBundle, parseOrder, writeHide } from '@hidebound/leather';
import type { Browser, CDPSession, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect } from 'vitest';
import { panelHide } from '../../packages/app/src/stations/hide/photo/logic/panel-hide.js';
import { encodePhoto } from '../camera/index.js';
import { DEMO, ROOT } from '../cli-support.js';
import { launchChromium } from '../support/chromium.js';
import { testWith } from '../tools/outside.js';
import { wordsCutOff } from './support/cut-off.js';
import { filesIn, parseFolder } from './support/parse-folder.js';
import { startTable, TABLE } from './support/real-table.js';
import { staticHost } from './support/static-host.js';
import { RED, turnedPhoto } from './support/turned-photo.js';
import { dropFiles, watchPage } from './support/watch-page.js';

let browser: Browser;

beforeAll(async () => {
  if (TABLE.isThere) browser = await launchChromium();
});
afterAll(async () => {
  await browser?.close();
});

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

describe('a photo below the drawing', () => {
  const folder = mkdtempSync(join(tmpdir(), 'hidebound-devices-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }));

  testWith(
    TABLE,
    'when a hide has a photo, it lies where the outline says, close up and turned; a long press takes a flaw, whatever tool is in hand; an article file that is dropped is made; a turned photo lies upright',
    async () => {
      await layOutHide(folder);
      const table = await startTable(folder);
      try {
        const page = await browser.newPage({
          viewport: { width: 1280, height: 800 },
          ...{ locale: 'en-GB', hasTouch: true },
        });
        const faults = watchPage(page, table.url);
        await page.goto(table.address);
        await photoFits(page);
        await longPressTakesTheFlaw(page);
        await articleDropped(page, folder);
        await turnedPhotoLiesUpright(page);
        expect(faults).toEqual({ errors: [], strangers: [], dialogs: [] });
        await page.close();
      } finally {
        await table.kill();
      }
    },
  );
});

/** The hide's sizes in mm; its picture reaches over each of its sides, and its middle is the hide's. */
const HIDE = { width: 200, height: 150, picture: 10, pxPerMm: 2 };

/** A folder with one hide over a photo, with one flaw, and the pattern of one article. */
async function layOutHide(folder: string): Promise<void> {
  const { picture, pxPerMm } = HIDE;
  const width = (HIDE.width + 2 * picture) * pxPerMm;
  const height = (HIDE.height + 2 * picture) * pxPerMm;
  const rgb = new Uint8Array(width * height * 3).fill(170);
  writeFileSync(join(folder, 'panel.straight.jpg'), await encodePhoto({ width, height, rgb }, 80, ROOT));
  const hide = {
    ...panelHide({ id: 'panel', widthMm: HIDE.width, heightMm: HIDE.height }),
    flaws: [
      {
        id: 'flaw-1',
        kind: 'hole',
        side: 'grain',
        shape: { kind: 'point', at: { x: 60, y: 50 }, radiusMm: 6 },
      } as const,
    ],
    photo: {
      file: 'panel.straight.jpg',
      pxPerMm,
      origin: { x: -picture, y: -picture },
      scaledBy: 'rule',
      errorMm: 1,
      errorsAt: [],
      hideStrokes: [],
      floorStrokes: [],
    },
  };
  writeFileSync(join(folder, 'panel.hide.json'), writeHide(hide));
  mkdirSync(join(folder, 'patterns'));
  cpSync(join(DEMO, 'patterns/pump-strap.svg'), join(folder, 'patterns/pump-strap.svg'));
}

/** How far the middle of the picture lies from that of the outline, px, and how the view is turned and scaled. */
function fit(page: Page) {
  return page.evaluate(() => {
    const middle = (name: string): readonly [number, number] => {
      const { left, top, width, height } = document.querySelector(name)!.getBoundingClientRect();
      return [left + width / 2, top + height / 2];
    };
    const [photo, outline] = [middle('.stage-photo'), middle('.hide-outline')];
    const { a, b } = document.querySelector<SVGGraphicsElement>('.hide-outline')!.getScreenCTM()!;
    const picture = document.querySelector<HTMLImageElement>('.stage-photo')!;
    const { width } = picture.getBoundingClientRect();
    return {
      offPx: Math.hypot(photo[0] - outline[0], photo[1] - outline[1]),
      scale: Math.hypot(a, b),
      turnDeg: Math.round((Math.atan2(b, a) * 180) / Math.PI),
      photoScale: width / picture.naturalWidth,
    };
  });
}

async function photoFits(page: Page): Promise<void> {
  await page.locator('.hide-outline').waitFor({ state: 'attached' });
  await page.locator('.stage-photo').waitFor();
  const fits = () => expect.poll(async () => (await fit(page)).offPx).toBeLessThan(1);
  await fits();
  const first = await fit(page);
  expect((first.photoScale * HIDE.pxPerMm) / first.scale).toBeCloseTo(1, 3);
  const box = (await page.locator('.stage').boundingBox())!;
  await page.mouse.move(box.x + box.width / 3, box.y + box.height / 3);
  await page.mouse.wheel(0, -600);
  await expect.poll(async () => (await fit(page)).scale / first.scale).toBeGreaterThan(2);
  await fits();
  await page.locator('.stage').focus();
  for (const turnDeg of [-15, -30, -45]) {
    await page.keyboard.press('<');
    await expect.poll(async () => (await fit(page)).turnDeg).toBe(turnDeg);
    await fits();
  }
  await page.keyboard.press('0');
}

async function longPressTakesTheFlaw(page: Page): Promise<void> {
  const card = page.getByRole('region', { name: 'Card' });
  await button(page, 'Edge').click();
  await expect.poll(() => button(page, 'Edge').getAttribute('aria-pressed')).toBe('true');
  const flaw = (await page.locator('[data-kind=flaw]').first().boundingBox())!;
  const at = { x: flaw.x + flaw.width / 2, y: flaw.y + flaw.height / 2 };
  const cdp: CDPSession = await page.context().newCDPSession(page);
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [at] });
  await card.getByRole('heading', { name: 'Hole' }).waitFor();
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await expect.poll(() => button(page, 'Edge').getAttribute('aria-pressed')).toBe('false');
  // No flaw was made, and none was moved.
  const ids = await page
    .locator('[data-kind=flaw]')
    .evaluateAll((all) => [...new Set(all.map((each) => each.getAttribute('data-id')))]);
  expect(ids).toEqual(['flaw-1']);
  expect(await button(page, 'Undo').isDisabled()).toBe(true);
}

async function articleDropped(page: Page, folder: string): Promise<void> {
  const card = page.getByRole('region', { name: 'Card' });
  await button(page, 'Pieces').click();
  await button(page, 'Add patterns').first().waitFor();
  const article = readFileSync(join(DEMO, 'pump-strap.article.yaml'), 'utf8');
  await dropFiles(page, [{ name: 'pump-strap.article.yaml', text: article }]);
  await card.getByRole('heading', { name: 'pump strap' }).waitFor();
  await card.getByRole('button', { name: /cradle/ }).waitFor();
  const orders = () => filesIn(folder).filter((path) => path.endsWith('.order.yaml'));
  await expect.poll(() => orders().length).toBe(1);
  const [order] = orders() as [string];
  const { articles } = parseOrder(readFileSync(join(folder, order), 'utf8'), { file: order });
  expect(articles).toMatchObject([{ file: 'pump-strap.article.yaml' }]);
  parseFolder(folder);
}

async function turnedPhotoLiesUpright(page: Page): Promise<void> {
  const size = { width: 480, height: 640 };
  await button(page, 'Hide').click();
  await button(page, 'New hide').click();
  await page
    .getByLabel('Choose photos')
    .setInputFiles({ name: 'turned.jpg', mimeType: 'image/jpeg', buffer: await turnedPhoto(size) });
  const seen = () =>
    page.evaluate(() => {
      const picture = document.querySelector<HTMLImageElement>('.stage-photo')!;
      const { naturalWidth: width, naturalHeight: height } = picture;
      if (picture.hidden || width === 0) return undefined;
      const pen = Object.assign(document.createElement('canvas'), { width, height }).getContext('2d')!;
      pen.drawImage(picture, 0, 0);
      const reds = [0.25, 0.75].flatMap((down) =>
        [0.25, 0.75].map((across) => {
          const [red, green] = pen.getImageData(across * width, down * height, 1, 1).data;
          return red! - green! > 50;
        }),
      );
      return { width, height, reds };
    });
  expect(RED[0] - RED[1]).toBeGreaterThan(50);
  await expect.poll(seen).toEqual({ ...size, reds: [true, false, false, false] });
}

describe('a browser without room', () => {
  const QUOTA_BYTES = 3e6;
  const LETTERS = 5_000_000;

  testWith(
    TABLE,
    'when the browser has no room left, it is said, all can be saved as a file, what was saved stays, and the rest is saved once there is room',
    async () => {
      const host = await staticHost();
      try {
        const context = await browser.newContext({ locale: 'en-GB', serviceWorkers: 'block' });
        const page = await context.newPage();
        const faults = watchPage(page, host.url);
        const cdp = await context.newCDPSession(page);
        const quota = (quotaSize?: number) =>
          cdp.send('Storage.overrideQuotaForOrigin', {
            origin: new URL(host.url).origin,
            ...(quotaSize === undefined ? {} : { quotaSize }),
          });
        await quota(QUOTA_BYTES);
        await page.goto(host.url);
        await page.locator('.hide-outline').waitFor({ state: 'attached' });
        await button(page, 'Pieces').click();
        const sets = page.locator('#sets-0');
        await sets.fill('7');
        await sets.press('Enter');
        await expect.poll(() => button(page, 'Undo').isEnabled()).toBe(true);
        await saved(page);

        // A drawing that there is no room for.
        const drawing = `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100"><!--${'x'.repeat(LETTERS)}--><rect id="large" x="10" y="10" width="60" height="40" fill="none" stroke="#000"/></svg>`;
        await dropFiles(page, [{ name: 'large.svg', text: drawing }]);
        const told = page
          .getByRole('alert')
          .filter({ hasText: 'This browser has no room to keep what you did' });
        await told.waitFor();
        await page.getByText('Not saved!', { exact: true }).waitFor();
        const download = page.waitForEvent('download');
        await told.getByRole('button', { name: 'Save the job as one file' }).click();
        const { files } = parseJobBundle(readFileSync(await (await download).path(), 'utf8'), {
          file: 'saved',
        });
        const content = (path: string): string => files.find((file) => file.path === path)!.content;
        expect(content('patterns/large.svg')).toBe(drawing);
        expect(content('bicycle-goods.order.yaml')).toMatch(/sets: 7/);

        // What was told to be saved is there for another tab, and nothing half.
        const other = await context.newPage();
        await other.goto(host.url);
        await button(other, 'Pieces').click();
        await expect.poll(() => other.locator('#sets-0').inputValue()).toBe('7');
        await other.close();

        await quota();
        await told.getByRole('button', { name: 'Try again' }).click();
        await saved(page);
        await page.reload();
        await saved(page);
        await button(page, 'Pieces').click();
        await expect.poll(() => page.locator('#sets-0').inputValue()).toBe('7');
        await page.locator('.job-name').click();
        const again = page.waitForEvent('download');
        await page.getByRole('dialog').getByRole('button', { name: 'Save the job as one file' }).click();
        const whole = readFileSync(await (await again).path(), 'utf8');
        expect(whole).toContain('patterns/large.svg');
        expect(faults).toEqual({ errors: [], strangers: [], dialogs: [] });
        await context.close();
      } finally {
        await host.close();
      }
    },
  );
});

async function saved(page: Page): Promise<void> {
  await page.getByText('Saved', { exact: true }).waitFor();
}

describe('eyes of all kinds', () => {
  const PLACES = ['hide', 'pieces', 'lay', 'make', 'bench'] as const;
  const PHONE = { hasTouch: true, isMobile: true };
  /** `lettersPx`: the size of letters that she set in her browser; 16 is what most have. */
  const LOOKS = [
    { viewport: { width: 1280, height: 800 }, locale: 'en-GB', forcedColors: 'active' },
    { viewport: { width: 390, height: 780 }, locale: 'de-DE', forcedColors: 'active', ...PHONE },
    { viewport: { width: 1280, height: 800 }, locale: 'en-GB', lettersPx: 32 },
    { viewport: { width: 390, height: 780 }, locale: 'en-GB', lettersPx: 32, ...PHONE },
    { viewport: { width: 2560, height: 1440 }, locale: 'de-DE' },
    { viewport: { width: 360, height: 640 }, locale: 'de-DE', ...PHONE },
    { viewport: { width: 780, height: 390 }, locale: 'de-DE', ...PHONE },
  ] as const;

  // WCAG 2.2: 1.4.4 (text at 200 %), 1.4.10 (reflow), 2.4.7 (focus visible).
  testWith(
    TABLE,
    'when the system has colours of its own, letters are twice as large, or the screen is very wide or very narrow, all words can be read, and the focus is seen',
    async () => {
      const host = await staticHost();
      const found: string[] = [];
      try {
        for (const { lettersPx, ...look } of LOOKS.map((each) => ({ lettersPx: undefined, ...each }))) {
          const context = await browser.newContext({ ...look, serviceWorkers: 'block' });
          const page = await context.newPage();
          if (lettersPx !== undefined) {
            const cdp = await context.newCDPSession(page);
            await cdp.send('Page.setFontSizes', { fontSizes: { standard: lettersPx, fixed: lettersPx } });
          }
          await page.goto(host.url);
          await page.locator('.hide-outline').waitFor({ state: 'attached' });
          for (const [i, place] of PLACES.entries()) {
            await page.locator('.place').nth(i).click();
            await page.locator(`.table[data-shown="${place}"]`).waitFor();
            await page.locator('.card-paper h2').first().waitFor();
            if (place === 'lay') await page.locator('.verdict .proven').waitFor();
            if (place === 'bench') await page.locator('.bench-marks').waitFor();
            const where = `${look.viewport.width} ${look.locale} ${lettersPx ?? ''} ${place}`;
            found.push(...(await page.evaluate(wordsCutOff)).map((fault) => `${where}: ${fault}`));
          }
          if (lettersPx !== undefined)
            expect(await page.evaluate(() => getComputedStyle(document.body).fontSize)).toBe(
              `${lettersPx}px`,
            );
          found.push(...(await unseenFocus(page)));
          await context.close();
        }
        expect(found).toEqual([]);
      } finally {
        await host.close();
      }
    },
  );
});

/** Goes through some of what has the focus one after another; each must have a line around it. */
async function unseenFocus(page: Page): Promise<readonly string[]> {
  const found: string[] = [];
  await page.locator('.job-name').focus();
  for (let i = 0; i < 8; i++) {
    await page.keyboard.press('Tab');
    const unseen = await page.evaluate(() => {
      const element = document.activeElement!;
      const { outlineStyle, outlineWidth } = getComputedStyle(element);
      const isSeen = outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2;
      return isSeen ? undefined : `no focus is seen on ${element.tagName} ${element.className}`;
    });
    if (unseen !== undefined) found.push(unseen);
  }
  return found;
}
