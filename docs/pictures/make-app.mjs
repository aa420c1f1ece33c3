/**
 * Makes the pictures of the app anew, from the built app and the demo's files:
 *
 *     pnpm build && node docs/pictures/make-app.mjs [hide] [flaw] [pieces] [lay] [make] [bench] [phone-hide] …
 *
 * Chromium has to be there (Debian's package `chromium`).
 */
import { spawn } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';

const FOLDER = dirname(fileURLToPath(import.meta.url));
const ROOT = join(FOLDER, '..', '..');
const MAIN = join(ROOT, 'packages', 'cli', 'dist', 'main.js');
const DEMO = join(ROOT, 'fixtures', 'demo');

const WIDE = { viewport: { width: 1280, height: 800 } };
const PHONE = {
  viewport: { width: 390, height: 780 },
  hasTouch: true,
  isMobile: true,
  deviceScaleFactor: 1.5,
};
/** Until the last drawing rests; what is waited for otherwise is waited for by its words. */
const REST_MS = 1500;

const goTo = (name) => async (page) => {
  await page.getByRole('navigation').getByRole('button', { name, exact: true }).click();
  // Off the button, which looks otherwise below a pointer.
  await page.mouse.move(600, 20);
  await page.waitForTimeout(REST_MS);
};

const PICTURES = {
  hide: { on: WIDE, steps: [goTo('Hide')] },
  pieces: { on: WIDE, steps: [goTo('Pieces')] },
  lay: {
    on: WIDE,
    steps: [goTo('Lay'), (page) => page.waitForTimeout(4 * REST_MS), (page) => page.waitForTimeout(REST_MS)],
  },
  make: { on: WIDE, steps: [goTo('Make')] },
  bench: { on: WIDE, steps: [goTo('At the bench')] },
  'phone-hide': { on: PHONE, steps: [goTo('Hide')] },
  'phone-lay': { on: PHONE, steps: [goTo('Lay'), (page) => page.waitForTimeout(4 * REST_MS)] },
  'phone-bench': { on: PHONE, steps: [goTo('At the bench')] },
  // The last one: it changes the hide.
  flaw: {
    on: WIDE,
    steps: [
      goTo('Hide'),
      (page) => page.getByRole('button', { name: 'Flaws', exact: true }).click(),
      (page) => page.mouse.click(430, 375),
      (page) => page.waitForTimeout(REST_MS),
    ],
  },
};

const work = mkdtempSync(join(tmpdir(), 'hidebound-app-'));
const folder = join(work, 'Bicycle goods');
cpSync(DEMO, folder, {
  recursive: true,
  filter: (path) => !/\/make(\/|$)|bought-patterns|shoulder-traced/.test(path),
});

const asked = process.argv.slice(2);
const names = asked.length === 0 ? Object.keys(PICTURES) : asked;
const table = spawn(process.execPath, [MAIN, 'table', folder, '--json'], {
  stdio: ['ignore', 'pipe', 'inherit'],
});
try {
  const { address } = JSON.parse(await firstLine(table.stdout));
  const browser = await chromium.launch({
    executablePath: '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--no-first-run'],
  });
  for (const name of names) await take(browser, address, name, PICTURES[name]);
  await browser.close();
} finally {
  table.kill('SIGTERM');
  rmSync(work, { recursive: true, force: true });
}

async function take(browser, address, name, { on, steps }) {
  const context = await browser.newContext({
    ...on,
    locale: 'en-GB',
    colorScheme: 'light',
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  await page.goto(address);
  await page.getByText('Saved', { exact: true }).waitFor();
  await page.waitForTimeout(REST_MS);
  for (const step of steps) await step(page);
  const file = join(FOLDER, `app-${name}.png`);
  writeFileSync(file, await page.screenshot());
  console.log(`${relative(ROOT, file)}  ${Math.round(statSync(file).size / 1024)} kB`);
  await context.close();
}

function firstLine(stream) {
  return new Promise((resolve, reject) => {
    let text = '';
    stream.on('data', (chunk) => {
      text += chunk;
      if (text.includes('\n')) resolve(text.split('\n')[0]);
    });
    stream.on('end', () => reject(new Error('The table ended before it told its address.')));
  });
}
