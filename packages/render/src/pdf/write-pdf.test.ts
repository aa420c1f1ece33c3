import { expect, test } from 'vitest';
import { rectangle } from '../drawing/build.js';
import type { Drawing } from '../drawing/model.js';
import { loadFontBook } from '../node.js';
import { measureText, textLine } from '../text/measure-text.js';
import { writePdf } from './write-pdf.js';

const fonts = loadFontBook();

function drawing(widthMm: number, heightMm: number): Drawing {
  return {
    widthMm,
    heightMm,
    title: 'square',
    layers: [
      {
        name: 'square',
        elements: [
          rectangle(
            { minX: 10, minY: 10, maxX: 60, maxY: 60 },
            { stroke: { colour: '#000000', widthMm: 0.2 } },
          ),
          textLine(fonts, 'Ремень, ζώνη', { at: { x: 20, y: 30 }, sizeMm: 5, colour: '#000000' }),
        ],
      },
    ],
  };
}

/** The file is not compressed, so that it can be read as text. */
async function textOf(drawings: readonly Drawing[]): Promise<string> {
  const bytes = await writePdf(drawings, { fonts, title: 'Sheet' });
  return Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
}

test('when the same drawings are written twice, the bytes are equal', async () => {
  const first = await writePdf([drawing(210, 297)], { fonts, title: 'Sheet' });
  const second = await writePdf([drawing(210, 297)], { fonts: loadFontBook(), title: 'Sheet' });
  expect(second).toEqual(first);
});

test('when the font book was used before, the bytes are the same as with a new one', async () => {
  const used = loadFontBook();
  for (const face of ['regular', 'narrow'] as const) measureText(used, face, 3, 'еёéüÅѐ Ωάέ');
  const first = await writePdf([drawing(210, 297)], { fonts: used, title: 'Sheet' });
  const second = await writePdf([drawing(210, 297)], { fonts: loadFontBook(), title: 'Sheet' });
  expect(first).toEqual(second);
});

test('when pages differ in size, each is as large as its drawing, in points of 1/72 in', async () => {
  const text = await textOf([drawing(210, 297), drawing(215.9, 279.4)]);
  // ISO 32000-1, 8.3.2.3: one unit of default user space is 1/72 in.
  const boxes = [...text.matchAll(/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)].map(([, w, h]) => [
    Number(w),
    Number(h),
  ]);
  expect(boxes[0]![0]).toBeCloseTo((210 / 25.4) * 72, 3);
  expect(boxes[0]![1]).toBeCloseTo((297 / 25.4) * 72, 3);
  expect(boxes[1]).toEqual([612, 792]);
});

test('when a viewer prints, it is asked not to scale, and to take paper of the page’s size', async () => {
  const text = await textOf([drawing(210, 297)]);
  // ISO 32000-1, table 150.
  expect(text).toMatch(/\/PrintScaling \/None/);
  expect(text).toMatch(/\/PickTrayByPDFSize true/);
});

test('when a page is written, every box of it is the whole sheet', async () => {
  const text = await textOf([drawing(210, 297)]);
  // ISO 32000-1, 14.11.2: what a viewer shows, a printer prints and a trimmer leaves.
  const [media] = /MediaBox (\[[^\]]+\])/.exec(text)!.slice(1);
  for (const name of ['CropBox', 'BleedBox', 'TrimBox']) expect(text).toContain(`/${name} ${media}`);
});

test('when the day is looked up, it is a fixed one', async () => {
  const text = await textOf([drawing(210, 297)]);
  expect([...text.matchAll(/\(D:(\d+)Z?\)/g)].map(([, day]) => day)).toEqual(['20000101000000']);
});

test('when text is written, its font is embedded as a subset', async () => {
  const text = await textOf([drawing(210, 297)]);
  expect(text).toMatch(/\/FontName \/[A-Z]{6}\+DejaVuSans/);
  expect(text).toContain('/FontFile2');
  expect(text).not.toContain('/Helvetica');
});

test('when there is no drawing, the error says so', async () => {
  await expect(writePdf([], { fonts, title: 'none' })).rejects.toMatchObject({ code: 'bad-drawing' });
});
