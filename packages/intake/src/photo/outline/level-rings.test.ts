import { ringArea } from '@hidebound/geometry';
import { expect, test } from 'vitest';
import { levelRings } from './level-rings.js';

function grid(width: number, height: number, at: (x: number, y: number) => number) {
  const values = Float32Array.from({ length: width * height }, (_, i) =>
    at(i % width, Math.floor(i / width)),
  );
  return levelRings({ width, height }, values);
}

test('when a disc with a hole is above zero, an outer ring and an opening come out with their areas', () => {
  // Source: the area of a circle, pi r². The numbers are signed distances, on which the rings are almost exact.
  const rings = grid(60, 50, (x, y) => {
    const away = Math.hypot(x - 30.3, y - 24.6);
    return Math.min(20 - away, away - 6);
  });
  const areas = rings.map(ringArea).sort((a, b) => a - b);
  expect(areas).toHaveLength(2);
  expect(areas[0]! / (-Math.PI * 36)).toBeCloseTo(1, 1);
  expect(areas[1]! / (Math.PI * 400)).toBeCloseTo(1, 2);
});

test('when all is above zero, the ring runs half a pixel beyond the outermost middles', () => {
  const [ring] = grid(4, 3, () => 1);
  expect(ringArea(ring!)).toBeGreaterThan(4 * 3 - 1);
  expect(ringArea(ring!)).toBeLessThanOrEqual(4 * 3);
});

test('when two corners face each other across a cell, the middle decides whether they hang together', () => {
  const two = (middle: number) =>
    grid(4, 4, (x, y) =>
      x === y && (x === 1 || x === 2) ? middle : x + y === 3 && (x === 1 || x === 2) ? -1 : -1,
    );
  expect(two(0.5)).toHaveLength(2);
  expect(two(2)).toHaveLength(1);
});
