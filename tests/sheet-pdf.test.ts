import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  drawCuttingSheets,
  drawHide,
  drawLayoutTrueScale,
  drawPieces,
  rectangle,
  textLine,
  writePdf,
  writeSvg,
} from '@hidebound/render';
import type { Drawing } from '@hidebound/render';
import { loadFontBook } from '@hidebound/render/node';
import { sampleHide } from '../packages/render/src/sample/sample-hide.js';
import { sampleLayout } from '../packages/render/src/sample/sample-layout.js';
import { SAMPLE_KINDS, samplePiece } from '../packages/render/src/sample/sample-pieces.js';
import { expectGolden } from './tools/golden.js';
import { outsideProgram, testWith } from './tools/outside.js';
import { pdfJudge } from './tools/pdf-judge.js';

const fonts = loadFontBook();
const folder = mkdtempSync(join(tmpdir(), 'hidebound-sheet-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const NAMES = 'Ремень, ζώνη, Gürtel';
const SQUARE: Drawing = {
  widthMm: 210,
  heightMm: 297,
  title: 'a square of 100 mm',
  layers: [
    {
      name: 'square',
      elements: [
        rectangle({ minX: 50, minY: 120, maxX: 150, maxY: 220 }, { fill: '#000000' }),
        textLine(fonts, NAMES, { at: { x: 20, y: 30 }, sizeMm: 5, colour: '#000000' }),
      ],
    },
  ],
};

describe('when a PDF with a square of 100 mm is measured', () => {
  let bytes: Uint8Array;
  const file = join(folder, 'square.pdf');
  beforeAll(async () => {
    bytes = await writePdf([SQUARE], { fonts, title: 'square' });
    writeFileSync(file, bytes);
  });

  // Judge: poppler's rasteriser at 600 dpi.
  testWith(outsideProgram('pdftoppm'), 'poppler finds 100 mm within 0.1 mm both ways', () => {
    outsideProgram('pdftoppm').run(['-r', '600', '-gray', '-singlefile', file, join(folder, 'square')]);
    const { columns, rows } = darkExtent(readFileSync(join(folder, 'square.pgm')), 600 * (100 / 25.4));
    expect((columns / 600) * 25.4).toBeCloseTo(100, 1);
    expect(Math.abs((columns / 600) * 25.4 - 100)).toBeLessThanOrEqual(0.1);
    expect(Math.abs((rows / 600) * 25.4 - 100)).toBeLessThanOrEqual(0.1);
  });

  // Judge: poppler's text extraction.
  testWith(outsideProgram('pdftotext'), 'poppler reads Cyrillic, Greek and Latin names out of it', () => {
    const text = outsideProgram('pdftotext').run([file, '-']).toString('utf8');
    expect(text).toContain(NAMES);
  });

  // Judge: pdf.js, the coordinates of the path under the page's transforms.
  test('pdf.js finds 100 mm within 0.1 mm both ways, on an A4 page', async () => {
    const { getDocument, OPS } = await pdfJudge();
    const document = await getDocument({ data: bytes.slice(), useSystemFonts: false }).promise;
    const page = await document.getPage(1);
    const [, , width, height] = page.view;
    expect((width! / 72) * 25.4).toBeCloseTo(210, 3);
    expect((height! / 72) * 25.4).toBeCloseTo(297, 3);
    const { fnArray, argsArray } = await page.getOperatorList();
    const box = pathExtent(fnArray, argsArray as unknown[][], OPS);
    expect(Math.abs((box.width / 72) * 25.4 - 100)).toBeLessThanOrEqual(0.1);
    expect(Math.abs((box.height / 72) * 25.4 - 100)).toBeLessThanOrEqual(0.1);
    await document.destroy();
  });
});

/** How far the dark pixels of a binary PGM reach, along the rows and columns that are dark over half the square. */
function darkExtent(pgm: Buffer, squarePx: number): { columns: number; rows: number } {
  const header = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.subarray(0, 64).toString('latin1'))!;
  const width = Number(header[1]);
  const height = Number(header[2]);
  const pixels = pgm.subarray(header[0].length);
  const darkInColumn = new Uint32Array(width);
  const darkInRow = new Uint32Array(height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      if (pixels[y * width + x]! >= 128) continue;
      darkInColumn[x]!++;
      darkInRow[y]!++;
    }
  }
  const wide = (counts: Uint32Array): number =>
    counts.reduce((sum, n) => sum + (n > squarePx / 2 ? 1 : 0), 0);
  return { columns: wide(darkInColumn), rows: wide(darkInRow) };
}

/** Size in points of the first constructed path, under the transforms before it. */
function pathExtent(
  functions: readonly number[],
  args: readonly unknown[][],
  ops: Readonly<Record<string, number>>,
): { width: number; height: number } {
  let [scaleX, scaleY] = [1, 1];
  for (let i = 0; i < functions.length; i++) {
    if (functions[i] === ops['transform']) {
      const [a, , , d] = args[i] as number[];
      scaleX *= a!;
      scaleY *= d!;
    }
    if (functions[i] === ops['constructPath']) {
      const [minX, minY, maxX, maxY] = args[i]![2] as number[];
      return { width: Math.abs((maxX! - minX!) * scaleX), height: Math.abs((maxY! - minY!) * scaleY) };
    }
  }
  throw new Error('The page holds no path.');
}

describe('when pictures are drawn, they are as they were approved', () => {
  const shoulder = sampleHide({ id: 'shoulder-02', kind: 'shoulder', seed: 4, flaws: 9 });
  const kinds = SAMPLE_KINDS.filter((kind) => kind.article !== 'Tool roll');
  const layout = sampleLayout({ hides: [shoulder], sets: 1, seed: 2, kinds, freeingCutX: 1150 });

  test('a cutting sheet', () => {
    const [sheet] = drawCuttingSheets({ layout, hides: [shoulder], page: 'A4', fonts });
    expectGolden('sheet-shoulder.svg', writeSvg(sheet!));
  });

  test('a cutting sheet from the flesh side, in inches', () => {
    const [sheet] = drawCuttingSheets({
      layout,
      hides: [shoulder],
      page: 'Letter',
      side: 'flesh',
      units: 'in',
      fonts,
    });
    expectGolden('sheet-shoulder-flesh.svg', writeSvg(sheet!));
  });

  test('a hide', () => {
    expectGolden('hide-shoulder.svg', writeSvg(drawHide({ hide: shoulder, fonts })));
  });

  test('pieces', () => {
    const pieces = kinds.map((kind) => ({ piece: samplePiece(kind).shape, source: { file: 'bag.svg' } }));
    expectGolden('pieces.svg', writeSvg(drawPieces({ pieces, fonts, title: 'bag.svg' })));
  });

  test('a layout at true scale is as large as the hide and its margins, in mm', () => {
    const drawing = drawLayoutTrueScale({ layout, hide: shoulder, fonts });
    const svg = writeSvg(drawing);
    expect(svg).toContain(`width="${drawing.widthMm}mm" height="${drawing.heightMm}mm"`);
    // The sample shoulder is about 1.4 m long.
    expect(drawing.widthMm).toBeGreaterThan(1350);
  });
});
