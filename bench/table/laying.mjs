// Whether a run of laying keeps the page from answering: the page's own thread is traced from the start of a run to its
// end, while a pointer moves over the drawing. Every task there is listed by its time on the clock and on the processor,
// and how long each movement of the pointer waited for its answer.
//   node bench/table/laying.mjs [--site FOLDER] [--seconds 20] [--big]
// Build the app before (npm run build). With --big, 300 pieces on a hide of 2,000 corners in place of the demo.
import { join } from 'node:path';
import { PICTURE, bigJob } from './big-job.mjs';
import { drawPhoto, openBrowser } from './browser.mjs';
import { serve } from './serve.mjs';
import { percentile, tasksOf } from './trace.mjs';

const option = (name, fallback) => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? fallback : process.argv[at + 1];
};
const SITE = option('site', join(import.meta.dirname, '../../packages/app/dist/site'));
const SECONDS = Number(option('seconds', '20'));
const LIMIT_MS = 50;
const CATEGORIES = [
  'toplevel',
  'devtools.timeline',
  'disabled-by-default-devtools.timeline',
  'devtools.timeline.frame',
];

const browser = await openBrowser();
const instead = process.argv.includes('--big')
  ? { 'demo.job.json': bigJob(await drawPhoto(browser, PICTURE)).text }
  : {};
const host = await serve(SITE, instead);
try {
  const page = await browser.newPage({
    viewport: { width: 1440, height: 900 },
    locale: 'en-GB',
    serviceWorkers: 'block',
  });
  await page.addInitScript(watchWaits);
  await page.goto(host.url);
  await page.getByRole('button', { name: 'Lay', exact: true }).click();
  await page.locator('.piece').first().waitFor();
  await page.locator('.verdict .proven').waitFor({ timeout: 120_000 });
  await page.waitForTimeout(1000);
  await browser.startTracing(page, { categories: CATEGORIES });
  await page
    .getByRole('button', { name: /^Lay anew|^Lay the/ })
    .first()
    .click();
  const stage = await page.locator('.stage').boundingBox();
  const until = performance.now() + SECONDS * 1000;
  for (let i = 0; performance.now() < until; i++)
    await page.mouse.move(
      stage.x + stage.width * (0.5 + 0.3 * Math.sin(i / 9)),
      stage.y + stage.height * (0.5 + 0.3 * Math.cos(i / 7)),
    );
  await page.getByRole('button', { name: /^Stop/ }).first().click();
  await page.locator('.verdict .proven').waitFor({ timeout: 120_000 });
  const tasks = tasksOf(await browser.stopTracing());
  const waits = await page.evaluate(() => globalThis.waitsMs);
  report(tasks, waits);
} finally {
  await browser.close();
  await host.close();
}

function report(tasks, waits) {
  const long = tasks.filter(({ clockMs }) => clockMs > LIMIT_MS);
  const most = (values) => Math.max(0, ...values).toFixed(1);
  console.log(
    `${tasks.length} tasks of the page's thread: ${long.length} over ${LIMIT_MS} ms by the clock, longest ${most(tasks.map((task) => task.clockMs))} ms; most processor time of one ${most(tasks.map((task) => task.processorMs))} ms`,
  );
  for (const { atS, clockMs, processorMs } of long)
    console.log(
      `  at ${atS.toFixed(1)} s: ${clockMs.toFixed(1)} ms by the clock, ${processorMs.toFixed(1)} ms of the processor`,
    );
  console.log(
    `${waits.length} movements of the pointer waited for the page: 95th percentile ${percentile(waits, 0.95).toFixed(1)} ms, longest ${most(waits)} ms`,
  );
}

/** In the page: from the moment of each movement to the moment in which the page hears of it. */
function watchWaits() {
  globalThis.waitsMs = [];
  addEventListener('pointermove', (event) => globalThis.waitsMs.push(performance.now() - event.timeStamp), {
    capture: true,
  });
}
