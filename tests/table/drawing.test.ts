import type { CDPSession, Page } from 'playwright-core';
import { expect } from 'vitest';
import { chromiumProgram, launchChromium } from '../support/chromium.js';
import { testWith } from '../tools/outside.js';
import { staticHost } from './support/static-host.js';

/** As the page shows the drawing: its scale, its turn in degrees, and where the middle of the hide's outline is seen. */
async function seen(page: Page) {
  return page.evaluate(() => {
    const outline = document.querySelector<SVGGraphicsElement>('.hide-outline')!;
    const { a, b } = outline.getScreenCTM()!;
    const { left, top, width, height } = outline.getBoundingClientRect();
    return {
      scale: Math.hypot(a, b),
      turnDeg: (Math.atan2(b, a) * 180) / Math.PI,
      x: left + width / 2,
      y: top + height / 2,
    };
  });
}

type Finger = readonly [number, number];

/** Fingers go from one set of places to another, in steps, as a touch screen reports them. */
async function touch(
  cdp: CDPSession,
  from: readonly Finger[],
  to: readonly Finger[],
  steps = 8,
): Promise<void> {
  const at = (share: number) =>
    from.map(([x, y], i) => ({ x: x + share * (to[i]![0] - x), y: y + share * (to[i]![1] - y), id: i }));
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: at(0) });
  for (let i = 1; i <= steps; i++)
    await cdp.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: at(i / steps) });
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
}

testWith(
  chromiumProgram,
  'when two fingers pinch and turn over the drawing, it follows them; the wheel and the keys do the same',
  async () => {
    const [host, browser] = await Promise.all([staticHost(), launchChromium()]);
    try {
      const page = await browser.newPage({
        viewport: { width: 390, height: 780 },
        hasTouch: true,
        isMobile: true,
        serviceWorkers: 'block',
      });
      await page.goto(host.url);
      await page.locator('.hide-outline').waitFor({ state: 'attached' });
      const cdp = await page.context().newCDPSession(page);
      const box = (await page.locator('.stage').boundingBox())!;
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      const first = await seen(page);

      // Twice as far apart about the middle: twice as large, not turned.
      await touch(
        cdp,
        [
          [x - 40, y],
          [x + 40, y],
        ],
        [
          [x - 80, y],
          [x + 80, y],
        ],
      );
      await expect.poll(async () => (await seen(page)).scale / first.scale).toBeCloseTo(2, 1);
      expect((await seen(page)).turnDeg).toBeCloseTo(first.turnDeg, 1);

      // A quarter of a turn about the middle, as far apart as before.
      const before = await seen(page);
      await quarterTurn(cdp, x, y);
      await expect.poll(async () => (await seen(page)).turnDeg).toBeCloseTo(before.turnDeg + 90, 0);
      expect((await seen(page)).scale / before.scale).toBeCloseTo(1, 1);

      // Two fingers side by side move it along.
      const turned = await seen(page);
      await touch(
        cdp,
        [
          [x - 40, y],
          [x + 40, y],
        ],
        [
          [x - 10, y + 50],
          [x + 70, y + 50],
        ],
      );
      await expect.poll(async () => (await seen(page)).y - turned.y).toBeCloseTo(50, 0);
      expect((await seen(page)).x - turned.x).toBeCloseTo(30, 0);

      // By keys: 0 shows all again, < turns by 15 degrees, + comes closer.
      await page.locator('.stage').focus();
      await page.keyboard.press('0');
      await page.evaluate(
        () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
      );
      const whole = await seen(page);
      await page.keyboard.press('<');
      await expect.poll(async () => (await seen(page)).turnDeg).toBeCloseTo(whole.turnDeg - 15, 1);
      await page.keyboard.press('+');
      await expect.poll(async () => (await seen(page)).scale / whole.scale).toBeCloseTo(1.25, 2);

      // The place below the wheel's pointer stays where it is.
      const close = await seen(page);
      await page.mouse.move(close.x, close.y);
      await page.mouse.wheel(0, -200);
      await expect.poll(async () => (await seen(page)).scale).toBeGreaterThan(1.2 * close.scale);
      const wheeled = await seen(page);
      expect(Math.hypot(wheeled.x - close.x, wheeled.y - close.y)).toBeLessThan(2);

      // The card's edge is drawn up by a finger, and stays at the nearest of its heights.
      const handle = (await page.locator('.card-handle').boundingBox())!;
      const [hx, hy] = [handle.x + handle.width / 2, handle.y + handle.height / 2];
      await touch(cdp, [[hx, hy]], [[hx, hy - 260]]);
      await page.locator('.table.card-up').waitFor();
    } finally {
      await Promise.all([browser.close(), host.close()]);
    }
  },
);

/** Around in small steps: the straight way from end to end would pass the middle. */
async function quarterTurn(cdp: CDPSession, x: number, y: number): Promise<void> {
  const at = (deg: number) => {
    const [dx, dy] = [60 * Math.cos((deg * Math.PI) / 180), 60 * Math.sin((deg * Math.PI) / 180)];
    return [
      { x: x - dx, y: y - dy, id: 0 },
      { x: x + dx, y: y + dy, id: 1 },
    ];
  };
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: at(0) });
  for (let deg = 10; deg <= 90; deg += 10)
    await cdp.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: at(deg) });
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
}
