import { existsSync, mkdtempSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { deflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { SMALL_HIDE, expectRefused, hideboundHere, testFolder, ROOT } from './cli-support.js';
import { FIRST_OBJECT, writePdf } from './tools/write-pdf.js';

// Pattern files that can't be read, each through the command line: one sentence, status 3, nothing written.

const folder = testFolder();
const PROGRAMS = join(ROOT, 'fixtures', 'patterns', 'programs');
const program = (name: string) => readFileSync(join(PROGRAMS, name));

/** A DXF of sections by their names, written pair by pair (group code, then value). */
function dxf(sections: Readonly<Record<string, readonly (readonly [number, string | number])[]>>): string {
  const pairs = Object.entries(sections).flatMap(([name, inside]) => [
    [0, 'SECTION'],
    [2, name],
    ...inside,
    [0, 'ENDSEC'],
  ]);
  return [...pairs, [0, 'EOF']].map(([code, value]) => `${code}\n${value}\n`).join('');
}

const MILLIMETRES = [
  [9, '$INSUNITS'],
  [70, 4],
] as const;

const line = (x: number) =>
  [
    [0, 'LINE'],
    [8, 'CUT'],
    [10, 0],
    [20, 0],
    [11, x],
    [21, 50],
  ] as const;

const insert = (block: string) =>
  [
    [0, 'INSERT'],
    [8, '0'],
    [2, block],
    [10, 0],
    [20, 0],
  ] as const;

const block = (name: string, inside: readonly (readonly [number, string | number])[]) =>
  [[0, 'BLOCK'], [8, '0'], [2, name], [70, 0], [10, 0], [20, 0], ...inside, [0, 'ENDBLK'], [8, '0']] as const;

interface Bad {
  readonly file: string;
  readonly content: () => string | Uint8Array;
  readonly words: RegExp;
  readonly options?: readonly string[];
}

/** A password that nobody knows, by the standard security handler (ISO 32000-1, section 7.6.3). */
const locked = () =>
  writePdf({
    pages: [{ content: '10 10 80 80 re S' }],
    objects: [
      {
        dictionary: `/Filter /Standard /V 1 /R 2 /Length 40 /P -4 /O <${'5a'.repeat(32)}> /U <${'a5'.repeat(32)}>`,
      },
    ],
    trailer: `/Encrypt ${FIRST_OBJECT} 0 R /ID [<${'01'.repeat(16)}> <${'01'.repeat(16)}>]`,
  });

const pictureOnly = () =>
  writePdf({
    pages: [
      { content: 'q 180 0 0 280 10 10 cm /I Do Q', resources: `/XObject << /I ${FIRST_OBJECT} 0 R >>` },
    ],
    objects: [
      {
        dictionary:
          '/Type /XObject /Subtype /Image /Width 1 /Height 1 /BitsPerComponent 8 /ColorSpace /DeviceGray',
        stream: new Uint8Array([90]),
      },
    ],
  });

const cyclicForm = () =>
  writePdf({
    pages: [{ content: '/A Do', resources: `/XObject << /A ${FIRST_OBJECT} 0 R >>` }],
    objects: [
      {
        dictionary: `/Type /XObject /Subtype /Form /BBox [0 0 90 90] /Resources << /XObject << /A ${FIRST_OBJECT} 0 R >> >>`,
        stream: '0 0 m 9 9 l S /A Do',
      },
    ],
  });

/** A page that unpacks to far more than any drawing has. */
const BOMB_BYTES = 400_000_000;
const bomb = () =>
  writePdf({
    pages: [{ content: '', entries: `/Contents ${FIRST_OBJECT} 0 R` }],
    objects: [
      { dictionary: '/Filter /FlateDecode', stream: deflateSync(new Uint8Array(BOMB_BYTES), { level: 1 }) },
    ],
  });

const BAD: Readonly<Record<string, Bad>> = {
  'a PDF with a form that contains itself': {
    file: 'circle.pdf',
    content: cyclicForm,
    words: /contains itself or breaks off/,
  },
  'a PDF that stops in the middle': {
    file: 'cut.pdf',
    content: () => program('bar-roll.pdf').subarray(0, 5000),
    words: /damaged, or stops too early/,
  },
  'a PDF with a password': { file: 'locked.pdf', content: locked, words: /locked with a password.*print it/ },
  'a PDF of pictures alone': {
    file: 'scan.pdf',
    content: pictureOnly,
    words: /pictures \(scans or photographs\)/,
  },
  'a PDF that unpacks without end': { file: 'bomb.pdf', content: bomb, words: /unpacks to more than \d+ MB/ },
  'a PDF without the page that is asked for': {
    file: 'six.pdf',
    content: () => program('bar-roll.pdf'),
    options: ['--pages', '5-7'],
    words: /Page 7 is asked for, but the file has 6 pages/,
  },
  'a PDF whose pages do not fit the stated grid': {
    file: 'grid.pdf',
    content: () => program('bar-roll-bare.pdf'),
    options: ['--columns', '3', '--page-order', 'columns'],
    words: /In the grid that was stated, .* without going on/,
  },
  'a PDF with no marks to join by': {
    file: 'bare.pdf',
    content: () => program('bar-roll-bare.pdf'),
    options: ['--join', 'marks'],
    words: /No marks were found that two pages share/,
  },
  'a DXF whose blocks contain each other': {
    file: 'cycle.dxf',
    content: () =>
      dxf({
        HEADER: MILLIMETRES,
        BLOCKS: [...block('one', insert('two')), ...block('two', insert('one'))],
        ENTITIES: insert('one'),
      }),
    words: /The block "(one|two)" contains itself/,
  },
  'a DXF without a unit': {
    file: 'no-units.dxf',
    content: () => program('frame-panel.dxf'),
    words: /does not say its unit: it is 12 mm wide if that is mm, 305 mm .*--units on the command line/,
  },
  'a DXF with huge coordinates': {
    file: 'huge.dxf',
    content: () => dxf({ HEADER: MILLIMETRES, ENTITIES: line(1e9) }),
    words: /patterns reach 50 m at most/,
  },
  'a DXF in binary form': {
    file: 'binary.dxf',
    content: () => Buffer.from('Some Binary DXF\r\n\x1a\0\0\0SECTION\0', 'latin1'),
    words: /DXF in binary form; export it as DXF in text/,
  },
  'a DXF that stops in the middle': {
    file: 'cut.dxf',
    content: () => dxf({ HEADER: MILLIMETRES, ENTITIES: line(70) }).slice(0, -40),
    words: /stops in the middle/,
  },
  'a picture': {
    file: 'photo.png',
    content: () => Buffer.from('\x89PNG\r\n\x1a\n\0\0\0\rIHDR', 'latin1'),
    words: /This is .*(PNG|picture)/,
  },
};

const CASES = Object.entries(BAD).map(([title, bad]) => ({ title, ...bad }));

describe('pattern files that can not be read', () => {
  it.each(CASES)('when it is $title, one sentence says so and nothing is written', async (bad) => {
    const at = mkdtempSync(join(folder, 'bad-'));
    const file = join(at, bad.file);
    writeFileSync(file, bad.content());
    const kept = join(at, 'kept.svg');
    writeFileSync(kept, 'what was there before');
    const outputs = ['--save', kept, '--picture', join(at, 'picture.pdf')];
    const run = await hideboundHere(['pieces', file, ...(bad.options ?? []), ...outputs]);
    expectRefused(run, file, bad.words);
    expect(run.stdout).toBe('');
    expect(readFileSync(kept, 'utf8')).toBe('what was there before');
    expect(readdirSync(at).sort()).toEqual([bad.file, 'kept.svg'].sort());
  });

  it('when an order names one, laying ends with 3, names the pattern, and leaves the layout as it was', async () => {
    const at = mkdtempSync(join(folder, 'order-'));
    const file = join(at, 'locked.pdf');
    writeFileSync(file, locked());
    writeFileSync(join(at, 'panel.hide.json'), JSON.stringify(SMALL_HIDE));
    const order = join(at, 'job.order.yaml');
    writeFileSync(
      order,
      `format: hidebound/order@1
name: locked
date: "2026-02-10"
cutting: hand knife
leathers:
  body: { hides: [panel.hide.json] }
articles:
  - name: goods
    goods: goods
    sets: 1
    pieces:
      - { name: pad, leather: body, part: lining, pattern: ${basename(file)}, piece: pad }
`,
    );
    const run = await hideboundHere(['lay', order, '--effort', '0', '--out', join(at, 'out.layout.json')]);
    expectRefused(run, file, /locked with a password/);
    expect(existsSync(join(at, 'out.layout.json'))).toBe(false);
  });
});

describe('patterns where another file is wanted', () => {
  it.each([
    ['lay', 'bar-roll.pdf', /Here an order .* is wanted, but this is a pattern \(PDF\)/],
    ['hide', 'bar-roll.pdf', /Here a hide file .* is wanted, but this is a pattern \(PDF\)/],
    ['check', 'frame-panel.dxf', /Here a layout .* is wanted, but this is a pattern \(DXF\)/],
    ['lay', 'frame-panel.dxf', /"hidebound pieces" reads it, and orders name it/],
  ])('when %s is given %s, it says what that is and who reads it', async (command, name, words) => {
    const file = join(PROGRAMS, name);
    expectRefused(await hideboundHere([command, file]), file, words);
  });
});
