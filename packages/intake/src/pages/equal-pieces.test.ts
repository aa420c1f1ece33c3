import { circleCurve, curveFromPolyline, roundCurve } from '@hidebound/geometry';
import type { CurveSegment, Point } from '@hidebound/geometry';
import type { PagesReading } from '@hidebound/leather';
import { describe, expect, it } from 'vitest';
import type { DrawnLine, DrawnText } from '../drawing/drawn-line.js';
import { newFindings } from '../findings.js';
import { holdEvenPitch } from './even-pitch.js';
import { factsOf } from './page-facts.js';
import { putPagesTogether } from './put-together.js';
import { settle } from './settle.js';
import { cross, drawnLine, drawnText, farthestMiss, tilesOf } from './test-tiles.js';
import type { Tiling } from './test-tiles.js';

// The drawing that was cut into pages is the judge.

const PIECE = { width: 42, height: 39 };
const PITCH = 52.9;
const WAVES = 8;

/** One of many equal pieces: a waved upper side, a stitch line within, four holes. */
function pieceAt({ x, y }: Point): DrawnLine[] {
  const { width, height } = PIECE;
  const step = width / WAVES;
  const waves = Array.from({ length: WAVES }, (_, k): CurveSegment => {
    const from = x + k * step;
    return {
      kind: 'cubic',
      handle1: { x: from + 0.4 * step, y: y - 1 },
      handle2: { x: from + 0.6 * step, y: y + 1 },
      to: { x: from + step, y },
    };
  });
  const sides = [
    { x: x + width, y: y + height },
    { x, y: y + height },
    { x, y },
  ].map((to): CurveSegment => ({ kind: 'line', to }));
  const frame = [
    { x: x + 3, y: y + 3 },
    { x: x + width - 3, y: y + 3 },
    { x: x + width - 3, y: y + height - 3 },
    { x: x + 3, y: y + height - 3 },
  ];
  const holes = [7, width - 7].flatMap((dx) => [7, height - 7].map((dy) => ({ x: x + dx, y: y + dy })));
  return [
    drawnLine(roundCurve({ start: { x, y }, segments: [...waves, ...sides], closed: true })),
    drawnLine(roundCurve(curveFromPolyline(frame, true)), { isDashed: true }),
    ...holes.map((at) => drawnLine(roundCurve(circleCurve(at, 1)))),
  ];
}

/** Equal pieces at an even distance over all pages of a tiling. */
function equalPieces(
  { columns, rows, width, height, overlap }: Tiling,
  nameOf?: (piece: number) => string,
): { readonly lines: DrawnLine[]; readonly texts: DrawnText[] } {
  const right = columns * (width - overlap) + overlap;
  const bottom = rows * (height - overlap) + overlap;
  const places: Point[] = [];
  for (let y = 5; y + PIECE.height < bottom - 5; y += PITCH)
    for (let x = 5; x + PIECE.width < right - 5; x += PITCH) places.push({ x, y });
  const texts = places.map(({ x, y }, i) => drawnText(nameOf?.(i) ?? '', { x: x + 10, y: y + 18 }));
  return { lines: places.flatMap(pieceAt), texts: nameOf === undefined ? [] : texts };
}

/** Two crosses without labels in the middle of each strip that two pages share. */
function crossesOver({ columns, rows, width, height, overlap }: Tiling): DrawnLine[] {
  const [stepX, stepY] = [width - overlap, height - overlap];
  const marks: Point[] = [];
  for (let i = 0; i < columns; i++) {
    for (let j = 0; j < rows; j++) {
      for (const share of [0.4, 0.6]) {
        const beside = { x: (i + share) * stepX, y: (j + share) * stepY };
        if (i > 0) marks.push({ x: i * stepX + overlap / 2, y: beside.y });
        if (j > 0) marks.push({ x: beside.x, y: j * stepY + overlap / 2 });
      }
    }
  }
  return marks.flatMap((at) => cross(at, 3));
}

function together(
  tiling: Tiling,
  nameOf?: (piece: number) => string,
  marks: readonly DrawnLine[] = [],
  reading?: PagesReading,
) {
  const drawn = equalPieces(tiling, nameOf);
  const findings = newFindings('p.pdf');
  const pages = tilesOf([...drawn.lines, ...marks], drawn.texts, tiling);
  const { drawing } = putPagesTogether(pages, reading, findings);
  const miss = farthestMiss(drawn.lines, drawing.lines, { x: tiling.margin, y: tiling.margin });
  return { miss, told: findings.diagnostics };
}

const DOUBTS = ['pitch-not-told', 'overlap-not-told', 'pages-step-unevenly'];
const MEETING: Tiling = { columns: 3, rows: 2, width: 195.8, height: 282.9, overlap: 0, margin: 7 };

describe('many equal pieces at an even distance', () => {
  // One distance nearer the pieces lie on each other too, and more of them: only their names differ there.
  it('when the pieces have names with numbers, pages that meet come back within 0.02 mm', () => {
    expect(together(MEETING, (i) => `strap ${i + 1}`).miss).toBeLessThan(0.02);
  });

  it('when the pieces have names with numbers, pages that overlap come back within 0.02 mm', () => {
    const { miss } = together({ ...MEETING, overlap: 6 }, (i) => `strap ${i + 1}`);
    expect(miss).toBeLessThan(0.02);
  });

  it('when the pages are shuffled, names with numbers put them back', () => {
    const tiling = { ...MEETING, overlap: 6 };
    const drawn = equalPieces(tiling, (i) => `strap ${i + 1}`);
    const tiles = tilesOf(drawn.lines, drawn.texts, tiling);
    const pages = [4, 2, 0, 5, 3, 1].map((k, i) => ({ ...tiles[k]!, number: i + 1 }));
    const { drawing } = putPagesTogether(pages, undefined, newFindings('p.pdf'));
    expect(farthestMiss(drawn.lines, drawing.lines, { x: 7, y: 7 })).toBeLessThan(0.02);
  });

  it('when names with numbers tell which pieces are which, nothing is warned of as to their distance', () => {
    const { told } = together({ ...MEETING, overlap: 6 }, (i) => `strap ${i + 1}`);
    expect(told.filter(({ code }) => DOUBTS.includes(code))).toEqual([]);
  });

  it('when pieces without names leave two overlaps, the lesser is taken, with a warning', () => {
    const { miss, told } = together({ ...MEETING, overlap: 6 });
    expect(miss).toBeLessThan(0.02);
    const doubts = told.filter(({ code }) => DOUBTS.includes(code));
    const more = { pitch: PITCH, taken: 20, other: 72.9, across: 20, down: 20, columns: 3 };
    expect(doubts).toMatchObject([
      { code: 'pitch-not-told', severity: 'warning', params: { way: 'across', ...more } },
      { code: 'pitch-not-told', severity: 'warning', params: { way: 'down', ...more } },
    ]);
  });

  it('when all pieces have one name, it tells nothing', () => {
    const { miss, told } = together({ ...MEETING, overlap: 6 }, () => 'strap');
    expect(miss).toBeLessThan(0.02);
    expect(told.filter(({ code }) => code === 'pitch-not-told')).toHaveLength(2);
  });

  it('when only the columns are stated, the overlap that is told is the one that was taken', () => {
    const { miss, told } = together({ ...MEETING, overlap: 6 }, undefined, [], { columns: 3 });
    expect(miss).toBeLessThan(0.02);
    const found = told.find(({ code }) => code === 'overlap-found');
    expect(found).toMatchObject({ params: { across: 20, down: 20 } });
    expect(told.filter(({ code }) => code === 'pitch-not-told')).toHaveLength(2);
  });

  // Windows lie farther over each other than pieces are apart, so the lesser overlap would be wrong.
  it('when names with numbers stand in what pages share, they tell, and nothing is warned of', () => {
    const { miss, told } = together({ ...MEETING, overlap: 57 }, (i) => `strap ${i + 1}`);
    expect(miss).toBeLessThan(0.02);
    expect(told.filter(({ code }) => DOUBTS.includes(code))).toEqual([]);
  });

  it('when marks stand in what pages share, they tell, and nothing is warned of', () => {
    const tiling = { ...MEETING, overlap: 57 };
    const marks = crossesOver(tiling);
    const { miss, told } = together(tiling, undefined, marks);
    expect(miss).toBeLessThan(0.02);
    expect(told.filter(({ code }) => DOUBTS.includes(code))).toEqual([]);
  });
});

describe('pages of equal pieces that were put unevenly', () => {
  const tiling = { ...MEETING, overlap: 6 };
  const wanted = { marks: true, lines: true };
  const drawn = equalPieces(tiling);
  const facts = factsOf(tilesOf(drawn.lines, drawn.texts, tiling));
  const step = { x: tiling.width - tiling.overlap, y: tiling.height - tiling.overlap };
  const right = facts.map((_, k) => ({ x: (k % 3) * step.x, y: Math.floor(k / 3) * step.y }));

  it('when one page, or a whole column, lies one distance too near, it is put where the others have it', () => {
    for (const moved of [[5], [4, 5], [1, 2, 4, 5], [2, 5]]) {
      const start = right.map(({ x, y }, k) => ({ x: moved.includes(k) ? x - PITCH : x, y }));
      const settled = settle(facts, new Map(start.entries()), wanted);
      const wrong = settled.places.get(moved[0]!)!.x - settled.places.get(0)!.x;
      expect(right[moved[0]!]!.x - wrong).toBeCloseTo(PITCH, 1);
      const { groups, uneven } = holdEvenPitch(facts, [settled], wanted);
      const first = groups[0]!.places.get(0)!;
      for (const [page, { x, y }] of groups[0]!.places) {
        expect(Math.abs(x - first.x - right[page]!.x), `page ${page} of ${moved.join()}`).toBeLessThan(0.1);
        expect(Math.abs(y - first.y - right[page]!.y), `page ${page} of ${moved.join()}`).toBeLessThan(0.1);
      }
      expect(uneven).toEqual([]);
    }
  });

  // The last page is cut out of the drawing 12 mm farther to the left than the others' steps ask for; its names tell that.
  it('when a page was cut so, it stays, and is told', () => {
    const four = { ...tiling, columns: 4 };
    const named = equalPieces(four, (i) => `strap ${i + 1}`);
    const even = tilesOf(named.lines, named.texts, four).slice(0, 3);
    const nearer = tilesOf(named.lines, named.texts, { ...four, overlap: tiling.overlap + 4 })[3]!;
    const places = [0, step.x, 2 * step.x, 3 * (step.x - 4)].map((x) => ({ x, y: 0 }));
    const own = factsOf([...even, nearer]);
    const { groups, doubts, uneven } = holdEvenPitch(
      own,
      [settle(own, new Map(places.entries()), wanted)],
      wanted,
    );
    expect(uneven).toEqual([3]);
    expect(doubts).toEqual([]);
    const held = groups[0]!.places;
    expect(held.get(3)!.x - held.get(0)!.x).toBeCloseTo(places[3]!.x, 1);
  });
});
