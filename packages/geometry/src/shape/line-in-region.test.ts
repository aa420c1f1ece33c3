import { expect, test } from 'vitest';
import type { Region } from '../types/shape.js';
import { lineInRegion } from './line-in-region.js';

const SQUARE: Region = {
  outer: [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
    { x: 10, y: 10 },
    { x: 0, y: 10 },
  ],
  openings: [
    [
      { x: 4, y: 4 },
      { x: 4, y: 6 },
      { x: 6, y: 6 },
      { x: 6, y: 4 },
    ],
  ],
};

test('when a line runs through a region with an opening, its stretches leave the opening out', () => {
  expect(lineInRegion({ x: -5, y: 5 }, { x: -4, y: 5 }, SQUARE)).toEqual([
    [
      { x: 0, y: 5 },
      { x: 4, y: 5 },
    ],
    [
      { x: 6, y: 5 },
      { x: 10, y: 5 },
    ],
  ]);
});

test('when the line runs the other way, the stretches come the other way round', () => {
  const [first] = lineInRegion({ x: 9, y: 2 }, { x: 8, y: 2 }, SQUARE);
  expect(first).toEqual([
    { x: 10, y: 2 },
    { x: 0, y: 2 },
  ]);
});

test('when the line passes through two corners, it is in the region between them', () => {
  expect(lineInRegion({ x: 0, y: 0 }, { x: 1, y: 1 }, { ...SQUARE, openings: [] })).toEqual([
    [
      { x: 0, y: 0 },
      { x: 10, y: 10 },
    ],
  ]);
});

test.each([
  ['misses the region', { x: 0, y: 20 }, { x: 1, y: 20 }],
  ['is no line, but one point twice', { x: 5, y: 5 }, { x: 5, y: 5 }],
])('when the line %s, there is no stretch', (_, a, b) => {
  expect(lineInRegion(a, b, SQUARE)).toEqual([]);
});
