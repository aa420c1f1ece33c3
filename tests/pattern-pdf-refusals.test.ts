import { IntakeError, readPattern } from '@hidebound/intake';
import type { PatternReading } from '@hidebound/leather';
import { describe, expect, it } from 'vitest';
import { lockedPdf } from './tools/locked-pdf.js';
import { FIRST_OBJECT, latin, writePdf } from './tools/write-pdf.js';
import type { WrittenFile } from './tools/write-pdf.js';

const BOX = '10 10 100 60 re S';

async function refusalOf(bytes: Uint8Array, reading?: PatternReading): Promise<IntakeError> {
  const reason = await readPattern(bytes, {
    file: 'flap.pdf',
    ...(reading === undefined ? {} : { reading }),
  }).catch((error: unknown) => error);
  expect(reason).toBeInstanceOf(IntakeError);
  return reason as IntakeError;
}

const codeOf = async (file: WrittenFile, reading?: PatternReading) =>
  (await refusalOf(writePdf(file), reading)).code;

const reading = (more: Partial<PatternReading>): PatternReading => ({ file: 'flap.pdf', roles: [], ...more });

describe('PDFs that can not be read', () => {
  it('when the file is only its first line, cut off or garbled, it is broken', async () => {
    const whole = writePdf({ pages: [{ content: BOX }] });
    expect((await refusalOf(latin('%PDF-1.7\n'))).code).toBe('pdf-broken');
    expect((await refusalOf(whole.subarray(0, 60))).code).toBe('pdf-broken');
    const garbled = Buffer.from(whole).fill(0x41, 20, 320);
    expect((await refusalOf(garbled)).code).toBe('pdf-broken');
    const { message } = await refusalOf(whole.subarray(0, 60));
    expect(message).toMatch(/^flap\.pdf: The file is not a whole PDF .*print it to a new PDF\.$/);
  });

  // ISO 32000-1, section 7.6: AES and RC4 keys of every age, as pdfkit writes them.
  it('when a password is needed to open it, the way out is told', async () => {
    for (const pdfVersion of ['1.3', '1.4', '1.6', '1.7', '1.7ext3']) {
      const bytes = await lockedPdf({ userPassword: 'secret', ownerPassword: 'more secret', pdfVersion });
      const { code, message } = await refusalOf(bytes);
      expect(code).toBe('pdf-encrypted');
      expect(message).toContain('print it and photograph or scan the pages');
    }
  });

  // ISO 32000-1, table 22, bit 5: copy or otherwise extract text and graphics.
  it('when it opens without a password but forbids copying, it is refused; when it allows it, it is read', async () => {
    for (const pdfVersion of ['1.4', '1.6', '1.7ext3']) {
      const forbids = await lockedPdf({ ownerPassword: 'x', permissions: { copying: false }, pdfVersion });
      expect((await refusalOf(forbids)).code).toBe('pdf-forbids-reading');
      const allows = await lockedPdf({ ownerPassword: 'x', permissions: { copying: true }, pdfVersion });
      const { pieces } = await readPattern(allows, { file: 'flap.pdf' });
      expect(pieces).toHaveLength(1);
    }
  });

  it('when its pages are pictures, tracing or another file is advised; when one has lines, the others are told of', async () => {
    const picture = {
      content: 'q 100 0 0 100 0 0 cm /P Do Q BT 3 Tr /F1 9 Tf 9 9 Td (read by a scanner) Tj ET',
      resources: `/XObject << /P ${FIRST_OBJECT} 0 R >>`,
    };
    const objects = [
      {
        dictionary:
          '/Type /XObject /Subtype /Image /Width 2 /Height 2 /BitsPerComponent 8 /ColorSpace /DeviceGray',
        stream: 'abcd',
      },
    ];
    expect(await codeOf({ pages: [picture], objects })).toBe('pdf-only-pictures');
    const { diagnostics, ignored } = await readPattern(
      writePdf({ pages: [picture, { content: BOX }], objects }),
      { file: 'flap.pdf' },
    );
    expect(ignored).toContainEqual({ element: 'picture', reason: 'image' });
    expect(diagnostics).toContainEqual(
      expect.objectContaining({ code: 'pdf-pages-without-lines', params: { pages: '1', count: 1 } }),
    );
  });

  it('when there are no pages or no lines, that is said', async () => {
    expect(await codeOf({ pages: [] })).toBe('pdf-no-pages');
    expect(await codeOf({ pages: [{ content: 'BT /F1 9 Tf 9 9 Td (notes) Tj ET' }] })).toBe('pdf-no-lines');
  });

  it('when a page is asked for that is not there, its number and the count are told', async () => {
    const file = { pages: [{ content: BOX }] };
    const { code, message } = await refusalOf(writePdf(file), reading({ pages: { take: [1, 2] } }));
    expect(code).toBe('pdf-no-such-page');
    expect(message).toContain('Page 2 is asked for, but the file has 1 page;');
  });

  it('when it has too many pages, or a page of kilometres, it is refused', async () => {
    const many = Array.from({ length: 2001 }, () => ({ content: BOX }));
    expect(await codeOf({ pages: many })).toBe('pdf-too-many-pages');
    expect(await codeOf({ pages: [{ content: BOX, entries: '/UserUnit 1000000' }] })).toBe(
      'absurd-coordinate',
    );
  });

  it('when a line comes from kilometres away, it is refused; an area around all of the page is none', async () => {
    const far = '0.5 g -10000000 -10000000 20000000 20000000 re f';
    expect(await codeOf({ pages: [{ content: '-10000000 150 m 100 150 l S' }] })).toBe('absurd-coordinate');
    const { pieces } = await readPattern(writePdf({ pages: [{ content: `${far} ${BOX}` }] }), {
      file: 'a.pdf',
    });
    expect(pieces).toHaveLength(1);
  });
});

describe('what an order says of a PDF', () => {
  const file = writePdf({
    pages: [
      {
        content:
          '0.5 w 20 20 160 200 re S 1 0 0 RG 30 30 m 150 30 l S 0 0 1 RG [4 2] 0 d 30 60 m 150 60 l S 0 G [] 0 d 3 w 30 90 m 150 90 l S BT /F1 9 Tf 40 150 Td (back strap) Tj ET',
      },
    ],
  });

  it('when nothing is said, pieces have their names from texts and sizes from points', async () => {
    const { pieces, scale } = await readPattern(file, { file: 'flap.pdf' });
    expect(pieces.map(({ piece }) => piece.name)).toEqual(['back strap']);
    expect(scale).toEqual({ mmPerUnit: 25.4 / 72, source: 'units' });
  });

  it('when roles are given by colour, dash and width, they hold', async () => {
    const { pieces } = await readPattern(file, {
      file: 'flap.pdf',
      reading: reading({
        roles: [
          { role: 'fold', colour: '#ff0000' },
          { role: 'skive', dashed: true },
          { role: 'ignore', widthMm: [1, 2] },
        ],
      }),
    });
    const { foldLines, skiveLines, stitchLines } = pieces[0]!.piece;
    expect([foldLines.length, skiveLines.length, stitchLines.length]).toEqual([1, 1, 0]);
  });

  it('when the scale or a known length is given, pieces and pages are larger by it', async () => {
    const plain = await readPattern(file, { file: 'flap.pdf' });
    const twice = await readPattern(file, { file: 'flap.pdf', reading: reading({ scale: 2 }) });
    const known = await readPattern(file, {
      file: 'flap.pdf',
      reading: reading({ knownLength: { element: 'path 2 on page 1', mm: (2 * 120 * 25.4) / 72 } }),
    });
    for (const { box, pages } of [twice, known]) {
      expect(box!.maxX - box!.minX).toBeCloseTo(2 * (plain.box!.maxX - plain.box!.minX), 1);
      expect(pages![0]!.widthMm).toBeCloseTo(2 * plain.pages![0]!.widthMm, 1);
    }
  });

  it('when dpi or units are given, they are said to make no difference', async () => {
    const { diagnostics } = await readPattern(file, {
      file: 'flap.pdf',
      reading: reading({ dpi: 300, units: 'in' }),
    });
    const told = diagnostics.filter(({ code }) => code === 'pdf-scale-in-file');
    expect(told.map(({ params }) => params)).toEqual([{ name: 'dpi' }, { name: 'units' }]);
  });
});
