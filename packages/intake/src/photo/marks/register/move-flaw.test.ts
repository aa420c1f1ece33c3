import {
  MIRROR_X,
  composeAffine,
  curveArea,
  curveFromPolyline,
  rotationDeg,
  translation,
} from '@hidebound/geometry';
import type { Flaw } from '@hidebound/leather';
import { expect, test } from 'vitest';
import { moveFlaw } from './move-flaw.js';

const SQUARE = [
  { x: 0, y: 0 },
  { x: 10, y: 0 },
  { x: 10, y: 10 },
  { x: 0, y: 10 },
];

test('when a flaw is mirrored onto the other side, its ring still runs clockwise and its corners lie mirrored', () => {
  const outline = curveFromPolyline([...SQUARE, SQUARE[0]!], true);
  const flaw: Flaw = { id: 'a', kind: 'brand', side: 'flesh', shape: { kind: 'area', outline } };
  const moved = moveFlaw(flaw, composeAffine(translation(100, 5), MIRROR_X));
  expect(moved.side).toBe('flesh');
  if (moved.shape.kind !== 'area') throw new Error('an area stays an area');
  expect(curveArea(moved.shape.outline)).toBeCloseTo(100, 9);
  expect(moved.shape.outline.start).toEqual({ x: 100, y: 5 });
});

test('when a line is turned by a quarter, it keeps its width', () => {
  const flaw: Flaw = {
    id: 'a',
    kind: 'scar',
    side: 'grain',
    shape: {
      kind: 'line',
      line: [
        { x: 1, y: 0 },
        { x: 5, y: 0 },
      ],
      widthMm: 3,
    },
  };
  const moved = moveFlaw(flaw, rotationDeg(90));
  expect(moved.shape).toEqual({
    kind: 'line',
    line: [
      { x: 0, y: 1 },
      { x: 0, y: 5 },
    ],
    widthMm: 3,
  });
});
