import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { PAPERS, paperNamed, parseHide, parseLayout } from '@hidebound/leather';
import type { Hide, Layout } from '@hidebound/leather';
import { drawHideTemplate, drawPieceTemplates, writePdf, writeSvg } from '@hidebound/render';
import type { TemplatePages } from '@hidebound/render';
import { loadFontBook } from '@hidebound/render/node';
import { expectRefused, hideboundHere, smallJob, testFolder } from './cli-support.js';
import { outsideProgram, testWith } from './tools/outside.js';
import { darkBox, readPgm } from './tools/pixels.js';
import type { GreyPicture } from './tools/pixels.js';
import { pathBoxes } from './tools/pdf-boxes.js';
import { pdfJudge } from './tools/pdf-judge.js';

const fonts = loadFontBook();
const folder = testFolder();
const DPI = 600;
const PX_PER_MM = DPI / 25.4;
/** What falls on a part of a pixel may darken all of it. */
const PIXEL_MM = 1 / PX_PER_MM;
/** Two plates of 60 × 90 mm on a panel of 600 × 400 mm. */
const job = smallJob(folder);
const poppler = outsideProgram('pdftoppm');

let layout: Layout;
let hide: Hide;
beforeAll(async () => {
  const run = await hideboundHere(['lay', job.order, '--effort', '0', '--out', job.layout]);
  expect(run.status, run.stderr).toBe(0);
  layout = parseLayout(readFileSync(job.layout, 'utf8'), { file: job.layout });
  hide = parseHide(readFileSync(job.hide, 'utf8'), { file: job.hide });
});

/** One page as poppler's rasteriser sees it at 600 dpi. */
function rasterised(pdf: string, page: number): GreyPicture {
  const target = join(folder, `page-${page}`);
  const one = ['-f', String(page), '-l', String(page)];
  poppler.run(['-r', String(DPI), '-gray', ...one, '-singlefile', pdf, target]);
  return readPgm(readFileSync(`${target}.pgm`));
}

describe('when a template of a piece on A4 is rasterised at 600 dpi by poppler', () => {
  const pdf = join(folder, 'pieces.pdf');

  testWith(
    poppler,
    'the piece is as large as the order asks, and nothing is printed within 10 mm of the edge',
    async () => {
      const run = await hideboundHere(['template', job.layout, '--pdf', pdf]);
      expect(run.status, run.stderr).toBe(0);
      const picture = rasterised(pdf, 1);
      const all = darkBox(picture, { minX: 0, minY: 0, maxX: 210, maxY: 297 }, PX_PER_MM);
      expect(all.minX).toBeGreaterThanOrEqual(10 - PIXEL_MM);
      expect(all.minY).toBeGreaterThanOrEqual(10 - PIXEL_MM);
      expect(all.maxX).toBeLessThanOrEqual(200 + PIXEL_MM);
      expect(all.maxY).toBeLessThanOrEqual(287 + PIXEL_MM);
      // The window of an A4 page: right of the band of 16 mm and above the one of 33 mm (docs/templates.md).
      const piece = darkBox(picture, { minX: 27, minY: 10, maxX: 200, maxY: 253 }, PX_PER_MM);
      const sides = [piece.maxX - piece.minX, piece.maxY - piece.minY].sort((a, b) => a - b);
      // Outer edges of a cut line of 0.35 mm around 60 × 90 mm.
      expect(Math.abs(sides[0]! - 60.35)).toBeLessThanOrEqual(0.1);
      expect(Math.abs(sides[1]! - 90.35)).toBeLessThanOrEqual(0.1);
    },
  );
});

describe('when a hide of 600 × 400 mm is divided among A4 pages', () => {
  const pdf = join(folder, 'hide.pdf');
  let made: TemplatePages;
  beforeAll(async () => {
    made = drawHideTemplate({ layout, hide, paper: paperNamed('A4'), fonts });
    writeFileSync(pdf, await writePdf(made.pages, { fonts, title: 'hide' }));
  });

  test('equal input gives equal bytes', async () => {
    const again = drawHideTemplate({ layout, hide, paper: paperNamed('A4'), fonts: loadFontBook() });
    const bytes = await writePdf(again.pages, { fonts: loadFontBook(), title: 'hide' });
    expect(Buffer.from(bytes).equals(readFileSync(pdf))).toBe(true);
  });

  // Judge: poppler's rasteriser. Both pages must show the hide's own line, and the same marks, at the places that
  // docs/templates.md gives: cells of 164 × 234 mm (upright) begin 31 mm from the left and 15 mm from the top.
  testWith(
    poppler,
    'two neighbours print the same along their join, at the same places of the layout',
    () => {
      const first = rasterised(pdf, 1);
      const second = rasterised(pdf, 2);
      const { widthMm, heightMm } = made.pages[0]!;
      const cell = { minX: 31, minY: 15, maxX: widthMm - 15, maxY: heightMm - 48 };
      const strip = (picture: GreyPicture, x: number): number[] =>
        darkRuns(picture, x + 1, cell.minY + 10, cell.maxY - 10);
      const left = strip(first, cell.maxX);
      const right = strip(second, cell.minX);
      expect(left.length).toBeGreaterThan(20);
      expect(right).toHaveLength(left.length);
      left.forEach((at, i) => expect(Math.abs(at - right[i]!)).toBeLessThanOrEqual(0.1));
    },
  );

  // Judge: pdf.js, the coordinates of every path under the transforms before it.
  test('pdf.js finds two bars of 100 mm at right angles on every page, within 0.1 mm', async () => {
    for (const boxes of await pathBoxes(pdf)) {
      const isBar = (long: number, short: number): boolean =>
        Math.abs(long - 100) <= 0.1 && Math.abs(short - 3) <= 0.1;
      expect(boxes.filter(({ width, height }) => isBar(width, height))).toHaveLength(1);
      expect(boxes.filter(({ width, height }) => isBar(height, width))).toHaveLength(1);
    }
  });

  testWith(
    outsideProgram('pdftotext'),
    'every page says its name, its neighbours, the order, and the side',
    () => {
      const texts = outsideProgram('pdftotext').run(['-layout', pdf, '-']).toString('utf8').split('\f');
      made.names.forEach((name, i) => {
        const text = texts[i]!;
        expect(text).toMatch(new RegExp(`\\b${name}\\b`));
        expect(text).toContain(`page ${i + 1} of ${made.names.length}`);
        expect(text).toContain('Seen from the GRAIN side');
        expect(text).toContain('test order, version');
        expect(text).toContain('2026-01-05');
        for (const scale of ['94.07 %', '97.27 %', '95.2 %']) expect(text).toContain(scale);
      });
      expect(texts[0]).toContain('B1');
    },
  );

  test('from the flesh side, every page says that it is mirrored', () => {
    const flesh = drawHideTemplate({ layout, hide, paper: paperNamed('A4'), fonts, side: 'flesh' });
    for (const page of flesh.pages) {
      expect(page.title).toContain('seen from the flesh side');
      expect(writeSvg(page)).toContain('FLESH side: all is mirrored');
    }
  });
});

test('when templates are made for every paper, pdf.js finds pages of these sizes', async () => {
  const [piece] = layout.pieces;
  const pages = PAPERS.map(
    (paper) => drawPieceTemplates({ layout, pieces: [piece!], paper, fonts }).pages[0]!,
  );
  const bytes = await writePdf(pages, { fonts, title: 'sizes' });
  const { getDocument } = await pdfJudge();
  const document = await getDocument({ data: bytes, useSystemFonts: false }).promise;
  for (const [i, paper] of PAPERS.entries()) {
    const [, , width, height] = (await document.getPage(i + 1)).view;
    const found = [width!, height!].map((points) => (points / 72) * 25.4).sort((a, b) => a - b);
    expect(found[0]).toBeCloseTo(paper.widthMm, 3);
    expect(found[1]).toBeCloseTo(paper.heightMm, 3);
  }
  await document.destroy();
});

describe('when templates can’t be made as asked, one sentence says why and nothing is written', () => {
  test.each([
    ['an overlap without room for marks', ['--overlap', '2'], /8 to 50 mm/],
    ['margins that leave no room', ['--margin', '60'], /check bars of 100 mm/],
    ['a margin that printers cut off', ['--margin', '3'], /at least 10 mm/],
    ['a roll that is none', ['--roll', '60'], /200 to 2000 mm/],
    ['a hide that it does not have', ['--hide', 'side-9'], /1 \(panel-1\)/],
    ['a piece that it does not have', ['--piece', 'sleeve'], /it has: plate/],
    ['two kinds at once', ['--hide', '1', '--rough-cuts'], /one kind/],
  ])('%s', async (_, more, words) => {
    const pdf = join(folder, 'never.pdf');
    const run = await hideboundHere(['template', job.layout, '--pdf', pdf, ...more]);
    expect(run.status).toBe(2);
    expect(run.stderr.trim().split('\n')).toHaveLength(1);
    expect(run.stderr).toMatch(words);
    expect(() => readFileSync(pdf)).toThrow('ENOENT');
  });

  test('rough cuts of a layout that has none', async () => {
    const run = await hideboundHere(['template', job.layout, '--rough-cuts', '--pdf', join(folder, 'r.pdf')]);
    expectRefused(run, job.layout, /no rough cuts/);
  });
});

/** Where dark begins along an upright line at x, in mm from `minY`; what is thinner than 0.1 mm counts as nothing. */
function darkRuns(picture: GreyPicture, x: number, minY: number, maxY: number): number[] {
  const column = Math.round(x * PX_PER_MM);
  const begins: number[] = [];
  let run = 0;
  for (let y = Math.round(minY * PX_PER_MM); y < maxY * PX_PER_MM; y++) {
    const isDark = picture.pixels[y * picture.width + column]! < 128;
    run = isDark ? run + 1 : 0;
    if (run === 3) begins.push((y - 2) / PX_PER_MM - minY);
  }
  return begins;
}
