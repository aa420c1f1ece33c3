import { existsSync, writeFileSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { curveBox } from '@hidebound/geometry';
import { cutFileOf } from '@hidebound/leather';
import type { CutFile, CutFileOptions } from '@hidebound/leather';
import { drawCutFile, writeCutSvg, writeDxf } from '@hidebound/render';
import type { CutDrawing } from '@hidebound/render';
import { loadFontBook } from '@hidebound/render/node';
import { beforeAll, describe, expect, test } from 'vitest';
import { testFolder } from './cli-support.js';
import { layCutJob } from './support/cut-job.js';
import { outsideProgram, pythonWith, testWith } from './tools/outside.js';

const folder = testFolder();
const OPTIONS: CutFileOptions = {
  choice: 'pieces',
  kerfMm: 0.2,
  overcutMm: 0.5,
  leadIn: { kind: 'arc', lengthMm: 3 },
  bridges: { count: 2, widthMm: 1 },
  marks: true,
  frame: true,
  labels: true,
  side: 'grain',
};
let file: CutFile;
let drawing: CutDrawing;
beforeAll(async () => {
  const job = await layCutJob(folder, 'job', '{ method: laser, gap: 5, edge: 3, void: 2, kerf: 0.2 }');
  file = cutFileOf(job.layout, job.hide, OPTIONS).file;
  const text = { fonts: loadFontBook(), numberOf: () => '7' };
  ({ drawing } = drawCutFile(file, { title: 'Ω', text }));
});

type Extent = readonly [number, number, number, number];

/** Left, top, width and height of a kind's true curves on the drawing, mm. */
function extentOf(kinds: readonly string[]): Extent {
  const boxes = drawing.paths
    .filter(({ kind }) => kinds.includes(kind))
    .flatMap(({ curves }) => curves.map(curveBox));
  const left = Math.min(...boxes.map(({ minX }) => minX));
  const top = Math.min(...boxes.map(({ minY }) => minY));
  return [
    left,
    top,
    Math.max(...boxes.map(({ maxX }) => maxX)) - left,
    Math.max(...boxes.map(({ maxY }) => maxY)) - top,
  ];
}

function expectExtent(got: readonly number[], want: Extent, withinMm: number, what: string): void {
  expect(Math.max(...got.map((n, i) => Math.abs(n - want[i]!))), what).toBeLessThanOrEqual(withinMm);
}

const PX_PER_MM = 96 / 25.4;
const HAIRLINE_MM = 0.025;
const KINDS = ['frame', 'text', 'fold', 'punch', 'opening', 'cut'];

describe('SVG as resvg reads it', () => {
  test('when a cut file is read, its page and the box of each layer have their sizes in mm', () => {
    const svg = writeCutSvg(drawing);
    const whole = new Resvg(svg);
    // It rounds pages to whole pixels.
    expect(Math.abs(whole.width / PX_PER_MM - drawing.widthMm)).toBeLessThan(1 / PX_PER_MM);
    for (const kind of KINDS) {
      // One layer alone: the reader tells the box of all that it holds.
      const layers = svg.replace(/<g id="([^"]+)"[\s\S]*?<\/g>\n/g, (group: string, id: string) =>
        id === kind ? group : '',
      );
      const box = new Resvg(layers).getBBox()!;
      // In user units, of which the page has one a mm; the line's width counts.
      const got = [
        box.x + HAIRLINE_MM / 2,
        box.y + HAIRLINE_MM / 2,
        box.width - HAIRLINE_MM,
        box.height - HAIRLINE_MM,
      ];
      expectExtent(got, extentOf([kind]), 0.03, kind);
    }
  });
});

describe('files as Inkscape reads them', () => {
  const inkscape = outsideProgram('inkscape', ['--version']);

  /** Boxes by id, mm, without the width of the lines (which Inkscape counts). */
  function boxesOf(path: string, lineMm: number): Map<string, readonly number[]> {
    const rows = inkscape.run(['--query-all', path]).toString().trim().split('\n');
    return new Map(
      rows.map((row) => {
        const [id = '', ...numbers] = row.split(',');
        const [x, y, width, height] = numbers.map((n) => Number(n) / PX_PER_MM) as [
          number,
          number,
          number,
          number,
        ];
        return [id, [x + lineMm / 2, y + lineMm / 2, width - lineMm, height - lineMm]];
      }),
    );
  }

  testWith(inkscape, 'when it opens the SVG file, page and layers have the right sizes', () => {
    const path = join(folder, 'cut.svg');
    writeFileSync(path, writeCutSvg(drawing));
    const boxes = boxesOf(path, HAIRLINE_MM);
    // Lines that end have no width beyond their ends, which is taken off all the same.
    for (const kind of KINDS) expectExtent(boxes.get(kind)!, extentOf([kind]), 0.03, kind);
    expectExtent(boxes.get('frame')!, [0, 0, drawing.widthMm, drawing.heightMm], 0.02, 'page');
  });

  // Its own DXF import is a script for Debian's Python; within the program it wants a screen.
  const script = '/usr/share/inkscape/extensions/dxf_input.py';
  const python = pythonWith('lxml, numpy', 'python3-lxml and python3-numpy');
  const canImport = inkscape.isThere && existsSync(script) && python.isThere;
  const importer = { name: 'Inkscape with python3-lxml and python3-numpy', isThere: canImport };

  for (const version of ['R12', 'R2000'] as const) {
    testWith(importer, `when it opens the DXF file (${version}), the drawing has the right size`, () => {
      const dxf = join(folder, `${version}.dxf`);
      writeFileSync(dxf, writeDxf(drawing, version));
      const run = spawnSync(python.path, [script, '--scalemethod', 'manual', '--scale', '1.0', dxf], {
        cwd: '/usr/share/inkscape/extensions',
        maxBuffer: 1 << 28,
      });
      expect(run.status, run.stderr.toString()).toBe(0);
      const svg = join(folder, `${version}.svg`);
      writeFileSync(svg, run.stdout);
      const text = run.stdout.toString();
      const lineMm =
        Number(/stroke-width:\s*([\d.]+)/.exec(text.slice(text.indexOf('</defs>')))?.[1] ?? 1) / PX_PER_MM;
      const [whole] = boxesOf(svg, lineMm).values();
      const { widthMm, heightMm } = drawing;
      expect(Math.abs(whole![2]! - widthMm), 'width').toBeLessThan(0.1);
      expect(Math.abs(whole![3]! - heightMm), 'height').toBeLessThan(0.1);
    });
  }
});
