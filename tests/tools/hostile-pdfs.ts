import { deflateSync } from 'node:zlib';
import { FIRST_OBJECT, latin, writePdf } from './write-pdf.js';
import type { WrittenObject } from './write-pdf.js';

/** Files that are made to take all time or memory; invented, each for one way of doing so. */
export const HOSTILE_PDFS: Readonly<Record<string, () => Uint8Array>> = {
  'a form that contains itself': () =>
    writePdf({
      pages: [{ content: '/A Do', resources: `/XObject << /A ${FIRST_OBJECT} 0 R >>` }],
      objects: [form('0 0 m 9 9 l S /A Do', [`/A ${FIRST_OBJECT} 0 R`])],
    }),
  'ten levels of forms that each draw ten': () =>
    writePdf({ pages: [startOf(0)], objects: manyForms(10, 10, '0 0 m 9 9 l S') }),
  'thirteen levels of forms, the last ones empty': () =>
    writePdf({ pages: [startOf(0)], objects: manyForms(13, 10, '') }),
  'forms upon forms in a tiled filling': () => {
    const forms = manyForms(11, 10, '0 0 m 9 9 l S');
    const pattern = FIRST_OBJECT + forms.length;
    return writePdf({
      pages: [
        {
          content: '/Pattern cs /P scn 0 0 90 90 re B',
          resources: `/Pattern << /P ${pattern} 0 R >>`,
        },
      ],
      objects: [
        ...forms,
        {
          dictionary: `/PatternType 1 /PaintType 1 /TilingType 1 /BBox [0 0 9 9] /XStep 9 /YStep 9 /Resources << /XObject << /A ${FIRST_OBJECT} 0 R >> >>`,
          stream: '/A Do',
        },
      ],
    });
  },
  'forms upon forms in a letter': () => {
    const forms = manyForms(11, 10, '0 0 m 9 9 l S');
    const font = FIRST_OBJECT + forms.length;
    return writePdf({
      pages: [
        {
          content: '0 0 m 9 9 l S BT /T 9 Tf 20 20 Td (a) Tj ET',
          resources: `/Font << /T ${font} 0 R >>`,
          entries: '/NoFont true',
        },
      ],
      objects: [
        ...forms,
        {
          dictionary: `/Type /Font /Subtype /Type3 /FontBBox [0 0 9 9] /FontMatrix [0.1 0 0 0.1 0 0] /FirstChar 97 /LastChar 97 /Widths [9] /Encoding << /Differences [97 /a] >> /CharProcs << /a ${font + 1} 0 R >> /Resources << /XObject << /A ${FIRST_OBJECT} 0 R >> >>`,
        },
        { dictionary: '', stream: '9 0 0 0 9 9 d1 /A Do' },
      ],
    });
  },
  'a deflate bomb of a page': () => deflated(new Uint8Array(100_000_000).fill(0x20)),
  'a deflate bomb in a deflate bomb': () =>
    writePdf({
      pages: [{ content: '/A Do', resources: `/XObject << /A ${FIRST_OBJECT} 0 R >>` }],
      objects: [
        {
          dictionary: '/Type /XObject /Subtype /Form /BBox [0 0 9 9] /Filter [/FlateDecode /FlateDecode]',
          stream: deflateSync(deflateSync(new Uint8Array(300_000_000))),
        },
      ],
    }),
  'a deflate bomb that says it is a picture': () =>
    writePdf({
      pages: [{ content: '', entries: `/Contents ${FIRST_OBJECT} 0 R` }],
      objects: [
        {
          dictionary: '/Subtype /Image /Width 20000 /Height 20000 /Filter /FlateDecode',
          stream: deflateSync(new Uint8Array(100_000_000).fill(0x20)),
        },
      ],
    }),
  'a deflate bomb whose filter stands elsewhere': () =>
    writePdf({
      pages: [{ content: '', entries: `/Contents ${FIRST_OBJECT} 0 R` }],
      objects: [
        {
          dictionary: `/Filter ${FIRST_OBJECT + 1} 0 R`,
          stream: Buffer.from(`${deflateSync(new Uint8Array(100_000_000).fill(0x20)).toString('hex')}>`),
        },
        { dictionary: '', bare: '[/ASCIIHexDecode /FlateDecode]' },
      ],
    }),
  'a page tree 20,000 deep': () => {
    const depth = 20_000;
    const kid = (i: number) => FIRST_OBJECT + i;
    const nodes = Array.from({ length: depth }, (_, i): WrittenObject => {
      const isLeaf = i === depth - 1;
      return {
        dictionary: isLeaf
          ? `/Type /Page /Parent ${kid(i - 1)} 0 R /MediaBox [0 0 99 99] /Contents 11 0 R`
          : `/Type /Pages /Count 1 /Kids [${kid(i + 1)} 0 R] /Parent ${i === 0 ? 2 : kid(i - 1)} 0 R`,
      };
    });
    return replaced(
      writePdf({ pages: [{ content: '0 0 m 9 9 l S' }], objects: nodes }),
      '/Kids [10 0 R]',
      `/Kids [${FIRST_OBJECT} 0 R]`,
    );
  },
  'a page tree in a circle': () =>
    replaced(
      writePdf({ pages: [{ content: '0 0 m 9 9 l S' }], pagesEntries: '/Parent 2 0 R' }),
      '/Kids [10 0 R]',
      '/Kids [ 2 0 R]',
    ),
  'a billion pages by their count': () =>
    replaced(writePdf({ pages: [{ content: '0 0 m 9 9 l S' }] }), '/Count 1 ', '/Count 999999999 '),
  'an array of thirty million numbers': () =>
    deflated(Buffer.concat([latin('0 0 m 9 9 l S ['), Buffer.alloc(60_000_000, '0 '), latin('] 0 d')])),
  'an array of eight million numbers': () =>
    plain(Buffer.concat([latin('0 0 m 9 9 l S ['), Buffer.alloc(16_000_000, '0 '), latin('] 0 d')])),
  'arrays twenty million deep': () => deflated(Buffer.alloc(20_000_000, '[')),
  'arrays two million deep': () => plain(Buffer.alloc(2_000_000, '[')),
  'eight megabytes of drawing': () => plain(Buffer.alloc(8_000_000, '0 0 m 9 9 l S\n')),
  'one path of twenty megabytes': () =>
    plain(Buffer.concat([latin('0 0 m '), Buffer.alloc(20_000_000, '9 9 l 1 1 l\n'), latin('S')])),
  'two million saved states': () => plain(Buffer.alloc(4_000_000, 'q ')),
  'twenty megabytes of words that mean nothing': () => plain(Buffer.alloc(20_000_000, 'zz ')),
  'twenty megabytes of texts': () =>
    plain(Buffer.concat([latin('0 0 m 9 9 l S BT /F1 9 Tf '), Buffer.alloc(22_000_000, '(a) Tj\n')])),
  'a thousand clips upon each other': () =>
    plain(Buffer.alloc(45_000, '0 0 m 99 0 l 0 99 l W n 9 9 m 50 1 l S\n')),
  'a table of places of four hundred million entries': () =>
    tableOfPlaces('/W [1 0 0] /Size 400000000', 400_000),
  'a function of a billion samples': () =>
    writePdf({
      pages: [
        {
          content: '/C CS 1 SCN 0 0 m 9 9 l S',
          resources: `/ColorSpace << /C [/Separation /Cut /DeviceRGB ${FIRST_OBJECT} 0 R] >>`,
        },
      ],
      objects: [
        {
          dictionary: '/FunctionType 0 /Domain [0 1] /Range [0 1 0 1 0 1] /Size [400000000] /BitsPerSample 8',
          stream: 'abc',
        },
      ],
    }),
};

function form(content: string, xobjects: readonly string[]): WrittenObject {
  return {
    dictionary: `/Type /XObject /Subtype /Form /BBox [0 0 99 99] /Resources << /XObject << ${xobjects.join(' ')} >> >>`,
    stream: content,
  };
}

function startOf(level: number) {
  return { content: '/A Do', resources: `/XObject << /A ${FIRST_OBJECT + level} 0 R >>` };
}

/** Levels of forms, each of which draws the next so many times. */
function manyForms(levels: number, times: number, last: string): WrittenObject[] {
  return Array.from({ length: levels }, (_, i) =>
    i === levels - 1 ? form(last, []) : form('/A Do '.repeat(times), [`/A ${FIRST_OBJECT + i + 1} 0 R`]),
  );
}

/** Large as it is, so that no packing tells of it. */
function plain(content: Uint8Array): Uint8Array {
  return writePdf({ pages: [{ content }] });
}

function deflated(content: Uint8Array): Uint8Array {
  return writePdf({ pages: [{ content }], isDeflated: true });
}

/** A text in its place is exchanged for another; places after it shift, which readers mend. */
function replaced(pdf: Uint8Array, from: string, to: string): Uint8Array {
  return latin(Buffer.from(pdf).toString('latin1').replace(from, to));
}

/** A file whose table of places is a stream (ISO 32000-1, section 7.5.8). */
function tableOfPlaces(entries: string, bytes: number): Uint8Array {
  const table = deflateSync(new Uint8Array(bytes));
  const head = latin('%PDF-1.7\n1 0 obj\n<< /Type /Catalog /Pages 2 0 R >>\nendobj\n');
  return Buffer.concat([
    head,
    latin(
      `9 0 obj\n<< /Type /XRef /Root 1 0 R ${entries} /Filter /FlateDecode /Length ${table.length} >>\nstream\n`,
    ),
    table,
    latin(`\nendstream\nendobj\nstartxref\n${head.length}\n%%EOF\n`),
  ]);
}
