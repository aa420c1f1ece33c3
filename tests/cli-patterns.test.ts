import { copyFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { readPatternSvg } from '@hidebound/intake';
import { describe, expect, it } from 'vitest';
import { DEMO, ROOT, expectOneSentence, hideboundHere, testFolder } from './cli-support.js';
import { outsideProgram, testWith } from './tools/outside.js';

const folder = testFolder();
const FRONT = join(DEMO, 'patterns', 'saddlebag-front.svg');
const POCKETS = join(DEMO, 'patterns', 'saddlebag-pockets.svg');

interface ToldFile {
  readonly format: string;
  readonly pieces: readonly Record<string, unknown>[];
  readonly repairs: readonly { kind: string; element: string; at: number[]; sizeMm: number }[];
}

async function filesOf(...args: string[]): Promise<readonly ToldFile[]> {
  const run = await hideboundHere(['pieces', ...args, '--json']);
  expect(run.status, run.stderr + run.stdout).toBe(0);
  return (JSON.parse(run.stdout) as { result: { files: ToldFile[] } }).result.files;
}

/** Two invented tags: one with a solid red and a dashed line within, a layer of its own, and a filled area. */
const LOOKS = `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="100mm" viewBox="0 0 200 100" fill="none">
<path id="tag" d="M10 10H110V90H10Z" stroke="#000000" stroke-width="0.3"/>
<g id="hems"><path d="M20 20H100" stroke="#cc0000" stroke-width="0.5"/></g>
<path d="M20 40H100" stroke="#000000" stroke-width="0.3" stroke-dasharray="3 2"/>
<path d="M30 60H40V70H30Z" fill="#000000"/>
</svg>`;

describe('hidebound pieces --save', () => {
  it('when two files are saved as one drawing, it holds the pieces of both, and is read without a word', async () => {
    const saved = join(folder, 'bag.svg');
    const run = await hideboundHere(['pieces', FRONT, POCKETS, '--save', saved]);
    expect(run.status, run.stderr).toBe(0);
    expect(run.stdout).toContain(`The pattern is in ${saved}`);
    const [first, second] = await filesOf(FRONT, POCKETS);
    const again = await hideboundHere(['pieces', saved, '--json']);
    const told = JSON.parse(again.stdout) as { result: { files: ToldFile[] }; diagnostics: unknown[] };
    expect(told.diagnostics).toEqual([]);
    expect(told.result.files[0]!.pieces).toEqual([...first!.pieces, ...second!.pieces]);
  });

  it('when two files have pieces of one name, both files and the name are told and nothing is written', async () => {
    const twin = join(folder, 'twin.svg');
    copyFileSync(FRONT, twin);
    const saved = join(folder, 'twins.svg');
    const run = await hideboundHere(['pieces', FRONT, twin, '--save', saved]);
    expect(run.status).toBe(2);
    expect(expectOneSentence(run)).toMatch(
      /saddlebag-front\.svg and .*twin\.svg have a piece "saddlebag-front"/,
    );
    expect(existsSync(saved)).toBe(false);
  });

  it.each([
    ['over a file that is read', (at: string) => ['--save', at], /is being read/],
    ['under another kind of name', () => ['--save', join(folder, 'bag.pdf')], /must be named \.svg/],
    [
      'to where the picture goes',
      () => ['--save', join(folder, 'same.svg'), '--picture', join(folder, 'same.svg')],
      /a name of its own/,
    ],
  ])('when it is to be saved %s, it ends with 2 and nothing is written', async (_, options, words) => {
    const file = join(folder, 'own.svg');
    writeFileSync(file, LOOKS);
    const run = await hideboundHere(['pieces', file, ...options(file)]);
    expect(run.status).toBe(2);
    expect(expectOneSentence(run)).toMatch(words);
    expect(readFileSync(file, 'utf8')).toBe(LOOKS);
    expect(existsSync(join(folder, 'same.svg')) || existsSync(join(folder, 'bag.pdf'))).toBe(false);
  });

  it('when no piece was found, nothing is saved', async () => {
    const file = join(folder, 'nothing.svg');
    writeFileSync(file, '<svg xmlns="http://www.w3.org/2000/svg" width="10mm" height="10mm"/>');
    const saved = join(folder, 'saved-nothing.svg');
    const run = await hideboundHere(['pieces', file, '--save', saved]);
    expect(run.status).toBe(1);
    expect(existsSync(saved)).toBe(false);
  });
});

describe('what lines are, from the command line', () => {
  const file = join(folder, 'looks.svg');
  writeFileSync(file, LOOKS);
  const counts = async (...rules: string[]) => {
    const [read] = await filesOf(file, ...rules.flatMap((rule) => ['--role', rule]));
    const { stitchLines, foldLines, skiveLines, cementLines } = read!.pieces[0]! as Record<string, number>;
    return { stitchLines, foldLines, skiveLines, cementLines };
  };

  it('when nothing is said, both lines within are stitch lines', async () => {
    expect(await counts()).toEqual({ stitchLines: 2, foldLines: 0, skiveLines: 0, cementLines: 0 });
  });

  it.each([
    [['fold:dashed'], { stitchLines: 1, foldLines: 1, skiveLines: 0, cementLines: 0 }],
    [['skive:layer=HEM*'], { stitchLines: 1, foldLines: 0, skiveLines: 1, cementLines: 0 }],
    [['cement:colour=#CC0000,solid'], { stitchLines: 1, foldLines: 0, skiveLines: 0, cementLines: 1 }],
    [
      ['cement:width=0.4-0.6', 'fold:dashed'],
      { stitchLines: 0, foldLines: 1, skiveLines: 0, cementLines: 1 },
    ],
    [['skive:filled'], { stitchLines: 2, foldLines: 0, skiveLines: 1, cementLines: 0 }],
    [['ignore:colour=#cc0000,dashed'], { stitchLines: 2, foldLines: 0, skiveLines: 0, cementLines: 0 }],
  ])('when the rules are %j, the lines are as they say', async (rules, want) => {
    expect(await counts(...rules)).toEqual(want);
  });

  it.each([
    [['--role', 'dashed'], /write it as stitch:dashed/],
    [['--role', 'hem:dashed'], /a line is one of cut, cut-out/],
    [['--role', 'stitch:colour=red'], /can't be read/],
    [['--role', 'stitch:'], /can't be read/],
    [['--size', ':layer=M'], /write it as M:layer=size-m/],
    [['--pages', '3-1'], /are no page numbers; write them as "2-7, 9"/],
    [['--overlap', 'a bit'], /write it as "10 mm"/],
    [['--overlap', '1 x 2 x 3'], /write it as "10 mm"/],
    [['--units', 'miles'], /must be one of mm, cm, m, in, ft/],
    [['--join', 'glue'], /must be one of marks, lines, grid, apart/],
    [['--columns', '0'], /whole number from 1 to/],
  ])('when %j is given, it ends with 2 and says how it is written', async (args, words) => {
    const run = await hideboundHere(['pieces', file, ...args]);
    expect(run.status).toBe(2);
    expect(expectOneSentence(run)).toMatch(words);
  });
});

describe('what was mended', () => {
  /** An outline of four lines whose ends miss each other by 0.05 mm, drawn 25 times. */
  const gaps = Array.from({ length: 25 }, (_, i) => {
    const x = 10 + 50 * i;
    return `<path d="M${x} 10H${x + 40}"/><path d="M${x + 40} 10.05V60"/><path d="M${x + 40} 60.05H${x}"/><path d="M${x} 60V10.05"/>`;
  });
  const file = join(folder, 'gaps.svg');
  writeFileSync(
    file,
    `<svg xmlns="http://www.w3.org/2000/svg" width="1300mm" height="100mm" viewBox="0 0 1300 100" fill="none" stroke="#000000">${gaps.join('\n')}</svg>`,
  );

  it('when gaps were joined, each is told with its place and size, the first 20 in the table and all in --json', async () => {
    const [read] = await filesOf(file);
    const joined = read!.repairs.filter(({ kind }) => kind === 'gap joined');
    expect(joined.length).toBeGreaterThanOrEqual(50);
    for (const { at, sizeMm } of joined) {
      expect(sizeMm).toBeCloseTo(0.05, 3);
      expect([10, 60].some((y) => Math.abs(at[1]! - y) < 0.1)).toBe(true);
    }
    const run = await hideboundHere(['pieces', file]);
    expect(run.stdout.split('\n').filter((line) => line.includes('gap joined'))).toHaveLength(20);
    expect(run.stdout).toContain(
      `and ${read!.repairs.length - 20} more (--json lists all ${read!.repairs.length})`,
    );
  });

  it('when the mended pattern is saved, what is read back needs no mending', async () => {
    const saved = join(folder, 'mended.svg');
    await hideboundHere(['pieces', file, '--save', saved]);
    const { repairs, pieces } = readPatternSvg(readFileSync(saved), { file: saved });
    expect(repairs).toEqual([]);
    expect(pieces).toHaveLength(25);
  });
});

const ROLL = join(ROOT, 'fixtures', 'patterns', 'programs', 'bar-roll.pdf');
const pdftotext = outsideProgram('pdftotext');

describe('patterns over many pages', () => {
  interface ToldPage {
    readonly number: number;
    readonly joinedBy: string;
    readonly missMm?: number;
    readonly toWhole?: { readonly e: number; readonly f: number };
  }
  const pagesOf = async (...args: string[]) =>
    ((await filesOf(ROLL, ...args))[0] as unknown as { pages: readonly ToldPage[] }).pages;

  it('when six pages are put together, each is told with its place, which is that of the drawing', async () => {
    const pages = await pagesOf();
    expect(pages.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6]);
    for (const { number, joinedBy, missMm, toWhole } of pages) {
      // Steps of 180 and 267 mm, three pages side by side: fixtures/patterns/programs/make.py.
      expect(joinedBy).toBe('marks');
      expect(missMm).toBeLessThan(0.05);
      expect(toWhole!.e).toBeCloseTo(180 * ((number - 1) % 3), 1);
      expect(toWhole!.f).toBeCloseTo(267 * Math.floor((number - 1) / 3), 1);
    }
    const run = await hideboundHere(['pieces', ROLL]);
    expect(run.stdout.split('\n').filter((line) => / marks +0\.0\d +/.test(line))).toHaveLength(6);
  });

  it('when only some pages are taken, only those are read', async () => {
    const pages = await pagesOf('--pages', '4-6');
    expect(pages.map(({ number }) => number)).toEqual([4, 5, 6]);
  });

  testWith(pdftotext, 'when a picture is drawn as PDF, its first page shows how the pages lie', async () => {
    const picture = join(folder, 'roll.pdf');
    const saved = join(folder, 'roll.svg');
    const run = await hideboundHere(['pieces', ROLL, '--picture', picture, '--save', saved]);
    expect(run.status, run.stderr).toBe(0);
    expect(run.stdout.indexOf('joined by')).toBeLessThan(run.stdout.indexOf('The pattern is in'));
    const page = (n: number) =>
      pdftotext.run([picture, '-f', String(n), '-l', String(n), '-layout', '-']).toString();
    expect(page(1)).toMatch(/How the pages lie: bar-roll\.pdf/);
    for (const number of ['1', '2', '3', '4', '5', '6']) expect(page(1).split(/\s+/)).toContain(number);
    expect(page(2)).toMatch(/roll body[\s\S]*roll pockets/);
  });

  it('when a picture is drawn as SVG, the pages stand above the pieces, each part with its layers', async () => {
    const picture = join(folder, 'roll-picture.svg');
    await hideboundHere(['pieces', ROLL, '--picture', picture]);
    const svg = readFileSync(picture, 'utf8');
    const at = (words: string) => svg.indexOf(words);
    expect(at('How the pages lie')).toBeGreaterThan(0);
    expect(at('>roll body<')).toBeGreaterThan(at('How the pages lie'));
  });
});

describe('halves and sizes, from the command line', () => {
  const drawn = (name: string, body: string): string => {
    const file = join(folder, name);
    const open = `<svg xmlns="http://www.w3.org/2000/svg" width="400mm" height="200mm" viewBox="0 0 400 200" fill="none" stroke="#000000">`;
    writeFileSync(file, `${open}${body}</svg>`);
    return file;
  };

  it('when a half is read as drawn, it stays one', async () => {
    const file = drawn(
      'half.svg',
      '<path id="flap" d="M100 10H160V110H100Z"/><path class="mirror" d="M100 10V110"/>',
    );
    const [whole] = await filesOf(file);
    const [half] = await filesOf(file, '--as-drawn');
    expect([whole!.pieces[0]!['widthMm'], half!.pieces[0]!['widthMm']]).toEqual([120, 60]);
  });

  it('when colours are said to be sizes, each is a piece of its own', async () => {
    const file = drawn(
      'sizes.svg',
      '<path id="grip" stroke="#111111" d="M10 10H110V90H10Z"/><path id="grip-b" stroke="#2d6fa3" d="M10 10H120V98H10Z"/>',
    );
    const [read] = await filesOf(file, '--size', 'S:colour=#111111', '--size', 'M:colour=#2D6FA3');
    expect(read!.pieces.map(({ size, widthMm }) => [size, widthMm])).toEqual([
      ['S', 100],
      ['M', 110],
    ]);
  });
});

describe('hidebound pieces --order', () => {
  const ORDER = join(DEMO, 'bought-patterns.order.yaml');
  const PANEL = join(ROOT, 'fixtures', 'patterns', 'programs', 'frame-panel.dxf');

  it('when a file is read as its order says, units and roles are the order’s', async () => {
    const [panel] = await filesOf(PANEL, '--order', ORDER);
    expect(panel!.pieces[0]).toMatchObject({
      widthMm: 304.8,
      heightMm: 203.2,
      stitchLines: 1,
      skiveLines: 1,
    });
  });

  it('when the command line says otherwise, its word counts', async () => {
    const [panel] = await filesOf(PANEL, '--order', ORDER, '--units', 'cm', '--role', 'cement:layer=C');
    expect(panel!.pieces[0]).toMatchObject({ widthMm: 120, stitchLines: 1, skiveLines: 0, cementLines: 1 });
  });

  it('when the order says nothing of a file, it is read by itself', async () => {
    const [front] = await filesOf(FRONT, '--order', ORDER);
    expect(front!.pieces[0]).toMatchObject({ name: 'saddlebag-front', widthMm: 240 });
  });

  it('when the demo’s order of bought patterns is laid, it says how to see what was read, and that works', async () => {
    const out = join(folder, 'bought.layout.json');
    const run = await hideboundHere(['lay', ORDER, '--effort', '0', '--out', out]);
    expect(run.status, run.stdout + run.stderr).toBe(0);
    expect(run.stdout).toMatch(/5 of 5 pieces are laid, and the layout is proven/);
    const [, told] = /hidebound (pieces .* --order .*)/.exec(run.stdout)!;
    const shown = await hideboundHere(told!.split(' '));
    expect(shown.status, shown.stderr).toBe(0);
    expect(shown.stdout).toMatch(/frame-panel\.dxf +DXF +1 +25\.4 mm +the unit that was asked for/);
  });
});
