import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { flattenCurve } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { afterAll, beforeAll, describe, expect } from 'vitest';
import { outsideProgram, testWith } from './tools/outside.js';
import { readPgm } from './tools/pixels.js';
import type { GreyPicture } from './tools/pixels.js';
import { pagesOf } from './tools/read-pdf.js';
import { FIRST_OBJECT, writePdf } from './tools/write-pdf.js';
import type { WrittenFile } from './tools/write-pdf.js';

const poppler = outsideProgram('pdftoppm');

/** Resolution at which poppler draws; a px is 0.085 mm. */
const DPI = 300;
const PX_PER_MM = DPI / 25.4;

/** A px is drawn on if poppler made it darker than this; its thinnest lines are a px wide. */
const DARK = 160;

/** Lines of all kinds, thin enough that their middle is where they are dark: a star, waves, circles, a turned frame. */
const STAR = '100 30 m 130 210 l 20 90 l 180 90 l 70 210 l h S';
const WAVES = '-30 150 m 40 260 80 40 120 150 c 160 260 200 40 250 150 c S';
const circle = (x: number, y: number, r: number) => {
  const k = r * 0.5522847498;
  return `${x + r} ${y} m ${x + r} ${y + k} ${x + k} ${y + r} ${x} ${y + r} c ${x - k} ${y + r} ${x - r} ${y + k} ${x - r} ${y} c ${x - r} ${y - k} ${x - k} ${y - r} ${x} ${y - r} c ${x + k} ${y - r} ${x + r} ${y - k} ${x + r} ${y} c h`;
};
const DRAWING = `1 j 0.6 w ${STAR} ${WAVES} ${circle(150, 230, 60)} S q 0.9 0.4 -0.4 0.9 60 10 cm 0.6 w 5 5 90 60 re S Q`;

const FORMS: WrittenFile['objects'] = [
  {
    dictionary: `/Type /XObject /Subtype /Form /BBox [10 20 170 240] /Matrix [0.8 0.2 -0.2 0.8 40 10] /Resources << /XObject << /B ${FIRST_OBJECT + 1} 0 R >> >>`,
    stream: `${DRAWING} q 0.7 0 0 -0.7 10 260 cm /B Do Q`,
  },
  {
    dictionary: '/Type /XObject /Subtype /Form /BBox [0 0 150 180] /Group << /S /Transparency >>',
    stream: DRAWING,
  },
];

const PAGES: Readonly<Record<string, WrittenFile>> = {
  'a plain page': { pages: [{ content: DRAWING }] },
  'a page turned by 90 degrees and cropped': {
    pages: [{ content: DRAWING, entries: '/Rotate 90 /CropBox [15 25 185 240]' }],
  },
  'a page turned by 270 degrees whose media box starts elsewhere': {
    pages: [{ content: DRAWING, mediaBox: [-20, -10, 160, 220], entries: '/Rotate 270' }],
  },
  'a page turned by 180 degrees': { pages: [{ content: DRAWING, entries: '/Rotate 180' }] },
  'a page with a round clip within an even-odd one': {
    pages: [
      {
        content: `10 10 180 280 re 60 60 70 90 re W* n ${circle(100, 140, 85)} W n ${DRAWING}`,
      },
    ],
  },
  'a page of forms within forms': {
    pages: [{ content: '/A Do', resources: `/XObject << /A ${FIRST_OBJECT} 0 R >>` }],
    objects: FORMS,
  },
  'a page with a turned rectangle as clip': {
    pages: [{ content: `100 20 m 190 150 l 100 280 l 10 150 l h W n ${DRAWING}` }],
  },
};

describe('pages as poppler draws them', () => {
  let folder = '';
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'pdf-raster-'));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  for (const [name, file] of Object.entries(PAGES)) {
    testWith(poppler, `when it is ${name}, lines lie on dark pixels and dark pixels on lines`, async () => {
      const bytes = writePdf(file);
      const path = join(folder, 'page.pdf');
      writeFileSync(path, bytes);
      const args = ['-r', String(DPI), '-gray', '-cropbox', '-aa', 'yes', path];
      const picture = readPgm(poppler.run(args));
      const [page] = (await pagesOf(bytes)).pages;
      const size = [page!.widthMm, page!.heightMm].map((mm) => Math.ceil(mm * PX_PER_MM - 0.01));
      expect([picture.width, picture.height]).toEqual(size);
      const chains = page!.lines.map(({ curve }) => flattenCurve(curve, 0.01));
      expect(farthestFromDark(picture, chains)).toBeLessThanOrEqual(1);
      expect(farthestFromLines(picture, chains)).toEqual([]);
    });
  }
});

/** Px across which lines that end on an edge may have no dark px of their own. */
const EDGE_PX = 1;

/** The farthest that any place of the lines is from the middle of a dark px, less half a px; px. */
function farthestFromDark(picture: GreyPicture, chains: readonly (readonly Point[])[]): number {
  let worst = 0;
  for (const p of placesAlong(chains)) {
    const [x, y] = [Math.floor(p.x), Math.floor(p.y)];
    if (x < EDGE_PX || y < EDGE_PX || x >= picture.width - EDGE_PX || y >= picture.height - EDGE_PX) continue;
    if (!isDarkNear(picture, x, y, 0)) worst = Math.max(worst, isDarkNear(picture, x, y, 1) ? 1 : 2);
  }
  return worst;
}

function isDarkNear({ pixels, width, height }: GreyPicture, x: number, y: number, reach: number): boolean {
  for (let j = Math.max(0, y - reach); j <= Math.min(height - 1, y + reach); j++) {
    for (let i = Math.max(0, x - reach); i <= Math.min(width - 1, x + reach); i++) {
      if (pixels[j * width + i]! < DARK) return true;
    }
  }
  return false;
}

/** A px, and half of the width that is drawn: 0.3 points are 1.25 px. */
const REACH_PX = 2;

/** Dark px that no line comes near. */
function farthestFromLines(picture: GreyPicture, chains: readonly (readonly Point[])[]): string[] {
  const { width, height, pixels } = picture;
  const isNear = new Uint8Array(width * height);
  for (const p of placesAlong(chains)) {
    const [x, y] = [Math.floor(p.x), Math.floor(p.y)];
    for (let j = Math.max(0, y - REACH_PX); j <= Math.min(height - 1, y + REACH_PX); j++) {
      for (let i = Math.max(0, x - REACH_PX); i <= Math.min(width - 1, x + REACH_PX); i++)
        isNear[j * width + i] = 1;
    }
  }
  const lone: string[] = [];
  let dark = 0;
  pixels.forEach((value, at) => {
    if (value >= DARK) return;
    dark++;
    if (isNear[at] === 0) lone.push(`${at % width}, ${Math.floor(at / width)}`);
  });
  expect(dark).toBeGreaterThan(1000);
  return lone.slice(0, 10);
}

/** Places a quarter of a px apart, in px. */
function* placesAlong(chains: readonly (readonly Point[])[]): Generator<Point> {
  for (const chain of chains) {
    for (let i = 1; i < chain.length; i++) {
      const [a, b] = [chain[i - 1]!, chain[i]!];
      const steps = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) * PX_PER_MM * 4));
      for (let k = 0; k <= steps; k++) {
        const t = k / steps;
        yield { x: (a.x + (b.x - a.x) * t) * PX_PER_MM, y: (a.y + (b.y - a.y) * t) * PX_PER_MM };
      }
    }
  }
}
