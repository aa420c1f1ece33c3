import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { curveArea, curveBox, curveLength } from '@hidebound/geometry';
import { readPattern } from '@hidebound/intake';
import { expect } from 'vitest';
import { testFolder } from './cli-support.js';
import { outsideProgram, pythonWith, testWith } from './tools/outside.js';

// Inkscape's own DXF export is a script for Debian's Python: R14, curves as splines of degree 3.
const script = '/usr/share/inkscape/extensions/dxf_outlines.py';
const python = pythonWith('lxml, numpy', 'python3-lxml and python3-numpy');
const folder = testFolder();
const exporter = {
  name: 'Inkscape with python3-lxml and python3-numpy',
  isThere: outsideProgram('inkscape', ['--version']).isThere && existsSync(script) && python.isThere,
};

const SVG = `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="150mm" viewBox="0 0 200 150" fill="none" stroke="#000">
<rect x="10" y="20" width="100" height="60"/><circle cx="150" cy="50" r="20"/><path d="M20 30 C 40 50 80 30 100 50"/></svg>`;

testWith(exporter, 'when Inkscape exports a drawing as DXF, its shapes have the drawn sizes', async () => {
  const svg = join(folder, 'drawn.svg');
  writeFileSync(svg, SVG);
  const run = spawnSync(python.path, [script, '--unit_from_document=False', '--units=mm', svg], {
    cwd: '/usr/share/inkscape/extensions',
    maxBuffer: 1 << 28,
  });
  expect(run.status, run.stderr.toString()).toBe(0);
  const file = join(folder, 'drawn.dxf');
  writeFileSync(file, run.stdout);
  const read = await readPattern(readFileSync(file), { file });
  expect(read.scale).toEqual({ mmPerUnit: 1, source: 'units' });
  const [panel, disc] = read.pieces.map(({ piece }) => piece);
  // The page is 150 mm high and y grows upwards there.
  expect(curveBox(panel!.cut)).toEqual({ minX: 10, minY: -130, maxX: 110, maxY: -70 });
  // Its circle is four cubics, at most 0.0273 % of the radius (0.005 mm) outside the true one.
  expect(Math.abs(Math.abs(curveArea(disc!.cut)) - Math.PI * 400)).toBeLessThan(2 * Math.PI * 20 * 0.006);
  const drawn = { start: { x: 20, y: 30 }, closed: false } as const;
  const handles = { handle1: { x: 40, y: 50 }, handle2: { x: 80, y: 30 }, to: { x: 100, y: 50 } };
  const length = curveLength({ ...drawn, segments: [{ kind: 'cubic', ...handles }] });
  expect(Math.abs(curveLength(panel!.stitchLines[0]!.curve) - length)).toBeLessThan(0.01);
});
