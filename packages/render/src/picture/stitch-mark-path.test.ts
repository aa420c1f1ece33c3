import { translation } from '@hidebound/geometry';
import type { Curve } from '@hidebound/geometry';
import { expect, test } from 'vitest';
import { stitchMarkPath } from './stitch-mark-path.js';

const hole = { at: { x: 10, y: 20 }, angleDeg: 0, isCorner: false };
const curvesOf = (element: ReturnType<typeof stitchMarkPath>): readonly Curve[] =>
  element.kind === 'path' ? element.curves : [];

test('when an iron marks a line, each hole is a stroke through it at 45 degrees to the line', () => {
  const [stroke] = curvesOf(stitchMarkPath({ with: 'iron', holes: [hole] }, translation(1, 2)));
  const end = stroke!.segments[0]!.to;
  expect((stroke!.start.x + end.x) / 2).toBeCloseTo(11, 9);
  expect((stroke!.start.y + end.y) / 2).toBeCloseTo(22, 9);
  expect(end.x - stroke!.start.x).toBeCloseTo(stroke!.start.y - end.y, 9);
});

test('when an awl marks a line, each hole is a dot around it', () => {
  const [dot] = curvesOf(stitchMarkPath({ with: 'awl', holes: [hole] }, translation(1, 2)));
  expect(dot!.closed).toBe(true);
  expect(dot!.start.y).toBeCloseTo(22, 9);
});
