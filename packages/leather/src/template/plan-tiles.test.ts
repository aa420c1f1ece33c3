import type { Region } from '@hidebound/geometry';
import { expect, test } from 'vitest';
import { paperNamed, rollOf } from './paper.js';
import type { Paper } from './paper.js';
import { planTiles } from './plan-tiles.js';
import type { TileRequest } from './plan-tiles.js';
import type { TileContent } from './tile-plan.js';

function box(minX: number, minY: number, widthMm: number, heightMm: number): Region {
  const maxX = minX + widthMm;
  const maxY = minY + heightMm;
  return {
    outer: [
      { x: minX, y: minY },
      { x: maxX, y: minY },
      { x: maxX, y: maxY },
      { x: minX, y: maxY },
    ],
    openings: [],
  };
}

function shapes(...regions: readonly Region[]): TileContent {
  return { shapes: regions, edges: [] };
}

const A4 = paperNamed('A4');

function ask(content: TileContent, more: Partial<TileRequest> = {}): TileRequest {
  return { content, paper: A4, overlapMm: 10, marginMm: 10, ...more };
}

test('when a piece fits on a page, it takes one, and nothing is cut apart', () => {
  const plan = planTiles(ask(shapes(box(0, 0, 150, 220))));
  expect(plan.pages.map(({ name }) => name)).toEqual(['A1']);
  expect(plan).toMatchObject({ shapesCutApart: 0, joins: [] });
});

test('when a piece is broad and low, the page lies on its long side', () => {
  const { frame, pages } = planTiles(ask(shapes(box(0, 0, 240, 130))));
  expect(pages).toHaveLength(1);
  expect(frame).toMatchObject({ widthMm: 297, heightMm: 210 });
});

test('when the grid can go between two pieces, it does', () => {
  // Each is as broad as a page shows; in the middle of the content they would be cut.
  const plan = planTiles(ask(shapes(box(0, 0, 130, 200), box(150, 0, 130, 200))));
  expect(plan.pages).toHaveLength(2);
  expect(plan.shapesCutApart).toBe(0);
});

test('when pages meet, both print the join line, and all of its marks, within their windows', () => {
  const plan = planTiles(ask(shapes(box(0, 0, 700, 500))));
  expect(plan.joins.length).toBeGreaterThan(plan.pages.length);
  for (const join of plan.joins) {
    for (const name of join.pages) {
      const { window } = plan.pages.find((page) => page.name === name)!;
      for (const at of [join.marks.start, ...join.marks.squares, join.marks.namesAt]) {
        expect(at.x - 1.75).toBeGreaterThanOrEqual(window.minX);
        expect(at.x + 1.75).toBeLessThanOrEqual(window.maxX);
        expect(at.y - 1.75).toBeGreaterThanOrEqual(window.minY);
        expect(at.y + 1.75).toBeLessThanOrEqual(window.maxY);
      }
    }
  }
  expect(new Set(plan.joins.map(({ marks }) => marks.code.join())).size).toBe(plan.joins.length);
});

test('when neighbours are named, each names the other', () => {
  const { pages } = planTiles(ask(shapes(box(0, 0, 700, 500))));
  const byName = new Map(pages.map((page) => [page.name, page]));
  const opposite = { left: 'right', right: 'left', above: 'below', below: 'above' } as const;
  for (const page of pages) {
    for (const [side, name] of Object.entries(page.neighbours) as ['left', string][]) {
      expect(byName.get(name)!.neighbours[opposite[side]]).toBe(page.name);
    }
  }
});

test('when nothing lies on a page, it is left out, unless it holds others together', () => {
  // Three corners of a large square: the pages in its middle and at the fourth corner are not needed.
  const corners = shapes(box(0, 0, 60, 60), box(900, 0, 60, 60), box(0, 900, 60, 60));
  const plan = planTiles(ask(corners));
  expect(plan.pages.length).toBeLessThan(plan.columns * plan.rows);
  expect(plan.pages.filter(({ isBridge }) => !isBridge)).toHaveLength(3);
  expect(plan.pages.some(({ isBridge }) => isBridge)).toBe(true);
  // All hang together: with as many pages as this, a tree needs one join less than pages.
  expect(plan.joins.length).toBeGreaterThanOrEqual(plan.pages.length - 1);
});

test('when only the edge of a hide is given, pages in its middle are left out', () => {
  const edge = box(0, 0, 1000, 1000).outer;
  const plan = planTiles(ask({ shapes: [], edges: [edge] }));
  expect(plan.pages.length).toBeLessThan(plan.columns * plan.rows);
});

test('when the paper is a roll, there is one page as long as the content', () => {
  const plan = planTiles(ask(shapes(box(0, 0, 2000, 800)), { paper: rollOf(914) }));
  expect(plan.pages).toHaveLength(1);
  expect(plan.frame.heightMm).toBe(914);
  expect(plan.frame.widthMm).toBeGreaterThan(2000);
});

test('when a line runs along a join, its marks move to where they hide least', () => {
  const wide = shapes(box(0, 0, 700, 500));
  const join = planTiles(ask(wide)).joins.find(({ from, to }) => from.x === to.x);
  const at = join!.marks.start;
  const across = {
    ...wide,
    lines: [
      [
        { x: at.x - 20, y: at.y },
        { x: at.x + 20, y: at.y },
      ],
    ],
  };
  const moved = planTiles(ask(across)).joins.find(({ number }) => number === join!.number)!.marks;
  for (const mark of [moved.start, ...moved.squares]) {
    expect(Math.abs(mark.y - at.y)).toBeGreaterThan(1.75);
  }
});

test('when the same is asked twice, the plan is the same', () => {
  const content = shapes(box(0, 0, 333, 222), box(350, 20, 150, 400), box(20, 260, 300, 150));
  expect(planTiles(ask(content))).toEqual(planTiles(ask(content)));
});

const SMALL: Paper = { kind: 'sheet', name: 'A6', widthMm: 105, heightMm: 148 };

test.each([
  [
    'a sheet smaller than its margins and check bars',
    { paper: SMALL },
    'template-sheet-too-small',
    /A6 .*190 × /,
  ],
  ['margins that leave no room', { marginMm: 60 }, 'template-sheet-too-small', /60 mm/],
  ['a margin that printers cut off', { marginMm: 4 }, 'template-margin', /at least 10 mm/],
  ['an overlap without room for marks', { overlapMm: 2 }, 'template-overlap', /8 to \d+ mm/],
  ['an overlap as wide as the sheet', { overlapMm: 200 }, 'template-overlap', /8 to \d+ mm/],
  [
    'more pages than anybody tapes together',
    { mostPages: 3 },
    'template-too-many-pages',
    /take a larger sheet/,
  ],
] as const)('when asked for %s, it says so in one sentence', (_, more, code, words) => {
  const content = shapes(box(0, 0, 700, 500));
  expect(() => planTiles(ask(content, more))).toThrow(
    expect.objectContaining({ code, message: expect.stringMatching(words) as string }),
  );
});

test('when a coordinate runs off to the moon, it says so before it searches', () => {
  expect(() => planTiles(ask(shapes(box(0, 0, 4e8, 4e8))))).toThrow(
    expect.objectContaining({ code: 'template-too-many-pages' }),
  );
});

test('when there is nothing to show, no empty plan is made', () => {
  expect(() => planTiles(ask(shapes()))).toThrow(expect.objectContaining({ code: 'template-nothing' }));
});
