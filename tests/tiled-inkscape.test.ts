import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { circleCurve, curveBox, flattenCurve, polylineNearest, transformCurve } from '@hidebound/geometry';
import type { Curve, CurveSegment, Point } from '@hidebound/geometry';
import { readPattern } from '@hidebound/intake';
import type { PatternRead } from '@hidebound/intake';
import type { PagesReading } from '@hidebound/leather';
import { describe, expect } from 'vitest';
import { outsideProgram, testWith } from './tools/outside.js';

/**
 * Patterns that a drawing program divides among pages: Inkscape writes each page of a drawing that has several as a page
 * of a PDF. The judge is the drawing that it was given; its numbers are ours.
 */
const inkscape = outsideProgram('inkscape', ['--version']);

/** What the outline of a piece that was put together may be off anywhere, mm. */
const WITHIN_MM = 0.2;

const PAGE = { width: 210, height: 297 };
const folder = mkdtempSync(join(tmpdir(), 'tiled-'));

const line = (x: number, y: number): CurveSegment => ({ kind: 'line', to: { x, y } });
const cubic = (...n: readonly number[]): CurveSegment => ({
  kind: 'cubic',
  handle1: { x: n[0]!, y: n[1]! },
  handle2: { x: n[2]!, y: n[3]! },
  to: { x: n[4]!, y: n[5]! },
});
const closed = (x: number, y: number, segments: readonly CurveSegment[]): Curve => ({
  start: { x, y },
  segments: [...segments, line(x, y)],
  closed: true,
});

/** Invented pieces of a pannier: a back with a bowed edge, a flap, a round end, a strap over three pages. */
const PIECES: Readonly<Record<string, Curve>> = {
  back: closed(40, 40, [
    line(300, 60),
    cubic(400, 80, 420, 200, 380, 300),
    cubic(340, 400, 200, 420, 120, 360),
  ]),
  flap: closed(430, 120, [cubic(520, 100, 600, 160, 590, 260), line(560, 470), line(440, 450)]),
  end: circleCurve({ x: 150, y: 470 }, 70),
  strap: closed(230, 480, [line(480, 500), line(470, 560), line(228, 540)]),
};

function pathData({ start, segments }: Curve): string {
  const at = ({ x, y }: Point) => `${x} ${y}`;
  const parts = segments.map((segment) => {
    if (segment.kind === 'line') return `L ${at(segment.to)}`;
    if (segment.kind === 'cubic') return `C ${at(segment.handle1)} ${at(segment.handle2)} ${at(segment.to)}`;
    // The only arcs here are half circles of radius 70.
    return `A 70 70 0 0 1 ${at(segment.to)}`;
  });
  return `M ${at(start)} ${parts.join(' ')} Z`;
}

/** Invented pieces of a frame bag of which something lies in the strip that Inkscape's pages lose at their right: a flat crossing, a round end. */
const FLAT_PIECES: Readonly<Record<string, Curve>> = {
  side: closed(40, 60, [
    line(190, 40),
    line(216, 330),
    cubic(216, 400, 180, 430, 120, 430),
    cubic(60, 430, 25, 400, 25, 330),
  ]),
  // The round end is two quarter circles of 20 mm (handles of 4/3 · (√2 − 1) of the radius).
  strap: closed(60, 480, [
    line(190, 480),
    cubic(201.046, 480, 210, 488.954, 210, 500),
    cubic(210, 511.046, 201.046, 520, 190, 520),
    line(60, 520),
  ]),
  flap: closed(150, 20, [line(330, 30), line(330, 32), line(150, 30)]),
  gusset: closed(120, 540, [line(320, 545), line(320, 575), line(120, 570)]),
};

interface Tiles {
  readonly columns: number;
  readonly rows: number;
  readonly overlap: number;
  readonly marks: string;
  readonly pieces?: typeof PIECES;
}

function tiledPdf(name: string, { columns, rows, overlap, marks, pieces = PIECES }: Tiles): Buffer {
  const pages = Array.from({ length: columns * rows }, (_, k) => {
    const x = (k % columns) * (PAGE.width - overlap);
    const y = Math.floor(k / columns) * (PAGE.height - overlap);
    return `<inkscape:page id="p${k}" x="${x}" y="${y}" width="${PAGE.width}" height="${PAGE.height}"/>`;
  });
  const paths = Object.entries(pieces).map(
    ([id, curve]) =>
      `<path id="${id}" d="${pathData(curve)}" fill="none" stroke="#000000" stroke-width="0.5"/>`,
  );
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape"
    xmlns:sodipodi="http://sodipodi.sourceforge.net/DTD/sodipodi-0.dtd" width="${PAGE.width}mm"
    height="${PAGE.height}mm" viewBox="0 0 ${PAGE.width} ${PAGE.height}">
    <sodipodi:namedview id="view">${pages.join('')}</sodipodi:namedview>${paths.join('')}${marks}</svg>`;
  const file = join(folder, name);
  writeFileSync(`${file}.svg`, svg);
  inkscape.run(['--export-type=pdf', `--export-filename=${file}.pdf`, `${file}.svg`]);
  return readFileSync(`${file}.pdf`);
}

/** Crosses where pages meet, in the middle of what they share. */
function crosses({ columns, rows, overlap }: Omit<Tiles, 'marks' | 'pieces'>): string {
  const marks: string[] = [];
  for (let i = 0; i <= columns; i++) {
    for (let j = 0; j <= rows; j++) {
      const x = i * (PAGE.width - overlap) + overlap / 2;
      const y = j * (PAGE.height - overlap) + overlap / 2;
      marks.push(`M ${x - 3} ${y} h 6 M ${x} ${y - 3} v 6`);
    }
  }
  return `<path d="${marks.join(' ')}" fill="none" stroke="#000000" stroke-width="0.2"/>`;
}

function farthest(a: Curve, b: Curve): number {
  const [one, other] = [flattenCurve(a, 0.005), flattenCurve(b, 0.005)];
  const miss = (points: readonly Point[], chain: readonly Point[]) =>
    Math.max(...points.map((p) => polylineNearest(chain, p).distance));
  return Math.max(miss(one, other), miss(other, one));
}

/** Each drawn piece by how far the nearest piece that was read lies from it. */
function expectDrawnPieces(read: PatternRead, pieces = PIECES): void {
  expect(read.pieces).toHaveLength(Object.keys(pieces).length);
  expect(read.strays).toEqual([]);
  for (const [name, drawn] of Object.entries(pieces)) {
    const miss = Math.min(...read.pieces.map(({ piece }) => farthest(piece.cut, drawn)));
    expect(miss, name).toBeLessThan(WITHIN_MM);
  }
}

const read = (bytes: Uint8Array, pages?: PagesReading) =>
  readPattern(bytes, {
    file: 'pannier.pdf',
    reading: { file: 'pannier.pdf', roles: [], ...(pages === undefined ? {} : { pages }) },
  });

describe('a pattern that Inkscape divides among pages', () => {
  testWith(
    inkscape,
    'when six pages meet at their edges and have no marks, they are joined by lines',
    async () => {
      const pdf = tiledPdf('plain', { columns: 3, rows: 2, overlap: 0, marks: '' });
      const pattern = await read(pdf);
      expectDrawnPieces(pattern);
      expect(pattern.pages!.map(({ joinedBy }) => joinedBy)).toEqual(Array<string>(6).fill('lines'));
      const corners = pattern.pages!.map(({ toWhole }) => ({ x: toWhole!.e, y: toWhole!.f }));
      corners.forEach(({ x, y }, k) => {
        expect(Math.abs(x - (k % 3) * 210)).toBeLessThan(0.05);
        expect(Math.abs(y - Math.floor(k / 3) * 297)).toBeLessThan(0.05);
      });
    },
  );

  testWith(
    inkscape,
    'when lines cross the strip between pages at a flat angle, or turn back in it, no piece is lost',
    async () => {
      const pdf = tiledPdf('flat', { columns: 2, rows: 2, overlap: 0, marks: '', pieces: FLAT_PIECES });
      const pattern = await read(pdf);
      expectDrawnPieces(pattern, FLAT_PIECES);
      const gaps = pattern.repairs.filter(({ kind }) => kind === 'gap joined');
      // Each gap is told with its size: those of flat lines are longer than the strip is wide.
      expect(gaps.some(({ sizeMm }) => sizeMm > 1)).toBe(true);
    },
  );

  testWith(
    inkscape,
    'when six pages overlap by 10 mm and share crosses, they are joined by them and no cross stays',
    async () => {
      const tiles = { columns: 3, rows: 2, overlap: 10 };
      const pattern = await read(tiledPdf('crosses', { ...tiles, marks: crosses(tiles) }));
      expectDrawnPieces(pattern);
      expect(pattern.pages!.every(({ joinedBy, marks }) => joinedBy === 'marks' && marks.length > 0)).toBe(
        true,
      );
    },
  );

  testWith(inkscape, 'when the grid and its overlap are stated, pages lie so without a search', async () => {
    const tiles = { columns: 3, rows: 2, overlap: 10 };
    const pdf = tiledPdf('stated', { ...tiles, marks: '' });
    const pattern = await read(pdf, { join: 'grid', columns: 3, overlapMm: [10, 10] });
    expectDrawnPieces(pattern);
    expect(pattern.pages!.every(({ joinedBy }) => joinedBy === 'grid')).toBe(true);
    // Of a wrong grid, lines at the edges of pages find no other half.
    await expect(read(pdf, { join: 'grid', columns: 2, overlapMm: [10, 10] })).rejects.toThrow(/grid/);
  });

  testWith(inkscape, 'when only the columns are stated, the overlap is found', async () => {
    const pdf = tiledPdf('found', { columns: 3, rows: 2, overlap: 12, marks: '' });
    const pattern = await read(pdf, { join: 'grid', columns: 3 });
    expectDrawnPieces(pattern);
    const found = pattern.diagnostics.find(({ code }) => code === 'overlap-found');
    expect(Math.abs(Number(found?.params?.['across']) - 12)).toBeLessThan(0.05);
    expect(Math.abs(Number(found?.params?.['down']) - 12)).toBeLessThan(0.05);
  });

  testWith(inkscape, 'when pages are read apart, each holds what is drawn on it', async () => {
    const pdf = tiledPdf('apart', { columns: 3, rows: 2, overlap: 0, marks: '' });
    const pattern = await read(pdf, { join: 'apart' });
    expect(pattern.pages!.every(({ joinedBy }) => joinedBy === 'alone')).toBe(true);
    for (const { curve } of pattern.pages!.flatMap(({ lines }) => lines)) {
      const box = curveBox(curve);
      expect(Math.min(box.minX, box.minY)).toBeGreaterThanOrEqual(0);
      expect(box.maxX).toBeLessThanOrEqual(PAGE.width);
      expect(box.maxY).toBeLessThanOrEqual(PAGE.height);
    }
  });

  testWith(
    inkscape,
    'when its pages are turned, so that they run from right to left, they are put together',
    async () => {
      const pdf = tiledPdf('turned', { columns: 3, rows: 2, overlap: 10, marks: '' });
      // ISO 32000-1, 7.7.3.3: "Rotate" turns a page clockwise when it is shown, by multiples of 90°.
      const turned = Buffer.from(
        pdf.toString('latin1').replaceAll('/MediaBox', '/Rotate 90 /MediaBox'),
        'latin1',
      );
      const height = 2 * (PAGE.height - 10) + 10;
      // What was y from above is then x from the right.
      const matrix = { a: 0, b: 1, c: -1, d: 0, e: height, f: 0 };
      const pieces = Object.fromEntries(
        Object.entries(PIECES).map(([name, curve]) => [name, transformCurve(matrix, curve)]),
      );
      expectDrawnPieces(await read(turned), pieces);
      const stated = await read(turned, { take: [4, 1, 5, 2, 6, 3], columns: 2 });
      expectDrawnPieces(stated, pieces);
      expect(stated.pages!.map(({ number }) => number)).toEqual([4, 1, 5, 2, 6, 3]);
      // In the order of the file, they fit no such grid.
      await expect(read(turned, { columns: 2 })).rejects.toThrow(/grid/);
    },
  );
});
