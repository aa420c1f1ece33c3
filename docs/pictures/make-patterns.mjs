/**
 * Makes the pictures of docs/patterns.md anew, from the built command and patterns of our own:
 *
 *     pnpm build && node docs/pictures/make-patterns.mjs [pages] [half] [sizes] [allowance]
 *
 * Each shows a drawing as it comes on the left and what is read from it on the right.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Resvg } from '@resvg/resvg-js';
import { writePalettePng } from './palette-png.mjs';

const FOLDER = dirname(fileURLToPath(import.meta.url));
const ROOT = join(FOLDER, '..', '..');
const MAIN = join(ROOT, 'packages', 'cli', 'dist', 'main.js');
const TILED = join(ROOT, 'fixtures', 'patterns', 'programs', 'bar-roll.pdf');

const WIDTH_PX = 1400;
const COLOURS = 224;
const GAP_MM = 14;

function fontFiles() {
  const { resolve } = createRequire(join(ROOT, 'packages', 'render', 'package.json'));
  const names = ['DejaVuSans', 'DejaVuSans-Bold', 'DejaVuSansCondensed', 'DejaVuSansCondensed-Bold'];
  return names.map((name) => resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`));
}

/** What the command draws of a file. */
function picture(work, file, ...options) {
  const svg = join(work, 'picture.svg');
  const { status } = spawnSync(process.execPath, [MAIN, 'pieces', file, '--picture', svg, ...options], {
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  // 1: there is no piece, as on pages apart.
  if (status !== 0 && status !== 1) throw new Error(`pieces ${file} ended with ${status}`);
  return readFileSync(svg, 'utf8');
}

/** A drawing with its size in mm and what is in it, so that it can stand within another one. */
function parts(svg) {
  const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg).map(Number);
  const inside = svg.slice(svg.indexOf('>', svg.indexOf('<svg')) + 1, svg.lastIndexOf('</svg>'));
  const attributes = /<svg ([^>]*)>/
    .exec(svg)[1]
    .replace(/(?<![-\w])(xmlns(:\w+)?|version|width|height|viewBox)="[^"]*"/g, '');
  return { width, height, inside, attributes };
}

/** A part of a drawing by its corner and size, or all of it, as an element of so much width. */
function within(svg, box, prefix, place) {
  const { width, height, inside, attributes } = parts(svg);
  const { left = 0, top = 0, ...size } = { width, height, ...box };
  // Names of clips and markers are each drawing's own.
  const own = inside.replace(/(id="|url\(#)([\w-]+)/g, `$1${prefix}-$2`);
  const { x, y, grow } = place(size);
  const frame = `x="${x}" y="${y}" width="${size.width * grow}" height="${size.height * grow}"`;
  return `<svg ${frame} viewBox="${left} ${top} ${size.width} ${size.height}" ${attributes}>${own}</svg>`;
}

function frame(width, height, elements) {
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">${elements.join('\n')}</svg>`;
}

/** Drawings side by side, each at its own scale so that all are equally high. */
function beside(drawings) {
  const high = Math.max(...drawings.map(({ box, svg }) => box?.height ?? parts(svg).height));
  let x = 0;
  const elements = drawings.map(({ svg, box }, i) =>
    within(svg, box, `a${i}`, (size) => {
      const place = { x, y: 0, grow: high / size.height };
      x += size.width * place.grow + GAP_MM;
      return place;
    }),
  );
  return frame(x - GAP_MM, high, elements);
}

/** Drawings one below the other, all equally wide. */
function above(drawings) {
  const wide = Math.max(...drawings.map(({ box, svg }) => box?.width ?? parts(svg).width));
  let y = 0;
  const elements = drawings.map(({ svg, box }, i) =>
    within(svg, box, `b${i}`, (size) => {
      const place = { x: 0, y, grow: wide / size.width };
      y += size.height * place.grow;
      return place;
    }),
  );
  return frame(wide, y, elements);
}

function write(name, svg) {
  const image = new Resvg(svg, {
    fitTo: { mode: 'width', value: WIDTH_PX },
    background: '#ffffff',
    font: { fontFiles: fontFiles(), loadSystemFonts: false },
  }).render();
  const target = join(FOLDER, `${name}.png`);
  const png = writePalettePng(image, COLOURS);
  writeFileSync(target, png);
  console.log(`${relative(process.cwd(), target)}: ${Math.round(png.length / 1000)} kB`);
}

/** Invented patterns of bicycle goods, as a drawing program saves them. */
const drawing = (width, height, body) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" fill="none" stroke="#211c17" stroke-width="0.6" font-family="DejaVu Sans">${body}</svg>`;
const word = (x, y, text, size = 5) =>
  `<text x="${x}" y="${y}" font-size="${size}" fill="#5a5148" stroke="none">${text}</text>`;

const HALF = drawing(
  110,
  130,
  `<path id="saddle-pocket" d="M20 15H70C88 15 94 30 92 50L84 105C82 116 74 118 64 118H20Z"/>
  <path class="mirror" d="M20 12V121" stroke-dasharray="6 2 1 2"/><path id="stitch-side" d="M20 111H63C72 111 76 109 78 102L85 50" stroke-dasharray="2.4 1.4"/>
  <circle id="hole" cx="46" cy="32" r="2"/>${`<text transform="translate(17 95) rotate(-90)" font-size="5" fill="#5a5148" stroke="none">cut on fold</text>`}`,
);
const SIZES = drawing(
  170,
  120,
  [
    ['S', 0, '#211c17'],
    ['M', 1, '#2d6fa3'],
    ['L', 2, '#b98216'],
  ]
    .map(
      ([size, n, colour]) =>
        `<g id="size-${size}" stroke="${colour}"><path id="grip-${size}" d="M15 15H${115 + 10 * n}A12 12 0 0 1 ${127 + 10 * n} 27V${75 + 8 * n}H15Z"/><path class="stitch" stroke-dasharray="2.4 1.4" d="M20 20V${70 + 8 * n}"/></g>`,
    )
    .join(''),
);
const ALLOWANCE = drawing(
  150,
  110,
  `<path id="tool-pouch" d="M15 15H135V75A20 20 0 0 1 115 95H35A20 20 0 0 1 15 75Z"/><path d="M23 23H127V75A12 12 0 0 1 115 87H35A12 12 0 0 1 23 75Z"/>`,
);

const asked = process.argv.slice(2);
const isWanted = (name) => asked.length === 0 || asked.includes(name);
const work = mkdtempSync(join(tmpdir(), 'hidebound-pictures-'));

/** The drawing, and what is read from it. */
function beforeAndAfter(name, svg) {
  const file = join(work, `${name}.svg`);
  writeFileSync(file, svg);
  write(`pattern-${name}`, beside([{ svg }, { svg: picture(work, file) }]));
}

try {
  if (isWanted('pages')) {
    // The rows of pages take the upper part of their picture.
    const apart = picture(
      work,
      TILED,
      '--join',
      'apart',
      '--role',
      'ignore:solid',
      '--role',
      'ignore:dashed',
    );
    const together = picture(work, TILED, '--role', 'fold:colour=#996600', '--role', 'stitch:colour=#006699');
    // The picture of the pages, an A4 page on its side, stands above the pieces and is as wide as they are.
    const { width, height } = parts(together);
    const high = (width * 210) / 297;
    const whole = { svg: together, box: { width, height: high } };
    const pieces = { svg: together, box: { top: high, width, height: height - high } };
    write(
      'pattern-pages',
      above([{ svg: apart, box: { width: 297, height: 92 } }, { svg: beside([whole, pieces]) }]),
    );
  }
  if (isWanted('half')) beforeAndAfter('half', HALF);
  if (isWanted('sizes')) beforeAndAfter('sizes', SIZES);
  if (isWanted('allowance')) beforeAndAfter('allowance', ALLOWANCE);
} finally {
  rmSync(work, { recursive: true, force: true });
}
