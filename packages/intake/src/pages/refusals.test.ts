import { circleCurve, createRandom, curveBox, curveFromPolyline } from '@hidebound/geometry';
import { describe, expect, it } from 'vitest';
import type { DrawnLine } from '../drawing/drawn-line.js';
import { IntakeError } from '../error.js';
import { newFindings } from '../findings.js';
import type { PatternPage } from './page.js';
import { putPagesTogether } from './put-together.js';
import { heightOf } from './vectors.js';
import { blob, cross, diamond, drawnLine, drawnText, farthestMiss, tilesOf } from './test-tiles.js';

const TILING = { columns: 2, rows: 1, width: 190, height: 277, overlap: 10, margin: 5 };

function codeOf(run: () => unknown): string {
  try {
    run();
  } catch (error) {
    if (error instanceof IntakeError) return error.code;
    throw error;
  }
  return 'none';
}

const circles = (at: readonly number[]): PatternPage[] =>
  at.map((x, i) => ({
    number: i + 1,
    widthMm: 200,
    heightMm: 200,
    lines: [drawnLine(circleCurve({ x, y: 100 }, 30))],
    texts: [],
  }));

const findings = () => newFindings('p.pdf');

describe('pages that nothing links', () => {
  it('when pages hold pieces of their own, each is read by itself, and that is told', () => {
    const told = findings();
    const { pages, drawing } = putPagesTogether(circles([60, 90, 120]), undefined, told);
    expect(pages.map(({ joinedBy }) => joinedBy)).toEqual(['alone', 'alone', 'alone']);
    expect(drawing.lines).toHaveLength(3);
    expect(told.diagnostics.map(({ code }) => code)).toContain('pages-apart');
  });

  it('when marks or lines are asked for and there are none, the refusal says what else can be done', () => {
    const pages = circles([60, 90]);
    expect(codeOf(() => putPagesTogether(pages, { join: 'marks' }, findings()))).toBe('no-shared-marks');
    expect(codeOf(() => putPagesTogether(pages, { join: 'lines' }, findings()))).toBe('no-lines-over-edges');
    expect(codeOf(() => putPagesTogether(pages, { join: 'grid' }, findings()))).toBe('grid-without-columns');
  });

  it('when a grid is stated with more columns than there are pages, it is refused; with as many, it is not', () => {
    const pages = circles([60, 90, 120]);
    const run = (columns: number) => codeOf(() => putPagesTogether(pages, { columns }, findings()));
    expect(run(4)).toBe('grid-too-wide');
    expect(run(3)).toBe('none');
  });

  it('when there are thousands of pages, a grid is asked for, and a stated one is taken', () => {
    const pages = circles(Array.from({ length: 1200 }, () => 100));
    expect(codeOf(() => putPagesTogether(pages, undefined, findings()))).toBe('too-many-pages-to-search');
    const { drawing } = putPagesTogether(pages, { columns: 40, overlapMm: [0, 0] }, findings());
    expect(drawing.lines).toHaveLength(1200);
  });

  it('when one page is in the file twice, its labelled marks put both on one place, which is refused', () => {
    const drawn = [drawnLine(blob(createRandom(5), { x: 185, y: 140 }, 80))];
    const marks = [cross({ x: 185, y: 30 }, 3), cross({ x: 185, y: 250 }, 3)].flat();
    const texts = [drawnText('A1', { x: 186, y: 29 }), drawnText('A2', { x: 186, y: 249 })];
    const tiles = tilesOf([...drawn, ...marks], texts, TILING);
    const pages = [...tiles, { ...tiles[1]!, number: 3 }];
    expect(codeOf(() => putPagesTogether(pages, undefined, findings()))).toBe('pages-on-one-place');
  });
});

describe("the paper's own signs", () => {
  it('when diamonds stand on the seam, they are left out, and a punch beside them stays', () => {
    const drawn = [
      drawnLine(blob(createRandom(6), { x: 185, y: 140 }, 80)),
      drawnLine(circleCurve({ x: 185, y: 140 }, 3)),
    ];
    const marks = [diamond({ x: 185, y: 30 }, 4), diamond({ x: 185, y: 250 }, 4)];
    const { drawing, pages } = putPagesTogether(
      tilesOf([...drawn, ...marks], [], TILING),
      undefined,
      findings(),
    );
    expect(farthestMiss(drawn, drawing.lines, { x: 5, y: 5 })).toBeLessThan(0.02);
    expect(pages.map(({ joinedBy }) => joinedBy)).toEqual(['marks', 'marks']);
  });

  it('when halves of diamonds complete each other over an edge, they are marks too', () => {
    const tiling = { ...TILING, overlap: 0 };
    const drawn = [drawnLine(circleCurve({ x: 190, y: 140 }, 60))];
    const marks = [diamond({ x: 190, y: 30 }, 4), diamond({ x: 190, y: 250 }, 4)];
    const { drawing, pages } = putPagesTogether(
      tilesOf([...drawn, ...marks], [], tiling),
      undefined,
      findings(),
    );
    expect(farthestMiss(drawn, drawing.lines, { x: 5, y: 5 })).toBeLessThan(0.02);
    expect(pages.map(({ joinedBy }) => joinedBy)).toEqual(['marks', 'marks']);
  });

  it('when triangles of neighbours point at each other, one is not laid on the other', () => {
    const triangle = (x: number, tip: number, base: number): DrawnLine =>
      drawnLine(
        curveFromPolyline(
          [
            { x, y: tip },
            { x: x - 4, y: base },
            { x: x + 4, y: base },
          ],
          true,
        ),
        { widthMm: 0.3 },
      );
    const tiling = { ...TILING, columns: 1, rows: 2, overlap: 20 };
    const drawn = [drawnLine(circleCurve({ x: 100, y: 240 }, 80))];
    const tips = [
      { y: 277 - 10 + 5, out: 1 },
      { y: 10 + 5, out: -1 },
    ];
    const pages = tilesOf(drawn, [], tiling).map((page, i): PatternPage => {
      const { y, out } = tips[i]!;
      const marks = [30, 100, 170].map((x) => triangle(x, y, y - 6 * out));
      return { ...page, lines: [...page.lines, ...marks] };
    });
    const { drawing } = putPagesTogether(pages, undefined, findings());
    const outline = drawing.lines.find(({ curve }) => heightOf(curveBox(curve)) > 50)!;
    expect(heightOf(curveBox(outline.curve))).toBeCloseTo(160, 2);
  });

  it('when each page has a frame and a number, neither becomes a piece, and a text in the overlap stands once', () => {
    const frame = (page: PatternPage): PatternPage => ({
      ...page,
      lines: [
        ...page.lines,
        drawnLine(
          curveFromPolyline(
            [
              { x: 5, y: 5 },
              { x: 195, y: 5 },
              { x: 195, y: 282 },
              { x: 5, y: 282 },
            ],
            true,
          ),
          { widthMm: 0.1 },
        ),
      ],
      texts: [...page.texts, drawnText(`Page ${page.number}`, { x: 20, y: 270 })],
    });
    const drawn = [drawnLine(blob(createRandom(7), { x: 185, y: 140 }, 80))];
    const tiles = tilesOf(drawn, [drawnText('flap', { x: 184, y: 140 })], TILING).map(frame);
    const told = findings();
    const { drawing } = putPagesTogether(tiles, undefined, told);
    expect(farthestMiss(drawn, drawing.lines, { x: 5, y: 5 })).toBeLessThan(0.02);
    expect(drawing.texts.map(({ text }) => text)).toEqual(['flap']);
    expect(told.diagnostics.find(({ code }) => code === 'page-furniture')?.params).toMatchObject({
      frames: 2,
      texts: 2,
    });
  });

  it('when the edge of a page cuts letters off a text, the neighbour that has all of it gives it', () => {
    const drawn = [drawnLine(blob(createRandom(7), { x: 185, y: 140 }, 80))];
    const [one, two] = tilesOf(drawn, [], TILING);
    const pages = [
      { ...one!, texts: [drawnText('keep', { x: 182, y: 140 }), drawnText('bag', { x: 190, y: 100 })] },
      // The same places of the drawing on the next page; the first of them in its margin.
      {
        ...two!,
        texts: [
          drawnText('keeper', { x: 182 - 180, y: 140 }),
          drawnText('bag front', { x: 190 - 180, y: 100 }),
          drawnText('printed by hand', { x: 1, y: 20 }),
        ],
      },
    ];
    const { drawing } = putPagesTogether(pages, undefined, findings());
    expect(drawing.texts.map(({ text }) => text).sort()).toEqual(['bag front', 'keeper']);
  });

  it('when a strap runs straight over three pages, its edges are one straight line each again', () => {
    const strap = curveFromPolyline(
      [
        { x: 30, y: 100 },
        { x: 520, y: 100 },
        { x: 520, y: 140 },
        { x: 30, y: 140 },
      ],
      true,
    );
    const told = findings();
    const tiling = { ...TILING, columns: 3, overlap: 0, margin: 0 };
    const { drawing } = putPagesTogether(tilesOf([drawnLine(strap)], [], tiling), undefined, told);
    expect(drawing.lines).toHaveLength(1);
    expect(drawing.lines[0]!.curve.segments).toHaveLength(4);
    expect(told.repairs).toEqual([]);
  });
});
