import { createRandom, curveBox } from '@hidebound/geometry';
import type { Point, Random } from '@hidebound/geometry';
import { describe, expect, it } from 'vitest';
import type { DrawnLine, DrawnText } from '../drawing/drawn-line.js';
import { newFindings } from '../findings.js';
import type { PatternPage } from './page.js';
import { putPagesTogether } from './put-together.js';
import { cross, drawnText, farthestMiss, randomDrawing, tilesOf } from './test-tiles.js';
import type { Tiling } from './test-tiles.js';

const WIDTH = 190;
const HEIGHT = 277;

function randomTiling(random: Random): Tiling {
  const columns = 1 + random.integer(5);
  const rows = (columns === 1 ? 2 : 1) + random.integer(columns === 1 ? 3 : 4);
  const overlap = random.next() < 0.3 ? 0 : random.between(0, 15);
  const margin = random.next() < 0.3 ? 0 : random.between(0, 10);
  return { columns, rows, width: WIDTH, height: HEIGHT, overlap, margin };
}

/** The tiling's places between neighbouring windows: in the middle of what they share. */
function seamsOf({ columns, rows, overlap }: Tiling): { readonly axis: 'x' | 'y'; readonly at: number }[] {
  const places = (count: number, size: number, axis: 'x' | 'y') =>
    Array.from({ length: count - 1 }, (_, i) => ({ axis, at: (i + 1) * (size - overlap) + overlap / 2 }));
  return [...places(columns, WIDTH, 'x'), ...places(rows, HEIGHT, 'y')];
}

/** A drawing of which lines cross every seam: where none does, nothing can tell how the pages lie. */
function linkedDrawing(random: Random, tiling: Tiling): DrawnLine[] {
  for (;;) {
    const width = tiling.columns * (WIDTH - tiling.overlap) + tiling.overlap;
    const height = tiling.rows * (HEIGHT - tiling.overlap) + tiling.overlap;
    const drawn = randomDrawing(random, width, height, 120);
    const boxes = drawn.map(({ curve }) => curveBox(curve));
    const isLinked = seamsOf(tiling).every(({ axis, at }) =>
      boxes.some((box) =>
        axis === 'x' ? box.minX + 10 < at && at < box.maxX - 10 : box.minY + 10 < at && at < box.maxY - 10,
      ),
    );
    if (isLinked) return drawn;
  }
}

const numbered = (pages: readonly PatternPage[]): PatternPage[] =>
  pages.map((page, i) => ({ ...page, number: i + 1 }));

describe('pages put together by lines', () => {
  // The drawing itself is the judge: cut exactly by the edges of pages, then put together again.
  it('when a random drawing is cut into any grid, its outlines come back within 0.02 mm', () => {
    const random = createRandom(21);
    for (let round = 0; round < 30; round++) {
      const tiling = randomTiling(random);
      const drawn = linkedDrawing(random, tiling);
      const { drawing, pages } = putPagesTogether(
        tilesOf(drawn, [], tiling),
        undefined,
        newFindings('p.pdf'),
      );
      const by = { x: tiling.margin, y: tiling.margin };
      const miss = farthestMiss(drawn, drawing.lines, by);
      expect(miss, JSON.stringify(tiling)).toBeLessThan(0.02);
      for (const { missMm } of pages) expect(missMm ?? 0).toBeLessThan(0.02);
    }
  });

  it('when its pages run from right to left, or upwards, the drawing comes back within 0.02 mm', () => {
    const random = createRandom(25);
    for (let round = 0; round < 4; round++) {
      const tiling = { ...randomTiling(random), columns: 3, rows: 2 + random.integer(2) };
      const drawn = linkedDrawing(random, tiling);
      const tiles = tilesOf(drawn, [], tiling);
      const row = (k: number) => tiles.slice(3 * k, 3 * k + 3);
      const rows = Array.from({ length: tiling.rows }, (_, k) => row(k));
      const orders = [
        rows.map((one) => [...one].reverse()),
        [...rows].reverse(),
        [...rows].reverse().map((one) => [...one].reverse()),
      ];
      for (const pages of orders) {
        const { drawing } = putPagesTogether(numbered(pages.flat()), undefined, newFindings('p.pdf'));
        const miss = farthestMiss(drawn, drawing.lines, { x: tiling.margin, y: tiling.margin });
        expect(miss, JSON.stringify(tiling)).toBeLessThan(0.02);
      }
    }
  });

  it('when each page is moved a little on its paper, outlines come back within 0.3 mm', () => {
    const random = createRandom(22);
    for (let round = 0; round < 20; round++) {
      const moves = Array.from({ length: 20 }, () => ({
        x: random.between(-0.3, 0.3) / Math.SQRT2,
        y: random.between(-0.3, 0.3) / Math.SQRT2,
      }));
      const tiling = { ...randomTiling(random), noise: (page: number) => moves[page]! };
      const drawn = linkedDrawing(random, tiling);
      const { drawing } = putPagesTogether(tilesOf(drawn, [], tiling), undefined, newFindings('p.pdf'));
      // The whole's frame is that of the outermost pages, which were moved too.
      const first = drawing.lines.length === drawn.length ? offsetOf(drawn, drawing.lines) : { x: 0, y: 0 };
      const miss = farthestMiss(drawn, drawing.lines, first);
      expect(miss, JSON.stringify(tiling)).toBeLessThan(0.3);
    }
  });
});

/** The mean shift of the boxes of lines, taken by their order from the left. */
function offsetOf(drawn: readonly DrawnLine[], read: readonly DrawnLine[]): Point {
  const mean = (lines: readonly DrawnLine[], of: (line: DrawnLine) => number) =>
    lines.reduce((sum, line) => sum + of(line), 0) / lines.length;
  const x = ({ curve }: DrawnLine) => (curveBox(curve).minX + curveBox(curve).maxX) / 2;
  const y = ({ curve }: DrawnLine) => (curveBox(curve).minY + curveBox(curve).maxY) / 2;
  return { x: mean(read, x) - mean(drawn, x), y: mean(read, y) - mean(drawn, y) };
}

/** A cross with its own label where each seam meets another or the border. */
function labelledCrosses(tiling: Tiling): { lines: DrawnLine[]; texts: DrawnText[] } {
  const { columns, rows, overlap } = tiling;
  const lines: DrawnLine[] = [];
  const texts: DrawnText[] = [];
  for (let i = 0; i <= columns; i++) {
    for (let j = 0; j <= rows; j++) {
      const at = { x: i * (WIDTH - overlap) + overlap / 2, y: j * (HEIGHT - overlap) + overlap / 2 };
      lines.push(...cross(at, overlap * 0.3));
      texts.push(drawnText(`${String.fromCharCode(65 + i)}${j + 1}`, { x: at.x + 0.5, y: at.y - 0.5 }));
    }
  }
  return { lines, texts };
}

describe('pages put together by marks', () => {
  it('when pages with labelled crosses are shuffled, and blank ones lie between, the drawing comes back without crosses', () => {
    const random = createRandom(23);
    for (let round = 0; round < 30; round++) {
      const tiling = { ...randomTiling(random), overlap: random.between(8, 15) };
      const drawn = linkedDrawing(random, tiling);
      const marks = labelledCrosses(tiling);
      const tiles: PatternPage[] = tilesOf([...drawn, ...marks.lines], marks.texts, tiling);
      const blank = { ...tiles[0]!, lines: [], texts: [] };
      for (let i = tiles.length - 1; i > 0; i--) {
        const j = random.integer(i + 1);
        [tiles[i], tiles[j]] = [tiles[j]!, tiles[i]!];
      }
      tiles.splice(random.integer(tiles.length), 0, blank);
      const { drawing, pages } = putPagesTogether(numbered(tiles), undefined, newFindings('p.pdf'));
      expect(pages.filter(({ joinedBy }) => joinedBy === 'left out')).toHaveLength(1);
      const miss = farthestMiss(drawn, drawing.lines, { x: tiling.margin, y: tiling.margin });
      expect(miss, JSON.stringify(tiling)).toBeLessThan(0.02);
    }
  });
});
