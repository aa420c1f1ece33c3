/**
 * Makes the pictures of the documentation anew, from the built packages and the demo's files:
 *
 *     pnpm build && node docs/pictures/make.mjs [demo-layout] [template-page] [cut-file]
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

/** The template's page that is shown: one with a piece of its own, the hide's edge and several joins. */
const TEMPLATE_PAGE = 'E3';
const TEMPLATE_WIDTH_PX = 1000;
/** Black, white and the greys of smooth edges. */
const TEMPLATE_COLOURS = 8;

/** The part of the side's cut file that is shown, mm: outlines near each other, lead-ins, bridges, holes, marks, names. */
const CUT_FILE_PART = { x: 1415, y: 775, width: 350, height: 215 };
/** Hairlines would not be seen. */
const CUT_FILE_LINE_MM = 0.45;
const CUT_FILE_COLOURS = 64;

/** The fonts that sheets are set in, as they come with the package that draws them. */
function fontFiles() {
  const { resolve } = createRequire(join(ROOT, 'packages', 'render', 'package.json'));
  const names = ['DejaVuSans', 'DejaVuSans-Bold', 'DejaVuSansCondensed', 'DejaVuSansCondensed-Bold'];
  return names.map((name) => resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`));
}

function hidebound(...args) {
  execFileSync(process.execPath, [MAIN, ...args], { stdio: ['ignore', 'ignore', 'inherit'] });
}

function toPng(svg, widthPx, colours) {
  const image = new Resvg(svg, {
    fitTo: { mode: 'width', value: widthPx },
    background: '#ffffff',
    font: { fontFiles: fontFiles(), loadSystemFonts: false },
  }).render();
  return writePalettePng(image, colours);
}

function write(name, svgFile, widthPx, colours) {
  const target = join(FOLDER, `${name}.png`);
  const png = toPng(readFileSync(svgFile, 'utf8'), widthPx, colours);
  writeFileSync(target, png);
  console.log(`${relative(process.cwd(), target)}: ${Math.round(png.length / 1000)} kB`);
}

/** A part of a drawing in mm, with lines of another width. */
function partOf(svg, { x, y, width, height }, lineMm) {
  return svg
    .replace(
      /width="[^"]*" height="[^"]*" viewBox="[^"]*"/,
      `width="${width}" height="${height}" viewBox="${x} ${y} ${width} ${height}"`,
    )
    .replace(/stroke-width="[^"]*"/g, `stroke-width="${lineMm}"`);
}

const asked = process.argv.slice(2);
const isWanted = (name) => asked.length === 0 || asked.includes(name);
const work = mkdtempSync(join(tmpdir(), 'hidebound-pictures-'));
try {
  const layout = join(work, 'demo.layout.json');
  hidebound('lay', ORDER, '--seed', SEED, '--effort', EFFORT, '--out', layout);
  if (isWanted('demo-layout')) {
    hidebound('sheet', layout, '--page-svg', join(work, 'page.svg'), '--page', 'A4');
    write('demo-layout', join(work, 'page.1.svg'), WIDTH_PX, COLOURS);
  }
  if (isWanted('template-page')) {
    hidebound('template', layout, '--hide', '1', '--svg', join(work, 'tile.svg'));
    write('template-page', join(work, `tile.${TEMPLATE_PAGE}.svg`), TEMPLATE_WIDTH_PX, TEMPLATE_COLOURS);
  }
  if (isWanted('cut-file')) {
    const file = join(work, 'cut.svg');
    const extras = ['--lead-in', '5', '--lead-in-shape', 'arc', '--bridges', '3', '--bridge-width', '1.5'];
    hidebound(
      'cutfile',
      layout,
      '--hide',
      '1',
      '--svg',
      file,
      '--kerf',
      '0.2',
      '--text',
      'outlines',
      ...extras,
    );
    writeFileSync(file, partOf(readFileSync(file, 'utf8'), CUT_FILE_PART, CUT_FILE_LINE_MM));
    write('cut-file', file, WIDTH_PX, CUT_FILE_COLOURS);
  }
} finally {
  rmSync(work, { recursive: true, force: true });
}
