import { createRandom, curveBox, curveFromPolyline } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { describe, expect, it } from 'vitest';
import type { DrawnLine } from '../drawing/drawn-line.js';
import { newFindings } from '../findings.js';
import { putPagesTogether } from './put-together.js';
import { blob, drawnLine, farthestMiss, tilesOf } from './test-tiles.js';
import type { Tiling } from './test-tiles.js';

// The drawing that was cut into pages is the judge.

const ROW: Tiling = { columns: 2, rows: 1, width: 190, height: 277, overlap: 10, margin: 10 };
const SQUARE: Tiling = { ...ROW, rows: 2 };

function ring(...points: readonly (readonly [number, number])[]): DrawnLine {
  return drawnLine(
    curveFromPolyline(
      points.map(([x, y]): Point => ({ x, y })),
      true,
    ),
  );
}

const rectangle = (x: number, y: number, width: number, height: number): DrawnLine =>
  ring([x, y], [x + width, y], [x + width, y + height], [x, y + height]);

/** The whole's lines, and the parameters of the warnings that an overlap was not told. */
function together(lines: readonly DrawnLine[], tiling: Tiling) {
  const findings = newFindings('p.pdf');
  const { drawing } = putPagesTogether(tilesOf(lines, [], tiling), undefined, findings);
  const untold = findings.diagnostics.filter(({ code }) => code === 'overlap-not-told');
  return { lines: drawing.lines, untold };
}

describe('an overlap that nothing drawn tells', () => {
  // Sides that cross the lower edges square fit at any overlap; the slanted upper side fits at 10 mm across only.
  const panel = ring([20, 40], [330, 90], [330, 500], [20, 500]);

  it('when only square lines cross between rows, the overlap across is taken down too, with a warning', () => {
    const { lines, untold } = together([panel], SQUARE);
    expect(farthestMiss([panel], lines, { x: 10, y: 10 })).toBeLessThan(0.02);
    expect(untold).toHaveLength(1);
    expect(untold[0]).toMatchObject({
      severity: 'warning',
      params: { way: 'down', taken: 30, from: 'other axis', across: 30, down: 30, columns: 2 },
    });
  });

  it('when one slanted line crosses between rows, nothing is taken from across and nothing is warned of', () => {
    const slanted = ring([60, 200], [140, 200], [190, 400], [60, 400]);
    const { lines, untold } = together([panel, slanted], SQUARE);
    expect(farthestMiss([panel, slanted], lines, { x: 10, y: 10 })).toBeLessThan(0.02);
    expect(untold).toEqual([]);
  });

  it('when pages with margins share square lines alone, what they show is taken to meet, with a warning', () => {
    const { lines, untold } = together([rectangle(30, 100, 300, 80)], ROW);
    // Cut with an overlap of 10 mm, which no line tells: the strap comes out 10 mm too long, and that is said.
    const box = curveBox(lines[0]!.curve);
    expect(box.maxX - box.minX).toBeCloseTo(310, 2);
    expect(untold).toHaveLength(1);
    expect(untold[0]).toMatchObject({
      severity: 'warning',
      params: { way: 'across', taken: 20, from: 'edges', columns: 2 },
    });
  });

  it('when square lines run up to the edges of paper without margins, pages meet there, with a warning', () => {
    const strap = rectangle(30, 100, 300, 80);
    const { lines, untold } = together([strap], { ...ROW, overlap: 0, margin: 0 });
    expect(farthestMiss([strap], lines, { x: 0, y: 0 })).toBeLessThan(0.02);
    // Paper that was to lie one over the other looks just so.
    expect(untold[0]).toMatchObject({
      severity: 'warning',
      params: { way: 'across', taken: 0, from: 'edges' },
    });
  });

  it('when edges of paper are told to meet across, they meet down too, without a warning', () => {
    const { lines, untold } = together([panel], { ...SQUARE, overlap: 0, margin: 0 });
    expect(farthestMiss([panel], lines, { x: 0, y: 0 })).toBeLessThan(0.02);
    expect(untold).toEqual([]);
  });

  it('when pages without margins overlap across, they are taken to overlap down too, with a warning', () => {
    const { lines, untold } = together([panel], { ...SQUARE, margin: 0 });
    expect(farthestMiss([panel], lines, { x: 0, y: 0 })).toBeLessThan(0.02);
    expect(untold[0]).toMatchObject({ params: { way: 'down', taken: 10, from: 'other axis' } });
  });

  it('when curves cross every edge, nothing is warned of', () => {
    const drawn = [drawnLine(blob(createRandom(31), { x: 185, y: 272 }, 110))];
    const { lines, untold } = together(drawn, SQUARE);
    expect(farthestMiss(drawn, lines, { x: 10, y: 10 })).toBeLessThan(0.02);
    expect(untold).toEqual([]);
  });

  it('when a corner lies in what two pages share, it tells how far they lie over each other', () => {
    // The lower corners of the strap are on both pages of each column.
    const strap = ring([60, 40], [120, 40], [120, 272], [60, 272]);
    const column: Tiling = { ...ROW, columns: 1, rows: 2 };
    const { lines, untold } = together([strap, rectangle(20, 180, 20, 300)], column);
    expect(farthestMiss([strap, rectangle(20, 180, 20, 300)], lines, { x: 10, y: 10 })).toBeLessThan(0.02);
    expect(untold).toEqual([]);
  });
});
