import { regionArea } from '@hidebound/geometry';
import type { Region } from '@hidebound/geometry';
import { expect, test } from 'vitest';
import { formatNumber } from './format-number.js';
import { hatchLines } from './hatch.js';

const square = (from: number, to: number): Region['outer'] => [
  { x: from, y: from },
  { x: to, y: from },
  { x: to, y: to },
  { x: from, y: to },
];

function lengthOf(curves: ReturnType<typeof hatchLines>): number {
  return curves.reduce((sum, curve) => {
    const to = curve.segments[0]!.to;
    return sum + Math.hypot(to.x - curve.start.x, to.y - curve.start.y);
  }, 0);
}

test.each([0, 30, 45, 90, 135])('when hatched at %i°, length times spacing is the area', (angleDeg) => {
  const region: Region = { outer: square(0, 100), openings: [[...square(30, 60)].reverse()] };
  const curves = hatchLines([region], { spacingMm: 0.5, angleDeg });
  // A sum of strips; its error is below one strip along the edge.
  expect(Math.abs(lengthOf(curves) * 0.5 - regionArea(region))).toBeLessThan(60);
});

test('when the hatch is dashed in halves, it is about half as long', () => {
  const region: Region = { outer: square(0, 100), openings: [] };
  const whole = lengthOf(hatchLines([region], { spacingMm: 1, angleDeg: 20 }));
  const dashed = lengthOf(hatchLines([region], { spacingMm: 1, angleDeg: 20, dashMm: [2, 2] }));
  expect(dashed / whole).toBeCloseTo(0.5, 1);
});

test('when a region is too small for a line, none is drawn', () => {
  expect(hatchLines([{ outer: square(0.1, 0.3), openings: [] }], { spacingMm: 5, angleDeg: 0 })).toEqual([]);
});

test.each([
  [0, '0'],
  [-0.0004, '0'],
  [1.5, '1.5'],
  [-12.3456, '-12.346'],
  [1e6, '1000000'],
  [0.1 + 0.2, '0.3'],
  [210, '210'],
])('when %d is written, it reads %s', (n, text) => {
  expect(formatNumber(n)).toBe(text);
});
