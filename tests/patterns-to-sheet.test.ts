import { copyFileSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { curveArea } from '@hidebound/geometry';
import { parseLayout } from '@hidebound/leather';
import type { Layout } from '@hidebound/leather';
import { describe, expect, it } from 'vitest';
import { ROOT, SMALL_HIDE, closed, hidebound, hideboundHere, testFolder } from './cli-support.js';
import { outsideProgram, testWith } from './tools/outside.js';

// From a pattern file of each kind, by an order that says how it is to be read, to a proven layout and a cutting sheet.
// The files were made by cairo, ezdxf and Inkscape (fixtures/patterns/programs/make.py, where the numbers stand); the
// areas are worked out here from those numbers. All goods are invented.

const folder = testFolder();
const PROGRAMS = join(ROOT, 'fixtures', 'patterns', 'programs');
const MM2_PER_IN2 = 25.4 * 25.4;
/** Rounding of what a PDF holds (cairo writes six digits) and of fitted arcs, as a share of the area. */
const AREA_SHARE = 2e-4;

/** A rectangle with so many quarter rounds cut off its corners. */
const rounded = (w: number, h: number, r: number, corners: number) =>
  w * h - corners * (1 - Math.PI / 4) * r * r;
/** What a circle's arc cuts off on the far side of its chord. */
const segment = (r: number, angle: number) => (r * r * (angle - Math.sin(angle))) / 2;

interface WantedPiece {
  readonly areaMm2: number;
  readonly stitch?: number;
  readonly fold?: number;
  readonly skive?: number;
  readonly punches?: number;
  readonly cutOuts?: number;
}

const BAR_ROLL: Readonly<Record<string, WantedPiece>> = {
  'roll body': { areaMm2: rounded(420, 280, 20, 4), fold: 1, punches: 2 },
  'roll pockets': { areaMm2: 410 * 140 - segment(200, Math.PI / 3), stitch: 2 },
};
/** Solid lines from edge to edge, which would all be fold lines, are told apart by their colours. */
const BAR_ROLL_ROLES = `
    roles:
      - { role: fold, colour: '#996600' }
      - { role: stitch, colour: '#006699' }`;

interface Case {
  readonly title: string;
  readonly file: string;
  /** What the order says of the file. */
  readonly reading: string;
  readonly pieces: Readonly<Record<string, WantedPiece>>;
  /** The file itself, where it is not one of those made by programs. */
  readonly text?: string;
}

const CASES: readonly Case[] = [
  {
    title: 'SVG, its lines told apart by a layer',
    file: 'fork-pouch.svg',
    text: `<svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="200mm" viewBox="0 0 300 200" fill="none" stroke="#000000">
      <path id="fork-pouch" d="M20 20H220V140H20Z"/><g id="thin"><path d="M25 30H215"/></g><path d="M30 130H210"/></svg>`,
    reading: `
    roles:
      - { role: skive, layer: th* }`,
    pieces: { 'fork-pouch': { areaMm2: 200 * 120, skive: 1, stitch: 1 } },
  },
  {
    title: 'PDF of one page by Inkscape, its fold told by dash and colour',
    file: 'cage-pad.pdf',
    reading: `
    roles:
      - { role: fold, colour: '#aa0000', dashed: true }`,
    pieces: { 'cage pad': { areaMm2: rounded(150, 70, 10, 2), fold: 1, stitch: 1, punches: 1 } },
  },
  {
    title: 'DXF by ezdxf without a unit, in inches, its stitch line told by layer',
    file: 'frame-panel.dxf',
    reading: `
    units: in
    roles:
      - { role: stitch, layer: B }
      - { role: skive, layer: C }`,
    pieces: {
      'frame panel': {
        areaMm2: MM2_PER_IN2 * rounded(12, 8, 2, 1),
        stitch: 1,
        skive: 1,
        punches: 1,
        cutOuts: 0,
      },
    },
  },
  {
    title: 'PDF over six pages by cairo, put together by its marks',
    file: 'bar-roll.pdf',
    reading: BAR_ROLL_ROLES,
    pieces: BAR_ROLL,
  },
  {
    title: 'PDF over six pages by cairo without a mark, put together in the grid that the order states',
    file: 'bar-roll-bare.pdf',
    reading: `
    pages: { take: 1-6, join: grid, columns: 3, overlap: 30 mm }${BAR_ROLL_ROLES}`,
    pieces: BAR_ROLL,
  },
];

const HIDE = {
  ...SMALL_HIDE,
  outline: closed([0, 0], [1000, 0], [1000, 700], [0, 700]),
  backbone: [
    [10, 10],
    [990, 10],
  ],
};

interface Job {
  readonly order: string;
  readonly layout: string;
  readonly sheet: string;
}

function jobOf({ file, text, reading, pieces }: Case): Job {
  const at = mkdtempSync(join(folder, 'job-'));
  if (text === undefined) copyFileSync(join(PROGRAMS, file), join(at, file));
  else writeFileSync(join(at, file), text);
  writeFileSync(join(at, 'panel.hide.json'), JSON.stringify(HIDE));
  const order = join(at, 'job.order.yaml');
  writeFileSync(order, orderText(file, reading, Object.keys(pieces)));
  return { order, layout: join(at, 'job.layout.json'), sheet: join(at, 'job.pdf') };
}

function orderText(file: string, reading: string, names: readonly string[]): string {
  const pieces = names.map(
    (name) => `      - { name: ${name}, leather: body, part: lining, pattern: ${file}, piece: ${name} }`,
  );
  return `format: hidebound/order@1
name: from ${file}
date: "2026-02-10"
cutting: { method: hand knife, gap: 2, edge: 3, void: 2, kerf: 0 }
keep: [100, 100]
leathers:
  body: { hides: [panel.hide.json] }
articles:
  - name: goods
    goods: goods
    sets: 1
    pieces:
${pieces.join('\n')}
patterns:
  ${file}:${reading}
`;
}

function expectPieces(layout: Layout, wanted: Case['pieces']): void {
  expect(layout.pieces.map(({ piece }) => piece).sort()).toEqual(Object.keys(wanted).sort());
  for (const { piece: name, shape } of layout.pieces) {
    const want = wanted[name]!;
    expect(Math.abs(Math.abs(curveArea(shape.cut)) / want.areaMm2 - 1), name).toBeLessThan(AREA_SHARE);
    expect(
      {
        stitch: shape.stitchLines.length,
        fold: shape.foldLines.length,
        skive: shape.skiveLines.length,
        punches: shape.punches.length,
        cutOuts: shape.cutOuts.length,
      },
      name,
    ).toEqual({
      stitch: want.stitch ?? 0,
      fold: want.fold ?? 0,
      skive: want.skive ?? 0,
      punches: want.punches ?? 0,
      cutOuts: want.cutOuts ?? 0,
    });
  }
  expect(layout.placements).toHaveLength(Object.keys(wanted).length);
}

const pdftotext = outsideProgram('pdftotext');

describe('from pattern file to cutting sheet', () => {
  it.each(CASES)(
    'when the pattern is $title, its pieces are laid as drawn, proven, and on the sheet',
    async (one) => {
      const { order, layout, sheet } = jobOf(one);
      const laid = await hideboundHere(['lay', order, '--effort', '0', '--out', layout]);
      expect(laid.status, laid.stderr + laid.stdout).toBe(0);
      expectPieces(parseLayout(readFileSync(layout, 'utf8'), { file: layout }), one.pieces);
      const checked = await hideboundHere(['check', layout]);
      expect(checked.status, checked.stdout).toBe(0);
      expect(checked.stdout).toMatch(/proven/);
      const drawn = await hideboundHere(['sheet', layout, '--pdf', sheet]);
      expect(drawn.status, drawn.stderr).toBe(0);
      expect(readFileSync(sheet, 'latin1').startsWith('%PDF')).toBe(true);
    },
  );

  testWith(
    pdftotext,
    'when a tiled PDF goes that way by the compiled command, the sheet names its pieces',
    () => {
      const one = CASES.find(({ file }) => file === 'bar-roll.pdf')!;
      const { order, layout, sheet } = jobOf(one);
      for (const args of [
        ['lay', order, '--effort', '0', '--out', layout],
        ['check', layout],
        ['sheet', layout, '--pdf', sheet],
      ]) {
        const run = hidebound(args);
        expect(run.status, run.stderr + run.stdout).toBe(0);
      }
      const words = pdftotext.run([sheet, '-']).toString();
      for (const name of Object.keys(one.pieces)) expect(words).toContain(name);
    },
  );
});
