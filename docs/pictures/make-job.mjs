/**
 * Makes the pictures of the README's tour anew, from the built packages and the demo's files:
 *
 *     pnpm build && node docs/pictures/make-job.mjs [buying] [preparing] [cost] [stock]
 *
 * Layout and trials are made with a fixed amount of work, so that the same version gives the same pictures.
 */
import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Resvg } from '@resvg/resvg-js';
import { writePalettePng } from './palette-png.mjs';

const FOLDER = dirname(fileURLToPath(import.meta.url));
const ROOT = join(FOLDER, '..', '..');
const MAIN = join(ROOT, 'packages', 'cli', 'dist', 'main.js');

const WIDTH_PX = 900;
const COLOURS = 32;
const EFFORT = '2';
const TRIALS = '10';
const A4_WIDTH_MM = 210;

/** What is shown of a page: which one of them, and from where to where, mm from its top. */
const PICTURES = {
  buying: { page: 1, from: 8, to: 205 },
  preparing: { page: 2, from: 8, to: 157 },
  cost: { page: 1, from: 8, to: 236 },
  stock: { page: 1, from: 8, to: 182 },
};

const work = mkdtempSync(join(tmpdir(), 'hidebound-job-'));
// Names as in that folder: pages print some of them.
const order = 'bicycle-goods.order.yaml';
const layout = 'bicycle-goods.layout.json';
const stock = 'stock';
const COMMANDS = {
  buying: () => ['buy', order, '--trials', TRIALS],
  preparing: () => ['prepare', layout],
  cost: () => ['cost', layout],
  stock: () => ['offcuts', stock],
};

function hidebound(...args) {
  execFileSync(process.execPath, [MAIN, ...args], { cwd: work, stdio: ['ignore', 'ignore', 'ignore'] });
}

/** The fonts that pages are set in, as they come with the package that draws them. */
function fontFiles() {
  const { resolve } = createRequire(join(ROOT, 'packages', 'render', 'package.json'));
  const names = ['DejaVuSans', 'DejaVuSans-Bold', 'DejaVuSansCondensed', 'DejaVuSansCondensed-Bold'];
  return names.map((name) => resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`));
}

function draw(name) {
  const { page, from, to } = PICTURES[name];
  hidebound(...COMMANDS[name](), '--page-svg', join(work, `${name}.svg`));
  const files = [`${name}.${page}.svg`, `${name}.svg`].map((file) => join(work, file));
  const svg = readFileSync(files.find(existsSync), 'utf8').replace(
    /width="[^"]*" height="[^"]*" viewBox="[^"]*"/,
    `width="${A4_WIDTH_MM}mm" height="${to - from}mm" viewBox="0 ${from} ${A4_WIDTH_MM} ${to - from}"`,
  );
  const image = new Resvg(svg, {
    fitTo: { mode: 'width', value: WIDTH_PX },
    background: '#ffffff',
    font: { fontFiles: fontFiles(), loadSystemFonts: false },
  }).render();
  const png = writePalettePng(image, COLOURS);
  const target = join(FOLDER, `job-${name}.png`);
  writeFileSync(target, png);
  console.log(`${relative(process.cwd(), target)}: ${Math.round(png.length / 1000)} kB`);
}

const asked = process.argv.slice(2);
try {
  cpSync(join(ROOT, 'fixtures', 'demo'), work, { recursive: true });
  mkdirSync(join(work, stock));
  for (const name of ['side', 'shoulder', 'bend']) {
    cpSync(join(work, `${name}.hide.json`), join(work, stock, `${name}.hide.json`));
  }
  hidebound('lay', order, '--effort', EFFORT, '--out', layout);
  hidebound('offcuts', stock, '--take', layout);
  for (const name of Object.keys(PICTURES)) if (asked.length === 0 || asked.includes(name)) draw(name);
} finally {
  rmSync(work, { recursive: true, force: true });
}
