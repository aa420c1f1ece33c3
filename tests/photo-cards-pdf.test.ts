import { createRequire } from 'node:module';
import { deflateSync } from 'node:zlib';
import { IntakeError, newFindings, readPattern } from '@hidebound/intake';
import { loadVision, readCards, readPdfPictures } from '@hidebound/intake/photo';
import type { Photo } from '@hidebound/intake/photo';
import { curveBox } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
import { drawScan } from './support/card-scan.js';
import { FIRST_OBJECT, writePdf } from './tools/write-pdf.js';
import type { WrittenPage } from './tools/write-pdf.js';

// ISO 32000-1: section 8.9.5 (a picture fills the unit square, its first row at the top), table 89 (its dictionary),
// section 7.4 (filters). A point is 25.4 / 72 mm.

type Sharp = (
  bytes: Uint8Array,
  options: { raw: { width: number; height: number; channels: 3 } },
) => { jpeg(options: { quality: number }): { toBuffer(): Promise<Buffer> } };
// The decoder's own library belongs to the package that decodes.
const sharp = createRequire(new URL('../packages/intake/package.json', import.meta.url))('sharp') as Sharp;

const POINTS_PER_MM = 72 / 25.4;

/** An invented card 60 × 30 mm with a hole of 5 mm, on a page of 100 × 70 mm. */
const SCAN = drawScan({
  widthMm: 100,
  heightMm: 70,
  dpi: 200,
  ground: '#2a2c30',
  drawn:
    '<rect x="20" y="15" width="60" height="30" fill="#ece6da"/><circle cx="30" cy="25" r="2.5" fill="#2a2c30"/>',
  seed: 11,
});

function pageOf({ width, height }: Photo, entries?: string, matrix?: string): WrittenPage {
  const [w, h] = [(width * 72) / 200, (height * 72) / 200];
  return {
    content: `q ${matrix ?? `${w} 0 0 ${h} 0 0`} cm /P Do Q`,
    mediaBox: [0, 0, w, h],
    resources: `/XObject << /P ${FIRST_OBJECT} 0 R >>`,
    ...(entries === undefined ? {} : { entries }),
  };
}

const dictionaryOf = ({ width, height }: Pick<Photo, 'width' | 'height'>, more: string) =>
  `/Type /XObject /Subtype /Image /Width ${width} /Height ${height} /BitsPerComponent 8 /ColorSpace /DeviceRGB ${more}`;

const deflated = { dictionary: dictionaryOf(SCAN, '/Filter /FlateDecode'), stream: deflateSync(SCAN.rgb) };

async function refusalOf(bytes: Uint8Array): Promise<IntakeError> {
  const reason = await readPdfPictures(bytes, 'scan.pdf').catch((error: unknown) => error);
  expect(reason).toBeInstanceOf(IntakeError);
  return reason as IntakeError;
}

async function cardIn(bytes: Uint8Array) {
  const [page, ...more] = await readPdfPictures(bytes, 'scan.pdf');
  expect(more).toEqual([]);
  const { vision } = await loadVision();
  const pieces = readCards(page!.picture, {}, vision, newFindings('scan.pdf'));
  expect(pieces).toHaveLength(1);
  return pieces[0]!.piece;
}

describe('PDFs whose pages are scans', () => {
  test('when the scan is packed as JPEG or deflated, the card on it has its true size and place', async () => {
    const { width, height } = SCAN;
    const jpeg = await sharp(SCAN.rgb, { raw: { width, height, channels: 3 } })
      .jpeg({ quality: 90 })
      .toBuffer();
    const asJpeg = { dictionary: dictionaryOf(SCAN, '/Filter /DCTDecode'), stream: jpeg };
    for (const object of [deflated, asJpeg]) {
      const { cut, punches } = await cardIn(writePdf({ pages: [pageOf(SCAN)], objects: [object] }));
      const box = curveBox(cut);
      expect(Math.abs(box.minX - 20)).toBeLessThan(0.15);
      expect(Math.abs(box.minY - 15)).toBeLessThan(0.15);
      expect(Math.abs(box.maxX - 80)).toBeLessThan(0.15);
      expect(Math.abs(box.maxY - 45)).toBeLessThan(0.15);
      expect(Math.abs(punches[0]!.diameterMm - 5)).toBeLessThan(0.15);
      expect(Math.hypot(punches[0]!.at.x - 30, punches[0]!.at.y - 25)).toBeLessThan(0.15);
    }
  });

  test('when the page is turned, the card is seen as one looks at it', async () => {
    const { cut, punches } = await cardIn(
      writePdf({ pages: [pageOf(SCAN, '/Rotate 90')], objects: [deflated] }),
    );
    const box = curveBox(cut);
    expect(box.maxX - box.minX).toBeCloseTo(30, 0);
    expect(box.maxY - box.minY).toBeCloseTo(60, 0);
    // Clockwise by a quarter: (x, y) goes to (height - y, x).
    expect(Math.hypot(punches[0]!.at.x - 45, punches[0]!.at.y - 30)).toBeLessThan(0.3);
  });

  test('when the scan is cut into strips, they are one picture', async () => {
    const { width, height, rgb } = SCAN;
    const upper = 200;
    const strip = (from: number, to: number) => ({
      dictionary: dictionaryOf({ width, height: to - from }, '/Filter /FlateDecode'),
      stream: deflateSync(rgb.subarray(from * width * 3, to * width * 3)),
    });
    const k = 72 / 200;
    const page = {
      ...pageOf(SCAN),
      content: `q ${width * k} 0 0 ${upper * k} 0 ${(height - upper) * k} cm /P Do Q q ${width * k} 0 0 ${(height - upper) * k} 0 0 cm /Q Do Q`,
      resources: `/XObject << /P ${FIRST_OBJECT} 0 R /Q ${FIRST_OBJECT + 1} 0 R >>`,
    };
    const { cut } = await cardIn(
      writePdf({ pages: [page], objects: [strip(0, upper), strip(upper, height)] }),
    );
    const box = curveBox(cut);
    expect(Math.abs(box.maxY - box.minY - 30)).toBeLessThan(0.15);
  });

  test('when a page is black and white at one bit, its pixels are where they should be', async () => {
    // Eight by two pixels of 10 mm: the first row white to the left, the second one to the right.
    const object = {
      dictionary:
        '/Type /XObject /Subtype /Image /Width 8 /Height 2 /BitsPerComponent 1 /ColorSpace /DeviceGray',
      stream: Uint8Array.of(0xf0, 0x0f),
    };
    const [w, h] = [80 * POINTS_PER_MM, 20 * POINTS_PER_MM];
    const page = { ...pageOf(SCAN, undefined, `${w} 0 0 ${h} 0 0`), mediaBox: [0, 0, w, h] };
    const [first] = await readPdfPictures(writePdf({ pages: [page], objects: [object] }), 'scan.pdf');
    const { picture } = first!;
    expect(picture.pxPerMm).toBeCloseTo(0.1, 6);
    expect([...picture.rgb].filter((_, i) => i % 3 === 0)).toEqual([
      ...[255, 255, 255, 255, 0, 0, 0, 0],
      ...[0, 0, 0, 0, 255, 255, 255, 255],
    ]);
  });

  test('when the PDF holds drawn lines alone, that is said; reading a scan as a pattern names the way', async () => {
    const { code } = await refusalOf(writePdf({ pages: [{ content: '10 10 100 60 re S' }] }));
    expect(code).toBe('pdf-no-pictures');
    const bytes = writePdf({ pages: [pageOf(SCAN)], objects: [deflated] });
    const reason = await readPattern(bytes, { file: 'scan.pdf' }).catch((error: unknown) => error);
    expect((reason as IntakeError).code).toBe('pdf-only-pictures');
    expect((reason as IntakeError).message).toContain('hidebound trace --pieces');
  });

  test.each([
    [
      'a deflated bomb',
      {
        dictionary: dictionaryOf(SCAN, '/Filter /FlateDecode'),
        stream: deflateSync(new Uint8Array(320_000_000), { level: 1 }),
      },
    ],
    [
      'a JPEG of 60,000 × 60,000 by its frame',
      {
        dictionary: dictionaryOf(SCAN, '/Filter /DCTDecode'),
        stream: Uint8Array.of(
          0xff,
          0xd8,
          0xff,
          0xc0,
          0,
          17,
          8,
          0xea,
          0x60,
          0xea,
          0x60,
          3,
          1,
          0x22,
          0,
          2,
          0x11,
          1,
          3,
          0x11,
          1,
          0xff,
          0xda,
          0,
          2,
          0,
        ),
      },
    ],
    [
      'a picture that says to be 60,000 × 60,000',
      { dictionary: dictionaryOf({ width: 60_000, height: 60_000 }, ''), stream: 'abc' },
    ],
  ])('when the picture is %s, it is never unpacked', async (_, object) => {
    const { code } = await refusalOf(writePdf({ pages: [pageOf(SCAN)], objects: [object] }));
    expect(code).toBe('pdf-no-pictures');
  });
});
