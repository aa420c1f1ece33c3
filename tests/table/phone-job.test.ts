import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseHide, parseJobBundle } from '@hidebound/leather';
import type { Hide } from '@hidebound/leather';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { TOUCH_GUARD_MS } from '../../packages/app/src/stations/bench/logic/touch-guard.js';
import { judgeTrace } from '../camera/index.js';
import type { Scene } from '../camera/index.js';
import { hideboundHere, testFolder } from '../cli-support.js';
import { photograph, sceneNamed } from '../photo-trace-support.js';
import { chromiumProgram, launchChromium } from '../support/chromium.js';
import { testWith } from '../tools/outside.js';
import { countedHand } from './support/counted-hand.js';
import { staticHost } from './support/static-host.js';

/** Chalk 5 mm wide is some four pixels wide then. */
const WIDTH = 2400;
const RINGS = 25;

const folder = testFolder();

/** A hide with 25 chalked rings, and a few marks that nobody chalked. */
function chalkedScene(): Scene {
  const scene = sceneNamed('plain-floor-11', WIDTH);
  const marks = {
    ...{ scars: 3, brands: 0, stains: 1, bites: 3, veins: 0 },
    ...{ chalkRings: RINGS, chalkLines: 0, chalkCrosses: 0 },
  };
  return { ...scene, hides: [{ ...scene.hides[0]!, openings: 2, marks }] };
}

/** The hide as the job's one file holds it. */
async function savedHide(page: Page, path: string): Promise<Hide> {
  await page.locator('.job-name').tap();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the job as one file' }).tap();
  const bundle = parseJobBundle(readFileSync(await (await download).path(), 'utf8'), { file: 'saved' });
  const file = bundle.files.find((each) => each.path === path)!;
  return parseHide(Buffer.from(file.content, file.encoding).toString('utf8'), { file: path });
}

testWith(
  chromiumProgram,
  'when a hide with 25 chalked flaws is photographed with a phone, its first piece is cut after fewer than 60 taps and strokes',
  async () => {
    const photo = await photograph(chalkedScene(), join(folder, 'chalked.jpg'));
    const truth = photo.truth.hides[0]!;
    expect(truth.marks.filter(({ kind }) => kind === 'chalk ring')).toHaveLength(RINGS);
    // What the command finds on the same photo.
    const run = await hideboundHere(['trace', join(folder, 'chalked.jpg'), '--up', 'grain']);
    expect(run.status, run.stderr).toBe(0);
    const command = parseHide(readFileSync(join(folder, 'chalked.hide.json'), 'utf8'), { file: 'command' });

    const [host, browser] = await Promise.all([staticHost(), launchChromium()]);
    try {
      const page = await browser.newPage({
        viewport: { width: 390, height: 780 },
        ...{ hasTouch: true, isMobile: true, deviceScaleFactor: 2, locale: 'en-GB' },
      });
      await page.goto(host.url);
      await page.locator('.marks').waitFor();
      const hand = countedHand(page);
      const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true });

      await hand.tap(button('New hide'));
      await hand.choose(page.locator('input[type=file][capture]'), join(folder, 'chalked.jpg'));
      await hand.tap(button('Grain side'));
      await hand.tap(button('Trace the hide'));
      await page.locator('.hide-use').waitFor({ timeout: 120_000 });
      await hand.tap(button('Use it for body'));

      // Every place that only seems to be a flaw is answered.
      await hand.tap(button('Look through them'));
      const seeming = page.locator('.candidate:not(.core)');
      const notOne = button('Not a flaw');
      await notOne.waitFor();
      while (await notOne.isVisible()) {
        const before = await seeming.count();
        await hand.tap(notOne);
        await expect.poll(() => seeming.count()).toBeLessThan(before);
      }

      await hand.tap(button('Lay'));
      await hand.tap(button('Lay anew'));
      await page.getByText('110 of 110 pieces lie').waitFor({ timeout: 120_000 });
      await hand.tap(button('Stop'));
      await page.locator('.verdict .proven').waitFor({ timeout: 60_000 });

      await hand.tap(button('At the bench'));
      const cut = button('Cut');
      const goOn = button('Done, go on');
      for (;;) {
        await cut.or(goOn).waitFor();
        // A touch sooner after another one is held for the same: no thumb is that fast.
        await page.waitForTimeout(TOUCH_GUARD_MS);
        if (await cut.isVisible()) break;
        await hand.tap(goOn);
      }
      await hand.tap(cut);
      await page.getByText('1 of 110 cut').waitFor();
      console.log(`${hand.done.length} taps and strokes from photo to first cut`);
      expect(hand.done.length).toBeLessThan(60);

      const hide = await savedHide(page, 'chalked.hide.json');
      // The command's own flaws are the least that must have come over; the truth is the simulator's.
      expect(hide.flaws.length).toBe(command.flaws.length);
      const found = judgeTrace(hide, truth).chalk.found;
      expect(found).toBe(judgeTrace(command, truth).chalk.found);
      expect(found).toBe(RINGS);
    } finally {
      await browser.close();
      await host.close();
    }
  },
);
