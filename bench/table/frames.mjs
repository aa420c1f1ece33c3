// What a frame of the app's drawing costs, by the browser's own trace: a job of 300 pieces on a hide of 2,000 corners
// over a photo of 12 million pixels is panned, zoomed and dragged. And what the first view loads, and how soon it is there.
//   node bench/table/frames.mjs [--site FOLDER] [--place hide|lay|bench] [--runs 3] [--locale de-DE]
// Build the app before (npm run build).
import { gzipSync } from 'node:zlib';
import { join } from 'node:path';
import { PICTURE, bigJob } from './big-job.mjs';
import { drawPhoto, openBrowser } from './browser.mjs';
import { serve } from './serve.mjs';
import { framesOf, percentile } from './trace.mjs';

const option = (name, fallback) => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? fallback : process.argv[at + 1];
};
const SITE = option('site', join(import.meta.dirname, '../../packages/app/dist/site'));
const PLACE_KEYS = { hide: '1', pieces: '2', lay: '3', make: '4', bench: '5' };
const SIZE = { width: 1440, height: 900 };
const CATEGORIES = [
  'devtools.timeline',
  'disabled-by-default-devtools.timeline',
  'devtools.timeline.frame',
  'disabled-by-default-devtools.timeline.frame',
  'blink',
  'v8',
  'cc',
];

const browser = await openBrowser();
const photo = await drawPhoto(browser, PICTURE);
const job = bigJob(photo);
console.log(
  `${job.pieces} pieces, ${job.corners} corners, ${job.flaws} marks, photo of ${PICTURE.width} × ${PICTURE.height} (${(photo.length / 1e6).toFixed(1)} MB); window ${SIZE.width} × ${SIZE.height}`,
);
const big = await serve(SITE, { 'demo.job.json': job.text });
const plain = await serve(SITE, {});
try {
  await firstView(plain);
  await frames(big);
} finally {
  await browser.close();
  await Promise.all([big.close(), plain.close()]);
}

/** From the navigation to the first drawing of the demo job, and the bytes of it; the median of some first visits. */
async function firstView(host) {
  const times = [];
  const runs = Number(option('runs', '3'));
  for (let i = 0; i < runs; i++) {
    host.served.length = 0;
    const locale = option('locale', 'en-GB');
    const context = await browser.newContext({ viewport: SIZE, serviceWorkers: 'block', locale });
    const page = await context.newPage();
    await page.addInitScript(watchFirstDrawing);
    await page.goto(host.url);
    times.push(await until(page, () => globalThis.firstDrawingMs));
    await context.close();
  }
  const bytes = host.served.map(({ name, content }) => ({ name, gzip: gzipSync(content).length }));
  const sum = bytes.reduce((total, { gzip }) => total + gzip, 0);
  console.log(
    `first view: ${percentile(times, 0.5).toFixed(0)} ms (${times.map((ms) => ms.toFixed(0)).join(', ')}); ${(sum / 1000).toFixed(0)} kB gzip in ${bytes.length} files`,
  );
  for (const { name, gzip } of bytes) console.log(`  ${(gzip / 1000).toFixed(1).padStart(7)} kB ${name}`);
}

/** In the page: the moment when a path first stands in the drawing, after the frame that shows it. */
function watchFirstDrawing() {
  const look = () => {
    const path = document.querySelector('.stage-drawing path');
    if (path === null) requestAnimationFrame(look);
    else requestAnimationFrame(() => setTimeout(() => (globalThis.firstDrawingMs = performance.now())));
  };
  requestAnimationFrame(look);
}

async function frames(host) {
  const page = await browser.newPage({ viewport: SIZE, serviceWorkers: 'block' });
  await page.goto(host.url);
  await page.waitForSelector('.stage');
  const place = option('place', 'lay');
  await page.keyboard.press(PLACE_KEYS[place]);
  await until(page, () => document.querySelectorAll('.stage-drawing path').length > 2 || undefined);
  await page.waitForTimeout(2500);
  const found = await page.evaluate(
    () =>
      `${document.querySelectorAll('[data-kind=piece]').length} pieces, ${document.querySelectorAll('.stage-drawing *').length} elements drawn, photo ${document.querySelector('.stage-photo')?.naturalWidth ?? 0} wide`,
  );
  console.log(`at "${place}": ${found}`);
  const stage = await page.locator('.stage').boundingBox();
  const middle = { x: stage.x + stage.width / 2, y: stage.y + stage.height / 2 };
  const acts = { pan: () => pan(page, stage), zoom: () => zoom(page, middle), drag: () => drag(page) };
  console.log(
    'per frame, ms (95th percentile / max)   script+style+layout   script   style   layout   paint   raster',
  );
  for (const [name, act] of Object.entries(acts)) {
    await browser.startTracing(page, { categories: CATEGORIES });
    await act();
    const trace = framesOf(await browser.stopTracing());
    const show = (values) => `${percentile(values, 0.95).toFixed(1)} / ${Math.max(...values).toFixed(1)}`;
    console.log(
      `${name.padEnd(6)} ${String(trace.count).padStart(4)} frames   ${['work', 'script', 'style', 'layout', 'paint', 'raster'].map((part) => show(trace[part]).padStart(13)).join(' ')}`,
    );
  }
  await page.close();
}

/** From an empty corner of the drawing, so that no piece is taken along. */
async function pan(page, { x, y, width, height }) {
  await page.mouse.move(x + 12, y + height - 12);
  await page.mouse.down({ button: 'middle' });
  for (let i = 0; i <= 90; i++)
    await page.mouse.move(x + 12 + (width / 3) * Math.sin(i / 12), y + height - 12 - (i * height) / 200);
  await page.mouse.up({ button: 'middle' });
}

async function zoom(page, { x, y }) {
  await page.mouse.move(x, y);
  for (let i = 0; i < 80; i++) await page.mouse.wheel(0, i < 40 ? -60 : 60);
}

/** The piece nearest to the middle of what is seen is taken along. */
async function drag(page) {
  const at = await page.evaluate(() => {
    const { left, top, width, height } = document.querySelector('.stage').getBoundingClientRect();
    for (let i = 0; i < 4000; i++) {
      const angle = i * 2.4;
      const x = left + width / 2 + Math.sqrt(i) * 3 * Math.cos(angle);
      const y = top + height / 2 + Math.sqrt(i) * 3 * Math.sin(angle);
      if (document.elementFromPoint(x, y)?.closest('[data-kind=piece]')) return { x, y };
    }
    return { x: left + width / 2, y: top + height / 2 };
  });
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  for (let i = 0; i <= 90; i++)
    await page.mouse.move(at.x + 80 * Math.sin(i / 10), at.y + 60 * Math.sin(i / 7));
  await page.mouse.up();
}

/** What the page answers, as soon as it answers; its content policy lets no text be run as a condition there. */
async function until(page, ask) {
  for (let i = 0; i < 1200; i++) {
    const answer = await page.evaluate(ask);
    if (answer !== undefined) return answer;
    await page.waitForTimeout(50);
  }
  throw new Error('The app drew nothing within a minute.');
}
