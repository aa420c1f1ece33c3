import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import {
  composeAffine,
  flattenCurve,
  pointInRing,
  rotationDeg,
  scaling,
  translation,
} from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { parseHide, parseJobBundle, writeHide } from '@hidebound/leather';
import type { Hide, JobBundle } from '@hidebound/leather';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import { chalkRing, judgeTrace, movedHide, setStage, takeShot } from '../camera/index.js';
import { testFolder } from '../cli-support.js';
import { sceneNamed, writePhoto } from '../photo-trace-support.js';
import { chromiumProgram, launchChromium } from '../support/chromium.js';
import { testWith } from '../tools/outside.js';
import { staticHost } from './support/static-host.js';
import type { StaticHost } from './support/static-host.js';
import { keysHand, pointerHand } from './support/walk-hands.js';
import type { WalkHand } from './support/walk-hands.js';

const folder = testFolder();
const at = (name: string): string => join(folder, name);

let host: StaticHost;
let browser: Browser;

beforeAll(async () => {
  if (!chromiumProgram.isThere) return;
  host = await staticHost();
  browser = await launchChromium();
});
afterAll(async () => {
  await browser?.close();
  await host?.close();
});

interface Dropped {
  readonly name: string;
  readonly bytes: Uint8Array;
}

const fileAt = (path: string): Dropped => ({ name: basename(path), bytes: readFileSync(path) });

/** Files dragged from the desktop onto a part of the page. Gives back whether the page takes them. */
async function drop(page: Page, onto: string, files: readonly Dropped[]): Promise<boolean> {
  const raw = files.map(({ name, bytes }) => ({ name, base64: Buffer.from(bytes).toString('base64') }));
  return page.locator(onto).evaluate((element, all) => {
    const dataTransfer = new DataTransfer();
    for (const { name, base64 } of all) {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      dataTransfer.items.add(new File([bytes], name));
    }
    const event = (kind: string): DragEvent =>
      new DragEvent(kind, { bubbles: true, cancelable: true, dataTransfer });
    element.dispatchEvent(event('dragover'));
    // What nobody cancels, the browser opens instead of the page.
    return !element.dispatchEvent(event('drop'));
  }, raw);
}

async function savedJob(page: Page): Promise<JobBundle> {
  await page.locator('.job-name').click();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the job as one file' }).click();
  const bundle = parseJobBundle(readFileSync(await (await download).path(), 'utf8'), { file: 'saved' });
  await page.keyboard.press('Escape');
  return bundle;
}

function fileOf(bundle: JobBundle, path: string): Dropped {
  const file = bundle.files.find((each) => each.path === path)!;
  return { name: path, bytes: Buffer.from(file.content, file.encoding) };
}

/** A hide with a chalked ring on each of its sides, photographed from both; the judge is the simulator. */
async function photographBothSides() {
  const scene = sceneNamed('side-300', 1400);
  const stage = setStage(scene);
  const grain = { ...stage.hides[0]!, marks: [chalkRing({ x: -300, y: -60 }, 90)] };
  const ring = chalkRing({ x: 420, y: -60 }, 80);
  const over = composeAffine(composeAffine(translation(60, -40), rotationDeg(24)), scaling(-1, 1));
  const flesh = movedHide(grain, over, [ring]);
  const sheets = stage.sheets.map(({ laid }) => laid);
  const sheetReach = sheets.flatMap(({ x, y }) => [
    { x: x - 190, y: y - 190 },
    { x: x + 190, y: y + 190 },
  ]);
  const places = [
    [-1000, -620],
    [150, -830],
    [1200, 560],
    [-500, 860],
  ] as const;
  const turned = places.map(([x, y], i) => ({ sheet: i + 1, x, y, turnDeg: 10 * i }));
  const turnedReach = turned.flatMap(({ x, y }) => [
    { x: x - 190, y: y - 190 },
    { x: x + 190, y: y + 190 },
  ]);
  const shot = takeShot({ scene, hide: grain, sheets, sees: [...grain.outline, ...sheetReach] });
  await writePhoto(shot, at('grain.jpg'));
  const fleshScene = {
    ...scene,
    seed: scene.seed + 7,
    hides: [{ ...scene.hides[0]!, colour: 'natural' as const, turnDeg: 190 }],
    view: { ...scene.view, tiltDeg: 7, towardsDeg: 120, rollDeg: 4 },
  };
  const other = takeShot({
    scene: fleshScene,
    hide: flesh,
    sheets: turned,
    sees: [...flesh.outline, ...turnedReach],
  });
  await writePhoto(other, at('flesh.jpg'));
  return { ...grain, marks: [...grain.marks, ring] };
}

testWith(
  chromiumProgram,
  'when photos of both sides of a hide are dropped, both sides’ chalk lies on it, and its file can be dropped elsewhere',
  async () => {
    const truth = await photographBothSides();
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, locale: 'en-GB' });
    await page.goto(host.url);
    await page.locator('.marks').waitFor();

    // The card takes files as the drawing does.
    expect(await drop(page, '.card', [fileAt(at('grain.jpg')), fileAt(at('flesh.jpg'))])).toBe(true);
    const shows = page.getByLabel('It shows');
    await shows.nth(1).waitFor();
    await page.getByRole('button', { name: 'Grain side', exact: true }).click();
    const trace = page.getByRole('button', { name: 'Trace the hide', exact: true });
    await shows.nth(0).selectOption('raking');
    await shows.nth(1).selectOption('its other side, turned over');
    await page.getByText('One photo has to show the hide as it lies.').waitFor();
    expect(await trace.isDisabled()).toBe(true);
    await shows.nth(0).selectOption('the hide as it lies, or a part of it');
    // Photos that are worked on are not thrown away by what is dropped next.
    await drop(page, '.drawing', [{ name: 'other.hide.json', bytes: new Uint8Array() }]);
    await page.getByText('Trace or leave what lies on the table first').waitFor();
    await trace.click();
    await page.locator('.hide-use').waitFor({ timeout: 120_000 });
    const job = await savedJob(page);
    const hide = parseHide(Buffer.from(fileOf(job, 'grain.hide.json').bytes).toString('utf8'), {
      file: 'grain',
    });
    expect(hide.photo).toMatchObject({ takenFrom: ['grain.jpg', 'flesh.jpg'], otherSide: ['flesh.jpg'] });
    expect(hide.flaws.map(({ side }) => side)).toEqual(['grain', 'flesh']);
    const judged = judgeTrace(hide, truth);
    expect(judged.chalk.found).toBe(2);
    expect(judged.medianMm).toBeLessThan(1);
    // What is true of both photos is told once.
    expect(await page.getByText('Nobody said how long the two lines').count()).toBe(1);

    // What may be a flaw is answered by a key each, with nothing else in hand.
    const possible = page.locator('.candidate:not(.core)');
    const seeming = await possible.count();
    expect(seeming).toBe(hide.candidates.length);
    await page.locator('.stage').focus();
    await page.keyboard.press('c');
    await page.getByRole('button', { name: /^A flaw/ }).waitFor();
    await page.keyboard.press('y');
    await page.locator('header button[title="Undo: flaw from the photo"]').waitFor();
    await expect.poll(() => possible.count()).toBe(seeming - 1);
    await page.keyboard.press('Control+z');
    await expect.poll(() => possible.count()).toBe(seeming);
    await page.keyboard.press('Escape');

    // The area stands beside the invoice as soon as that is told, whatever tool is in hand.
    await page.getByRole('button', { name: 'What does the invoice say?' }).click();
    await page.locator('#hide-invoiced:focus').waitFor();
    await page.keyboard.type(String((hide.area.measuredMm2! / 10_000) * 1.25));
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Zones', exact: true }).click();
    await page.getByText('20% less than invoiced').waitFor();

    // A hide file comes in with its picture; the same one twice is the same hide; another one with its name gets its own.
    const straight = fileOf(job, 'grain.straight.jpg');
    const written = Buffer.from(fileOf(job, 'grain.hide.json').bytes).toString('utf8');
    const again = { name: 'grain.hide.json', bytes: Buffer.from(written) };
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await drop(page, '.drawing', [again, straight]);
    await page.getByText('grain is in this job already.').waitFor();
    const other = { name: 'grain.hide.json', bytes: Buffer.from(writeHide({ ...hide, lot: 'another' })) };
    await drop(page, '.card', [other, straight, { name: 'holiday.jpg', bytes: straight.bytes }]);
    await page
      .getByText('Another hide of this job is called grain, so this one is called grain-2.')
      .waitFor();
    await page.getByText('holiday.jpg belongs to no hide file here and was left out').waitFor();
    await page.locator('.stage img[src^="blob:"]').waitFor();
    const { files } = await savedJob(page);
    expect(files.map(({ path }) => path)).toEqual(
      expect.arrayContaining(['grain-2.hide.json', 'grain-2.straight.jpg']),
    );

    // Where nothing takes files, the browser does not open them in place of the app.
    await page.getByRole('button', { name: 'Lay', exact: true }).click();
    await page.locator('.verdict').waitFor();
    expect(await drop(page, '.card', [again])).toBe(true);
    await page.locator('.verdict').waitFor();
    await page.close();
  },
);

/** What a hand does on the drawing, and on the buttons beside it. */
type DrawingHand = Pick<WalkHand, 'press' | 'tap' | 'draw'>;

/**
 * One finger. Its stroke is told frame by frame, as a touch screen reports it, and comes to rest before it is lifted: after
 * a flick the browser takes the next tap for the wish to stop what glides.
 */
async function fingerHand(page: Page): Promise<DrawingHand> {
  const cdp = await page.context().newCDPSession(page);
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', touchPoints: readonly Point[]) =>
    cdp.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: touchPoints.map(({ x, y }) => ({ x, y, id: 1 })),
    });
  const STEPS = 8;
  const RESTS = 6;
  const frame = () => page.evaluate(() => new Promise((shown) => requestAnimationFrame(shown)));
  const moveTo = async (place: Point): Promise<void> => {
    await send('touchMove', [place]);
    await frame();
  };
  return {
    press: (control) => control.tap(),
    tap: ({ x, y }) => page.touchscreen.tap(x, y),
    draw: async ([first, ...rest]) => {
      await send('touchStart', [first!]);
      let from = first!;
      for (const to of rest) {
        for (let i = 1; i <= STEPS; i++) {
          const share = i / STEPS;
          await moveTo({ x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) });
        }
        from = to;
      }
      for (let i = 0; i < RESTS; i++) await moveTo({ x: from.x + (i % 2), y: from.y });
      await send('touchEnd', []);
    },
  };
}

/** From px of the window to mm of the hide, by the browser's own matrix. */
async function placesOn(page: Page): Promise<(at: Point) => Point> {
  const { a, b, c, d, e, f } = await page.locator('.hide-outline').evaluate((outline) => {
    const matrix = (outline as SVGGraphicsElement).getScreenCTM()!.inverse();
    return { a: matrix.a, b: matrix.b, c: matrix.c, d: matrix.d, e: matrix.e, f: matrix.f };
  });
  return ({ x, y }) => ({ x: a * x + c * y + e, y: b * x + d * y + f });
}

const farApart = (one: Point, other: Point): number => Math.hypot(one.x - other.x, one.y - other.y);

testWith(
  chromiumProgram,
  'when zones are painted, directions drawn, thicknesses tapped and the edge pushed, mouse, finger and keys do the same',
  async () => {
    const page = await browser.newPage({
      viewport: { width: 1280, height: 800 },
      hasTouch: true,
      locale: 'en-GB',
    });
    await page.goto(host.url);
    await page.locator('.hide-outline').waitFor({ state: 'attached' });
    const { x: left, y: top, width, height } = (await page.locator('.stage').boundingBox())!;
    const at = (x: number, y: number): Point => ({ x: left + width * x, y: top + height * y });
    const button = (name: string) => page.getByRole('button', { name, exact: true });
    // The back of the demo's side is squared: a straight edge above.
    const backbone = await page
      .locator('.hide-outline')
      .evaluate((outline) => outline.getBoundingClientRect().top);
    const placeOn = await placesOn(page);
    const said = (words: string) => page.locator(`header button[title="Undo: ${words}"]`).waitFor();
    const area = page.locator('.hide-list > summary > span');
    const hands: readonly DrawingHand[] = [pointerHand(page), await fingerHand(page), keysHand(page)];
    const kinds = ['Flank', 'Neck', 'Shank'] as const;
    const done: { readonly zone: Point; readonly from: Point; readonly to: Point; readonly gauge: Point }[] =
      [];
    for (const [i, hand] of hands.entries()) {
      const down = 0.06 * i;
      const [zoneFrom, zoneTo] = [at(0.45, 0.34 + down), at(0.55, 0.34 + down)];
      const [from, to] = [at(0.3, 0.52 + down / 2), at(0.42, 0.52 + down / 2)];
      const gauge = at(0.2, 0.42 + down);
      await hand.press(button('Zones'));
      await hand.press(button(kinds[i]!));
      await hand.press(button('Paint'));
      await hand.draw([zoneFrom, zoneTo]);
      await said('zone painted');
      await hand.press(button('Backbone'));
      await hand.press(button('Stretches least'));
      await hand.draw([from, to]);
      await said('direction drawn');
      await hand.press(button('Thickness'));
      await hand.tap(gauge);
      await page.locator('#thickness-here:focus').waitFor();
      await page.keyboard.type(`2.${i + 1}`);
      await page.keyboard.press('Enter');
      await said('thickness noted');
      await hand.press(button('Edge'));
      await hand.press(button('Push'));
      const before = await area.innerText();
      const { x } = at(0.35 + 0.12 * i, 0);
      await hand.draw([
        { x, y: backbone + 14 },
        { x, y: backbone - 16 },
      ]);
      await said('edge pushed');
      await expect.poll(() => area.innerText()).not.toBe(before);
      await hand.press(button('Edge'));
      done.push({
        zone: placeOn({ x: (zoneFrom.x + zoneTo.x) / 2, y: zoneFrom.y }),
        from: placeOn(from),
        to: placeOn(to),
        gauge: placeOn(gauge),
      });
    }

    const job = await savedJob(page);
    const path = 'side.hide.json';
    const hide = parseHide(Buffer.from(fileOf(job, path).bytes).toString('utf8'), { file: path });
    // The cross of the keys comes within half of its steps of 10 px; a finger's stroke begins a few px late.
    const nearMm = 8 * farApart(placeOn({ x: 0, y: 0 }), placeOn({ x: 1, y: 0 }));
    for (const [i, { zone, from, to, gauge }] of done.entries()) {
      const painted = hide.zones.filter(({ kind }) => kind === kinds[i]!.toLowerCase());
      const holds = ({ outline }: Hide['zones'][number]): boolean =>
        pointInRing(zone, flattenCurve(outline).slice(0, -1)) === 'inside';
      expect(painted.filter(holds)).toHaveLength(1);
      const line = hide.tightness.at(i - hands.length)!;
      expect(farApart(line[0]!, from)).toBeLessThan(nearMm);
      expect(farApart(line.at(-1)!, to)).toBeLessThan(nearMm);
      const reading = hide.leather.readings.at(i - hands.length)!;
      expect(reading.mm).toBe((20 + i + 1) / 10);
      expect(farApart(reading.at, gauge)).toBeLessThan(nearMm);
    }
    await page.close();
  },
);
