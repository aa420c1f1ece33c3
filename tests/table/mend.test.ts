import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { curveArea, flattenCurve, pointInRing } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { MARKER_BLOCK_MM, parseHide, parseJobBundle, parsePhotoHints } from '@hidebound/leather';
import type { Hide, PhotoHints } from '@hidebound/leather';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import { judgeTrace } from '../camera/index.js';
import type { SimulatedPhoto } from '../camera/index.js';
import { testFolder } from '../cli-support.js';
import { withoutSheets, writePhoto } from '../photo-trace-support.js';
import { chromiumProgram, launchChromium } from '../support/chromium.js';
import { testWith } from '../tools/outside.js';
import { photographSmallHide } from './support/small-hide.js';
import { staticHost } from './support/static-host.js';
import type { StaticHost } from './support/static-host.js';

const PHOTO = join(testFolder(), 'skin.jpg');
let host: StaticHost;
let browser: Browser;
let photo: SimulatedPhoto;

beforeAll(async () => {
  if (!chromiumProgram.isThere) return;
  photo = withoutCodes(withoutSheets(await photographSmallHide(PHOTO), (sheet) => sheet > 1));
  await writePhoto(photo, PHOTO);
  [host, browser] = await Promise.all([staticHost(), launchChromium()]);
});
afterAll(async () => {
  await browser?.close();
  await host?.close();
});

/** The markers of its sheets filled with black: their corners are seen, what sheet it is can't be read. */
function withoutCodes(from: SimulatedPhoto): SimulatedPhoto {
  const rgb = from.rgb.slice();
  for (const { corners } of from.truth.sheets.flatMap(({ cornersPx }) => cornersPx)) {
    const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
    for (let y = Math.floor(Math.min(...ys)); y <= Math.max(...ys); y++)
      for (let x = Math.floor(Math.min(...xs)); x <= Math.max(...xs); x++)
        if (pointInRing({ x, y }, corners) !== 'outside')
          rgb.fill(20, (y * from.width + x) * 3, (y * from.width + x + 1) * 3);
  }
  return { ...from, rgb };
}

/** Wrong by so much, a stroke of leather would lie on the floor. */
const STROKE_OFF_MM = 30;

const press = (page: Page, name: string): Promise<void> =>
  page.getByRole('button', { name, exact: true }).click();

/** From places of the picture below the drawing, as shares of its sides, to the page. */
async function placesOnPicture(page: Page): Promise<(x: number, y: number) => Point> {
  const box = (await page.locator('.stage-photo').boundingBox())!;
  return (x, y) => ({ x: box.x + x * box.width, y: box.y + y * box.height });
}

async function stroke(page: Page, from: Point, to: Point): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y, { steps: 6 });
  await page.mouse.up();
}

/** The outer corners of what is printed on a sheet, px of the photo: top left, top right, bottom right, bottom left. */
function blockOf(sheet: SimulatedPhoto['truth']['sheets'][number]): readonly Point[] {
  return [0, 1, 3, 2].map((place, i) => sheet.cornersPx.find((each) => each.place === place)!.corners[i]!);
}

async function savedHide(
  page: Page,
): Promise<{ readonly hide: Hide; readonly hints: PhotoHints | undefined }> {
  await page.locator('.job-name').click();
  const download = page.waitForEvent('download');
  await press(page, 'Save the job as one file');
  const { files } = parseJobBundle(readFileSync(await (await download).path(), 'utf8'), { file: 'saved' });
  await page.keyboard.press('Escape');
  const textOf = (name: string) => files.find(({ path }) => path === name)?.content;
  const hints = textOf('skin.hints.yaml');
  return {
    hide: parseHide(textOf('skin.hide.json')!, { file: 'skin' }),
    hints: hints === undefined ? undefined : parsePhotoHints(hints, { file: 'hints' }),
  };
}

testWith(
  chromiumProgram,
  'when a sheet is given as a rectangle by its corners, the hide has its scale; when strokes and a place on the edge mend it, they reach the photo',
  async () => {
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, locale: 'en-GB' });
    await page.goto(host.url);
    await press(page, 'New hide');
    await page.getByLabel('Choose photos').setInputFiles(PHOTO);
    await press(page, 'Grain side');
    await press(page, 'A rectangle');
    await page.getByLabel('Across').fill(String(MARKER_BLOCK_MM.width));
    await page.getByLabel('Down').fill(String(MARKER_BLOCK_MM.height));
    await page.keyboard.press('Enter');
    const onPhoto = await placesOnPicture(page);
    const places = [
      [0.25, 0.25],
      [0.75, 0.25],
      [0.75, 0.75],
      [0.25, 0.75],
    ] as const;
    const corners = blockOf(photo.truth.sheets[0]!);
    for (const [i, [x, y]] of places.entries()) {
      const corner = corners[i]!;
      await stroke(page, onPhoto(x, y), onPhoto(corner.x / photo.width, corner.y / photo.height));
    }
    await press(page, 'Trace the hide');
    await page.locator('.hide-figures').waitFor({ timeout: 120_000 });
    const before = (await savedHide(page)).hide;
    const { scaledBy, areaErrorShare, pxPerMm, origin } = before.photo!;
    expect(scaledBy).toBe('rectangle');
    // The judge is the scene. A rectangle of a sheet's size beside a whole skin tells little, and says so.
    const { areaError } = judgeTrace(before, photo.truth.hides[0]!);
    expect(Math.abs(areaError)).toBeLessThan(areaErrorShare!);
    expect(areaErrorShare).toBeLessThan(0.15);

    const mend = page.getByRole('button', { name: 'Mend the edge', exact: true });
    if (!(await mend.isVisible())) await page.getByText('What the photo tells').click();
    await mend.click();
    await page.getByRole('heading', { name: 'Mend the edge' }).waitFor();
    const picture = await page.locator('.stage-photo').evaluate((image: HTMLImageElement) => ({
      width: image.naturalWidth,
      height: image.naturalHeight,
    }));
    const onPicture = await placesOnPicture(page);
    const seen = ({ x, y }: Point): Point =>
      onPicture(((x - origin.x) * pxPerMm) / picture.width, ((y - origin.y) * pxPerMm) / picture.height);
    // At the part that reaches farthest to the right: leather within, floor without, and where the edge runs.
    const [right] = [...flattenCurve(before.outline, 0.5)].sort((a, b) => b.x - a.x);
    const beside = (dx: number, dy: number): Point => seen({ x: right!.x + dx, y: right!.y + dy });
    await press(page, 'Leather');
    await stroke(page, beside(-STROKE_OFF_MM, -15), beside(-STROKE_OFF_MM, 15));
    await press(page, 'Floor');
    await stroke(page, beside(STROKE_OFF_MM, -15), beside(STROKE_OFF_MM, 15));
    await press(page, 'On the edge');
    await page.mouse.click(beside(0, 0).x, beside(0, 0).y);
    await page.getByText('3 strokes and places are drawn.').waitFor();
    await press(page, 'Trace again');
    await page.getByRole('button', { name: 'Done', exact: true }).click({ timeout: 120_000 });

    const { hide: after, hints } = await savedHide(page);
    const { hideStrokes, floorStrokes, edgePoints } = hints!.photos[0]!;
    expect([hideStrokes.length, floorStrokes.length, edgePoints.length]).toEqual([1, 1, 1]);
    const areaOf = (hide: Hide) => Math.abs(curveArea(hide.outline));
    expect(areaOf(after) / areaOf(before)).toBeCloseTo(1, 2);
    const nearest = Math.min(
      ...flattenCurve(after.outline, 0.5).map(({ x, y }) => Math.hypot(x - right!.x, y - right!.y)),
    );
    expect(nearest).toBeLessThan(6);
    await page.close();
  },
);
