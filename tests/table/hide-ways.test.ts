import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { composeAffine, rotationDeg, scaling, translation } from '@hidebound/geometry';
import { parseHide, parseJobBundle, writeHide } from '@hidebound/leather';
import type { JobBundle } from '@hidebound/leather';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import { chalkRing, judgeTrace, movedHide, setStage, takeShot } from '../camera/index.js';
import { testFolder } from '../cli-support.js';
import { sceneNamed, writePhoto } from '../photo-trace-support.js';
import { chromiumProgram, launchChromium } from '../support/chromium.js';
import { testWith } from '../tools/outside.js';
import { staticHost } from './support/static-host.js';
import type { StaticHost } from './support/static-host.js';

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
  const scene = sceneNamed('side-300', 1600);
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
