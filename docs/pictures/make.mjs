/**
 * Makes the pictures of the documentation anew, from the built packages and the demo's files:
 *
 *     pnpm build && node docs/pictures/make.mjs
 *
 * The layout is made with a fixed seed and a fixed amount of work, so that the same version gives the same picture.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Resvg } from '@resvg/resvg-js';
import { writePalettePng } from './palette-png.mjs';

const FOLDER = dirname(fileURLToPath(import.meta.url));
const ROOT = join(FOLDER, '..', '..');
const ORDER = join(ROOT, 'fixtures', 'demo', 'bicycle-goods.order.yaml');
const MAIN = join(ROOT, 'packages', 'cli', 'dist', 'main.js');

const SEED = '1';
const EFFORT = '6';
const WIDTH_PX = 1400;
/** Enough for smooth letters, and for the rarest colours that mean something. A palette holds 256. */
const COLOURS = 224;

/** The fonts that sheets are set in, as they come with the package that draws them. */
function fontFiles() {
  const { resolve } = createRequire(join(ROOT, 'packages', 'render', 'package.json'));
  const names = ['DejaVuSans', 'DejaVuSans-Bold', 'DejaVuSansCondensed', 'DejaVuSansCondensed-Bold'];
  return names.map((name) => resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`));
}

function hidebound(...args) {
  execFileSync(process.execPath, [MAIN, ...args], { stdio: ['ignore', 'ignore', 'inherit'] });
}

function toPng(svg) {
  const image = new Resvg(svg, {
    fitTo: { mode: 'width', value: WIDTH_PX },
    background: '#ffffff',
    font: { fontFiles: fontFiles(), loadSystemFonts: false },
  }).render();
  return writePalettePng(image, COLOURS);
}

const work = mkdtempSync(join(tmpdir(), 'hidebound-pictures-'));
try {
  const layout = join(work, 'demo.layout.json');
  const pages = join(work, 'page.svg');
  hidebound('lay', ORDER, '--seed', SEED, '--effort', EFFORT, '--out', layout);
  hidebound('sheet', layout, '--page-svg', pages, '--page', 'A4');
  const target = join(FOLDER, 'demo-layout.png');
  const png = toPng(readFileSync(join(work, 'page.1.svg'), 'utf8'));
  writeFileSync(target, png);
  console.log(`${relative(process.cwd(), target)}: ${Math.round(png.length / 1000)} kB`);
} finally {
  rmSync(work, { recursive: true, force: true });
}
