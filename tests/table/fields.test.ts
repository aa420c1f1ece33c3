import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { chromiumProgram, launchChromium } from '../support/chromium.js';
import { testWith } from '../tools/outside.js';
import { staticHost } from './support/static-host.js';

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true });

testWith(
  chromiumProgram,
  'when a field is filled, left, mistaken and mended, what is wrong stands beside it, nothing typed is lost, and Enter is one change',
  async () => {
    const [host, browser] = await Promise.all([staticHost(), launchChromium()]);
    try {
      const page = await browser.newPage({ viewport: { width: 1280, height: 900 }, locale: 'en-GB' });
      await page.clock.install();
      await page.goto(host.url);
      await page.locator('.hide-outline').waitFor({ state: 'attached' });
      await passTheDrawingByKeys(page);
      await button(page, 'Pieces').click();
      await page.locator('.piece-list button').first().click();
      await halfTypedTextOutlivesARedraw(page);
      await aSlipStandsBesideItsField(page);
      await twoFieldsAreOneThickness(page);
      await aCalmNoticeLeaves(page);
    } finally {
      await browser.close();
      await host.close();
    }
  },
);

/** WCAG 2.2, 2.4.1 (bypass blocks): the first stop of the keyboard leads past the bar and the drawing. */
async function passTheDrawingByKeys(page: Page): Promise<void> {
  await page.keyboard.press('Tab');
  await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Skip to the card');
  await page.keyboard.press('Enter');
  expect(await page.evaluate(() => document.activeElement?.className)).toBe('card');
}

async function halfTypedTextOutlivesARedraw(page: Page): Promise<void> {
  const name = page.getByLabel('Name', { exact: true });
  const before = await name.inputValue();
  await name.fill('half of a na');
  // Without a pointer, so that the field keeps the focus while the card is drawn anew.
  await button(page, 'Pieces per set: one more').evaluate((element) => (element as HTMLElement).click());
  await expect.poll(() => page.getByLabel('Pieces per set', { exact: true }).last().inputValue()).toBe('2');
  expect(await name.inputValue()).toBe('half of a na');
  expect(await name.evaluate((element) => element === document.activeElement)).toBe(true);
  await name.press('Escape');
  await expect.poll(() => name.inputValue()).toBe(before);
  await button(page, 'Undo').click();
  await button(page, 'Undo').and(page.locator(':disabled')).waitFor();
}

/** WCAG 2.2, 3.3.1 and 1.3.1: told in text, and tied to the field. */
async function aSlipStandsBesideItsField(page: Page): Promise<void> {
  const name = page.getByLabel('Name', { exact: true });
  const before = await name.inputValue();
  const slip = page.getByText('Something has to stand here.');
  await name.fill('');
  await name.press('Tab');
  await slip.waitFor();
  expect(await name.getAttribute('aria-invalid')).toBe('true');
  expect(await name.getAttribute('aria-describedby')).toBe(await slip.getAttribute('id'));
  expect(await button(page, 'Undo').isDisabled()).toBe(true);
  // It stays until it is mended, here and after she was elsewhere.
  await button(page, 'Make').click();
  await page.locator('.table[data-shown="make"]').waitFor();
  await button(page, 'Pieces').click();
  await slip.waitFor();
  await name.fill('front panel');
  await name.press('Enter');
  await page.getByRole('heading', { name: 'front panel' }).waitFor();
  expect(await slip.count()).toBe(0);
  await button(page, 'Undo').click();
  await page.getByRole('heading', { name: before, exact: true }).waitFor();
  // Enter, and leaving the field after it, was one change.
  await button(page, 'Undo').and(page.locator(':disabled')).waitFor();
}

async function twoFieldsAreOneThickness(page: Page): Promise<void> {
  await page.getByText('What its leather has to be').click();
  const from = page.getByLabel('Thickness from');
  const to = page.getByLabel('Thickness to');
  await from.fill('2');
  await from.press('Tab');
  await to.fill('2.4');
  await to.press('Tab');
  await from.fill('3');
  await from.press('Tab');
  await page.getByText('The thinnest place comes first').waitFor();
  expect(await from.inputValue()).toBe('3');
  await to.fill('3.5');
  await to.press('Tab');
  await expect.poll(() => page.getByText('The thinnest place comes first').count()).toBe(0);
  expect([await from.inputValue(), await to.inputValue()]).toEqual(['3', '3.5']);
}

/** WCAG 2.2, 2.2.1: never while it is pointed at, and it can be read again afterwards. */
async function aCalmNoticeLeaves(page: Page): Promise<void> {
  await button(page, 'All pieces').click();
  await page.locator('.article details > summary').first().click();
  await button(page, 'Keep this article for later').first().click();
  const notice = page.locator('.notice.calm');
  await notice.waitFor();
  const text = await notice.locator('p').innerText();
  await notice.hover();
  await page.clock.fastForward(120_000);
  expect(await notice.count()).toBe(1);
  await page.mouse.move(5, 5);
  await page.clock.fastForward(120_000);
  await notice.waitFor({ state: 'detached' });
  await page.locator('.job-name').click();
  await page.locator('.said > summary').click();
  await page.locator('.said').getByText(text).waitFor();
}
