import { readFileSync } from 'node:fs';
import { flattenCurve } from '@hidebound/geometry';
import { parseHide, parseJobBundle, parseLayout } from '@hidebound/leather';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { chromiumProgram, launchChromium } from '../support/chromium.js';
import { testWith } from '../tools/outside.js';
import { staticHost } from './support/static-host.js';

const MARKED = /^The flaw is marked\. (One|\d+) pieces? lay there and waits? to be laid again\.$/;

testWith(
  chromiumProgram,
  'when a flaw is found while cutting, it is touched, drawn along or around, and what may lie there is said; what it hits waits',
  async () => {
    const [host, browser] = await Promise.all([staticHost(), launchChromium()]);
    try {
      const page = await browser.newPage({ viewport: { width: 1280, height: 900 }, locale: 'en-GB' });
      await page.goto(host.url);
      await page.locator('.hide-outline').waitFor({ state: 'attached' });
      await page.getByRole('button', { name: 'At the bench', exact: true }).click();
      await page.getByText('0 of 110 cut').waitFor();
      await page.locator('.bench-number').waitFor();
      await page.keyboard.press('f');
      await page.getByRole('heading', { name: 'Where is the flaw?' }).waitFor();
      await drawIt(page);
      await page.getByRole('button', { name: 'Only where hidden' }).click();
      await page.getByRole('button', { name: 'Mark it' }).click();
      const words = await page.getByText(MARKED).innerText({ timeout: 60_000 });
      const { hide, layout } = await savedJob(page);
      const flaw = hide.flaws.at(-1)!;
      expect(flaw).toMatchObject({ effect: { looks: 'C', strength: 'sound' }, shape: { kind: 'area' } });
      expect(flaw.kind).toBeUndefined();
      const outline = flaw.shape.kind === 'area' ? flattenCurve(flaw.shape.outline) : [];
      // A circle fills π/4 of the square around it, at any size.
      expect(areaOf(outline) / boxOf(outline)).toBeCloseTo(Math.PI / 4, 1);
      expect(layout.unplaced).toHaveLength(Number(/\d+/.exec(words)?.[0] ?? 1));
      expect(layout.placements.length + layout.unplaced.length).toBe(110);
    } finally {
      await browser.close();
      await host.close();
    }
  },
);

/** A touch, a stroke and a circle: each takes the place of the one before. */
async function drawIt(page: Page): Promise<void> {
  const box = (await page.locator('.drawing').boundingBox())!;
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  await page.mouse.click(middle.x, middle.y);
  await page.getByText('20 mm across').waitFor();
  await page.getByRole('button', { name: 'Larger' }).click();
  await page.getByText('40 mm across').waitFor();
  await stroke(
    page,
    Array.from({ length: 20 }, (_, i) => ({ x: middle.x - 80 + 8 * i, y: middle.y })),
  );
  await page.getByText('5 mm wide').waitFor();
  await stroke(
    page,
    Array.from({ length: 40 }, (_, i) => ({
      x: middle.x + 70 * Math.cos((i * Math.PI) / 20),
      y: middle.y + 70 * Math.sin((i * Math.PI) / 20),
    })),
  );
  await page.getByText('As it was drawn around').waitFor();
}

async function stroke(page: Page, places: readonly { readonly x: number; readonly y: number }[]) {
  await page.mouse.move(places[0]!.x, places[0]!.y);
  await page.mouse.down();
  for (const { x, y } of places) await page.mouse.move(x, y);
  await page.mouse.up();
}

async function savedJob(page: Page) {
  await page.locator('.job-name').click();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the job as one file' }).click();
  const text = readFileSync(await (await download).path(), 'utf8');
  const { files } = parseJobBundle(text, { file: 'saved' });
  const contentOf = (path: string) => files.find((each) => each.path === path)!.content;
  return {
    hide: parseHide(contentOf('side.hide.json'), { file: 'side' }),
    layout: parseLayout(contentOf('bicycle-goods.layout.json'), { file: 'layout' }),
  };
}

type Ring = readonly { readonly x: number; readonly y: number }[];

function areaOf(ring: Ring): number {
  const twice = ring.reduce((sum, one, i) => {
    const next = ring[(i + 1) % ring.length]!;
    return sum + one.x * next.y - next.x * one.y;
  }, 0);
  return Math.abs(twice) / 2;
}

function boxOf(ring: Ring): number {
  const side = (values: readonly number[]) => Math.max(...values) - Math.min(...values);
  return side(ring.map(({ x }) => x)) * side(ring.map(({ y }) => y));
}
