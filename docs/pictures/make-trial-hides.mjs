/**
 * Makes the pictures of trial hides anew, from the built packages:
 *
 *     pnpm build && node docs/pictures/make-trial-hides.mjs
 */
import { writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Resvg } from '@resvg/resvg-js';
import { DEFAULT_WORKSHOP, effectOf, madeUpHide } from '../../packages/leather/dist/index.js';
import { writePalettePng } from './palette-png.mjs';

const FOLDER = dirname(fileURLToPath(import.meta.url));
const RENDER = createRequire(join(FOLDER, '..', '..', 'packages', 'render', 'package.json'));
const FONT = RENDER.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf');

const SEED = 5;
/** Both pictures at one scale, so that sizes can be told from each other. */
const PX_PER_MM = 0.16;
const COLOURS = 64;
const INK = '#3b3128';
const LEATHER = '#f3e6cf';
const ZONE = '#a8977c';
const LOOKS = { never: '#b0463c', hidden: '#d9a441', seen: '#c9b48d' };

/** Rows of a picture: cut, grade, and how many of it. */
const PICTURES = {
  'trial-hides': [
    [
      ['side', 'A', 1],
      ['side', 'C', 1],
      ['side', 'E', 1],
    ],
    [
      ['back', 'B', 1],
      ['bend', 'A', 1],
      ['butt', 'B', 1],
    ],
    [
      ['shoulder', 'C', 1],
      ['double shoulder', 'B', 2],
      ['belly', 'C', 1],
    ],
  ],
  'trial-skins': [
    [
      ['calf skin', 'A', 1],
      ['kip', 'C', 1],
      ['goat skin', 'B', 2],
    ],
    [
      ['sheep skin', 'C', 1],
      ['pig skin', 'B', 1],
      ['deer skin', 'B', 1],
      ['horse butt', 'A', 1],
    ],
  ],
};

const MARGIN_MM = 90;
const TITLE_MM = 90;
const number = (mm) => Number(mm.toFixed(1));
const at = ({ x, y }) => `${number(x)} ${number(y)}`;

function pathOf({ start, segments }) {
  const steps = segments.map((segment) =>
    segment.kind === 'cubic'
      ? `C${at(segment.handle1)} ${at(segment.handle2)} ${at(segment.to)}`
      : `L${at(segment.to)}`,
  );
  return `M${at(start)}${steps.join('')}Z`;
}

const lineOf = (points) => `M${points.map(at).join('L')}`;

function flawSvg(flaw) {
  const effect = effectOf(flaw);
  const colour = effect.isVoid ? LOOKS.never : effect.looks === 'C' ? LOOKS.hidden : LOOKS.seen;
  const { shape } = flaw;
  if (shape.kind === 'area') return `<path d="${pathOf(shape.outline)}" fill="${colour}"/>`;
  if (shape.kind === 'line') {
    const width = Math.max(shape.widthMm, 6);
    return `<path d="${lineOf(shape.line)}" fill="none" stroke="${colour}" stroke-width="${width}" stroke-linecap="round"/>`;
  }
  return `<circle cx="${shape.at.x}" cy="${shape.at.y}" r="${Math.max(shape.radiusMm, 6)}" fill="${colour}"/>`;
}

function hideSvg(hide) {
  const zones = hide.zones.map(
    ({ outline }) =>
      `<path d="${pathOf(outline)}" fill="none" stroke="${ZONE}" stroke-width="5" stroke-dasharray="18 14"/>`,
  );
  const backbone =
    hide.backbone === undefined
      ? ''
      : `<path d="${lineOf(hide.backbone)}" fill="none" stroke="${INK}" stroke-width="8" stroke-dasharray="50 16 8 16"/>`;
  const openings = hide.openings.map(
    (opening) => `<path d="${pathOf(opening)}" fill="#ffffff" stroke="${INK}" stroke-width="6"/>`,
  );
  return [
    `<path d="${pathOf(hide.outline)}" fill="${LEATHER}" stroke="${INK}" stroke-width="10"/>`,
    ...zones,
    ...hide.flaws.map(flawSvg),
    ...openings,
    backbone,
  ].join('\n');
}

function sizeOf({ outline }) {
  const points = outline.segments.map(({ to }) => to);
  return { width: Math.max(...points.map(({ x }) => x)), height: Math.max(...points.map(({ y }) => y)) };
}

/** Like numbers give flaws at like places: each hide of a picture has one of its own. */
function madeOf([name, grade, count], place) {
  const rule = DEFAULT_WORKSHOP.cuts.find((row) => row.name === name);
  const { usableShare } = DEFAULT_WORKSHOP.grades.find((row) => row.grade === grade);
  return Array.from({ length: count }, (_, i) => ({
    title: `${name}, grade ${grade}`,
    hide: madeUpHide(rule, { seed: SEED, number: 10 * (place + 1) + i, usableShare }),
  }));
}

function pictureSvg(rows) {
  const parts = [];
  let y = MARGIN_MM;
  let widest = 0;
  for (const row of rows) {
    let x = MARGIN_MM;
    let tallest = 0;
    for (const { title, hide } of row.flatMap(madeOf)) {
      const { width, height } = sizeOf(hide);
      parts.push(
        `<g transform="translate(${number(x)} ${number(y + TITLE_MM)})">`,
        `<text x="0" y="-30" font-family="DejaVu Sans Condensed" font-size="62" fill="${INK}">${title}</text>`,
        hideSvg(hide),
        '</g>',
      );
      x += width + MARGIN_MM;
      tallest = Math.max(tallest, height);
    }
    widest = Math.max(widest, x);
    y += TITLE_MM + tallest + MARGIN_MM;
  }
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${widest}" height="${y}" viewBox="0 0 ${widest} ${y}">${parts.join('\n')}</svg>`;
}

for (const [name, rows] of Object.entries(PICTURES)) {
  const image = new Resvg(pictureSvg(rows), {
    fitTo: { mode: 'zoom', value: PX_PER_MM },
    background: '#ffffff',
    font: { fontFiles: [FONT], loadSystemFonts: false },
  }).render();
  const target = join(FOLDER, `${name}.png`);
  const png = writePalettePng(image, COLOURS);
  writeFileSync(target, png);
  console.log(`${relative(process.cwd(), target)}: ${Math.round(png.length / 1000)} kB`);
}
