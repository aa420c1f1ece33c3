import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { curveArea, curveBox } from '@hidebound/geometry';
import { readPatternSvg } from '@hidebound/intake';
import { parseHide, parseJobBundle, parseOrder } from '@hidebound/leather';
import type { JobBundle } from '@hidebound/leather';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { testFolder } from '../cli-support.js';
import { chromiumProgram, launchChromium } from '../support/chromium.js';
import { testWith } from '../tools/outside.js';
import { staticHost } from './support/static-host.js';

const folder = testFolder();

/** The international foot (1959): exactly 0.3048 m. */
const FOOT_MM = 304.8;

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

async function savedJob(page: Page): Promise<{ readonly text: string; readonly bundle: JobBundle }> {
  await page.locator('.job-name').click();
  const download = page.waitForEvent('download');
  await button(page, 'Save the job as one file').click();
  const text = readFileSync(await (await download).path(), 'utf8');
  await page.keyboard.press('Escape');
  return { text, bundle: parseJobBundle(text, { file: 'saved' }) };
}

testWith(
  chromiumProgram,
  'when units are switched, a face is painted and a layout is kept beside another, another device has all of it from one file',
  async () => {
    const host = await staticHost();
    const browser = await launchChromium();
    try {
      const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, locale: 'en-GB' });
      await page.goto(host.url);
      const card = page.getByRole('region', { name: 'Card' });
      await card.getByText('210.6 dm²', { exact: true }).waitFor();
      await button(page, 'Settings').click();
      await page.getByRole('radio', { name: 'ft²' }).check();
      await page.keyboard.press('Escape');
      const { bundle: before } = await savedJob(page);
      const { outline } = before.files
        .filter(({ kind }) => kind === 'hide')
        .map(({ path, content }) => parseHide(content, { file: path }))
        .find(({ id }) => id === 'side-0231-a')!;
      const feet = (Math.abs(curveArea(outline)) / FOOT_MM ** 2).toFixed(2);
      await card.getByText(`${feet} ft²`, { exact: true }).first().waitFor();

      await button(page, 'Pieces').click();
      await page.getByRole('button', { name: /^front/ }).click();
      await button(page, 'Paint what is seen').last().click();
      const { x, y, width, height } = (await page.locator('.large-piece .piece-cut').boundingBox())!;
      const at = (u: number, v: number) => [x + u * width, y + v * height] as const;
      await page.mouse.move(...at(0.3, 0.3));
      await page.mouse.down();
      for (const [u, v] of [
        [0.7, 0.3],
        [0.7, 0.7],
        [0.3, 0.7],
        [0.3, 0.32],
      ] as const)
        await page.mouse.move(...at(u, v), { steps: 6 });
      await page.mouse.up();
      await button(page, 'This is what is seen').click();
      await page.locator('header button[title^="Undo: what is seen of front"]').waitFor();

      await button(page, 'Lay').click();
      await page.getByLabel('Name for this layout').fill('first');
      await button(page, 'Keep it').click();
      const beside = page.locator('.side-by-side');
      await beside.waitFor();
      const laid = beside.getByRole('row', { name: /^Pieces laid/ }).getByRole('cell');
      expect(await laid.allInnerTexts()).toEqual(['110 of 110', '110 of 110']);

      const { text, bundle } = await savedJob(page);
      const order = bundle.files.find(({ path }) => path === 'bicycle-goods.order.yaml')!;
      const front = parseOrder(order.content, { file: order.path })
        .articles.flatMap((article) => ('pieces' in article ? article.pieces : []))
        .find(({ name }) => name === 'front')!;
      // Painted faces are lines of a drawing, as in any pattern; this one is four tenths of the piece each way.
      const from = front.from.kind === 'pattern' ? front.from.file : '';
      expect(from).toMatch(/-face\.svg$/);
      const drawn = bundle.files.find(({ path }) => path === from)!;
      const svg = Buffer.from(drawn.content, drawn.encoding);
      const { pieces } = readPatternSvg(svg, { file: from, reading: { file: from, roles: [] } });
      expect(pieces.map(({ piece }) => piece.name)).toEqual(['saddlebag-front']);
      const { face, cut } = pieces[0]!.piece;
      const { minX, minY, maxX, maxY } = curveBox(cut);
      expect(face).toHaveLength(1);
      const share = Math.abs(curveArea(face[0]!)) / ((maxX - minX) * (maxY - minY));
      expect(share).toBeGreaterThan(0.14);
      expect(share).toBeLessThan(0.18);
      const file = join(folder, 'carried.job.json');
      writeFileSync(file, text);

      // Another device: storage of its own, and a phone.
      const other = await browser.newContext({ viewport: { width: 390, height: 780 }, locale: 'en-GB' });
      const phone = await other.newPage();
      await phone.goto(host.url);
      await phone.locator('.job-name').click();
      const chooser = phone.waitForEvent('filechooser');
      await button(phone, 'Open a job file').click();
      await (await chooser).setFiles(file);
      await phone.getByText('Saved', { exact: true }).waitFor();
      await expect
        .poll(async () => (await savedJob(phone)).bundle.files.map(({ path }) => path).sort())
        .toEqual(bundle.files.map(({ path }) => path).sort());
      const carried = await savedJob(phone);
      expect(new Map(carried.bundle.files.map(({ path, content }) => [path, content]))).toEqual(
        new Map(bundle.files.map(({ path, content }) => [path, content])),
      );
    } finally {
      await browser.close();
      await host.close();
    }
  },
);
