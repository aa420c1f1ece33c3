import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { curveArea, curveLength } from '@hidebound/geometry';
import type { Curve } from '@hidebound/geometry';
import { readPattern } from '@hidebound/intake';
import type { PatternRead } from '@hidebound/intake';
import { afterAll, beforeAll, describe, expect } from 'vitest';
import { expectBox } from './tools/expect-box.js';
import type { DrawnBox } from './tools/expect-box.js';
import { outsideProgram, pythonWith, testWith } from './tools/outside.js';
// @ts-expect-error: plain JavaScript, run by hand too
import * as programDrawings from './tools/program-drawings.mjs';

interface Drawings {
  readonly DRAWN: Record<'panel' | 'stitch' | 'twin', DrawnBox> & {
    readonly tab: { readonly radius: number };
  };
  readonly inkscapeInput: (unit: string) => { readonly svg: string };
  readonly officeInput: (unit: string) => string;
}
const { DRAWN, inkscapeInput, officeInput } = programDrawings as Drawings;
const { panel, stitch, twin, tab } = DRAWN;

const cairo = pythonWith('cairo', 'python3-cairo');
const inkscape = outsideProgram('inkscape', ['--version']);
const office = outsideProgram('soffice', ['--version']);

const cutOf = ({ pieces }: PatternRead, name: string): Curve =>
  pieces.find(({ piece }) => piece.name === name)!.piece.cut;

/** The panel: 80 x 50 mm less what its rounded corners leave out, (4 - pi) r² in all; r is 6 mm. */
const PANEL_AREA = 80 * 50 - (4 - Math.PI) * 36;
/** Its outline: straight sides and a full circle of 6 mm. */
const PANEL_LENGTH = 2 * (80 - 12) + 2 * (50 - 12) + 2 * Math.PI * 6;
/** Half a disc of radius 15 on 30 x 40. */
const TAB_AREA = (Math.PI * tab.radius ** 2) / 2 + 30 * 40;

describe('PDFs of drawing programs', () => {
  let folder = '';
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'pdf-programs-'));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  // cairo writes places to about 1/1000 point and curves as it is given them.
  testWith(
    cairo,
    'when cairo draws pieces of known size, areas, lengths, places and looks are those',
    async () => {
      const file = join(folder, 'cairo.pdf');
      cairo.run(['-c', CAIRO_SCRIPT, file]);
      const read = await readPattern(readFileSync(file), { file: 'cairo.pdf' });
      expect(read.pieces.map(({ piece }) => piece.name)).toEqual(['front', 'piece-2']);
      const front = read.pieces[0]!.piece;
      expectBox(front.cut, { x: 20, y: 30, width: 80, height: 50 }, 0.002);
      expect(curveArea(front.cut)).toBeCloseTo(80 * 50, 0);
      expect(front.stitchLines).toHaveLength(1);
      expectBox(front.stitchLines[0]!.curve, { x: 25, y: 35, width: 70, height: 40 }, 0.002);
      expect(front.punches).toHaveLength(1);
      expect(front.punches[0]!.diameterMm).toBeCloseTo(4, 2);
      const disc = read.pieces[1]!.piece.cut;
      expect(Math.abs(Math.abs(curveArea(disc)) - Math.PI * 25 ** 2)).toBeLessThan(0.05 * 50);
      expect(Math.abs(curveLength(disc) - Math.PI * 50)).toBeLessThan(0.02);
      expect(read.diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
    },
  );

  // cairo gives the outlines of a font's letters as one path a text, holes, dots and accents included.
  testWith(
    cairo,
    'when cairo draws texts as outlines, upright and turned, the pieces are those without them',
    async () => {
      const file = join(folder, 'lettering.pdf');
      cairo.run(['-c', CAIRO_LETTERING, file]);
      const { pieces, diagnostics } = await readPattern(readFileSync(file), { file: 'lettering.pdf' });
      expect(pieces).toHaveLength(1);
      expectBox(pieces[0]!.piece.cut, { x: 10, y: 10, width: 180, height: 130 }, 0.002);
      expect(pieces[0]!.piece.cutOuts).toEqual([]);
      expect(diagnostics.map(({ code }) => code)).toEqual(['lettering-left-out', 'direction-not-drawn']);
      // Each text makes one row at least; turned ones may fall apart into several.
      expect(diagnostics[0]!.params['rows']).toBeGreaterThanOrEqual(5);
    },
  );

  testWith(inkscape, 'when Inkscape saves its drawing as PDF, pieces lie where they are drawn', async () => {
    const { svg } = inkscapeInput('mm');
    const [input, output] = [join(folder, 'in.svg'), join(folder, 'out.pdf')];
    writeFileSync(input, svg);
    process.env['INKSCAPE_PROFILE_DIR'] = join(folder, 'profile');
    inkscape.run(['--export-type=pdf', `--export-filename=${output}`, input]);
    const read = await readPattern(readFileSync(output), { file: 'inkscape.pdf' });
    expectProgramDrawing(read, 0.02);
  });

  testWith(
    office,
    'when LibreOffice Draw saves its drawing as PDF, pieces lie where they are drawn',
    async () => {
      const input = join(folder, 'office.fodg');
      writeFileSync(input, officeInput('mm'));
      const profile = pathToFileURL(join(folder, 'office')).href;
      office.run([
        `-env:UserInstallation=${profile}`,
        '--headless',
        '--convert-to',
        'pdf',
        '--outdir',
        folder,
        input,
      ]);
      const read = await readPattern(readFileSync(join(folder, 'office.pdf')), { file: 'office.pdf' });
      // The program writes places to a tenth of a point, 0.035 mm.
      expectProgramDrawing(read, OFFICE_WITHIN_MM);
    },
  );
});

const OFFICE_WITHIN_MM = 0.04;

function expectProgramDrawing(read: PatternRead, within: number): void {
  expect(read.pieces).toHaveLength(3);
  const names = read.pieces.map(({ piece }) => piece.name);
  expect(names).toContain('panel');
  expectBox(cutOf(read, 'panel'), panel, within);
  expect(Math.abs(Math.abs(curveArea(cutOf(read, 'panel'))) - PANEL_AREA)).toBeLessThan(
    within * PANEL_LENGTH,
  );
  expect(Math.abs(curveLength(cutOf(read, 'panel')) - PANEL_LENGTH)).toBeLessThan(8 * within);
  const others = read.pieces.filter(({ piece }) => piece.name !== 'panel').map(({ piece }) => piece.cut);
  const areas = others.map((cut) => Math.abs(curveArea(cut))).sort((a, b) => a - b);
  expect(Math.abs(areas[0]! - TAB_AREA)).toBeLessThan(within * 160);
  expect(Math.abs(areas[1]! - PANEL_AREA)).toBeLessThan(within * PANEL_LENGTH);
  const twinCut = others.find((cut) => Math.abs(Math.abs(curveArea(cut)) - areas[1]!) < 1e-9)!;
  expectBox(twinCut, twin, within);
  const stitches = read.pieces.flatMap(({ piece }) => piece.stitchLines);
  expect(stitches).toHaveLength(1);
  expectBox(stitches[0]!.curve, stitch, within);
}

/** All figures in mm; the page is 210 x 160. */
const CAIRO_LETTERING = `
import cairo, math, sys
k = 72 / 25.4
surface = cairo.PDFSurface(sys.argv[1], 210 * k, 160 * k)
c = cairo.Context(surface)
c.scale(k, k)
c.set_line_width(0.3)
c.rectangle(10, 10, 180, 130)
c.stroke()
for i, (text, turn) in enumerate([('saddle bag, flap', 0), ('Öse 12 mm', 90), ('cut 2', 180), ('glue here!', 270), ('skive the edge', 37)]):
    c.save()
    c.translate(40 + 30 * i, 75)
    c.rotate(math.radians(turn))
    c.set_font_size(3 + i)
    c.move_to(2, 0)
    c.text_path(text)
    c.fill()
    c.restore()
surface.finish()
`;

const CAIRO_SCRIPT = `
import cairo, math, sys
k = 72 / 25.4
surface = cairo.PDFSurface(sys.argv[1], 210 * k, 160 * k)
c = cairo.Context(surface)
c.scale(k, k)
c.set_line_width(0.3)
c.rectangle(20, 30, 80, 50)
c.stroke()
c.set_dash([2, 1])
c.rectangle(25, 35, 70, 40)
c.stroke()
c.set_dash([])
c.arc(30, 60, 2, 0, 2 * math.pi)
c.close_path()
c.stroke()
c.arc(150, 80, 25, 0, 2 * math.pi)
c.close_path()
c.set_source_rgb(1, 0, 0)
c.stroke()
c.set_font_size(6)
c.move_to(40, 60)
c.show_text('front')
surface.finish()
`;
