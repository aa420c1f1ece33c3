import { MARKER_MM, markerCorners } from '@hidebound/leather';
import type { Point } from '@hidebound/geometry';
import { expect, test } from 'vitest';
import { measureStated } from './measure-stated.js';
import { onSheet, photographSheets, shownAt, testCamera } from './test-scene.js';

const CAMERA = testCamera({ x: 120, y: 60, heightMm: 800, width: 1000, height: 750 });
const SHEET = { sheet: 7, x: 0, y: 0, turnDeg: 20 };
/** The black edge of a marker stands for any rectangle of known sides. */
const TRUE_CORNERS = markerCorners(0).map((on) => {
  const [x, y] = onSheet(SHEET, on);
  return shownAt(CAMERA, x, y);
});

const rectangle = (corners: readonly Point[]) =>
  ({
    kind: 'rectangle',
    corners: corners as unknown as readonly [Point, Point, Point, Point],
    widthMm: MARKER_MM,
    heightMm: MARKER_MM,
  }) as const;

test('when corners are clicked 2 px off, they are moved to where the edges meet', () => {
  const photo = photographSheets(CAMERA, [SHEET], { blurPx: 0.7, noise: 0.004 });
  const off = [2, -1.5, 1, -2];
  const clicked = TRUE_CORNERS.map(({ x, y }, i) => ({ x: x + off[i]!, y: y - off[3 - i]! }));
  const { stated, deviationPx } = measureStated(photo, rectangle(clicked));
  if (stated.kind !== 'rectangle') throw new Error('the kind was changed');
  stated.corners.forEach(({ x, y }, i) => {
    expect(Math.hypot(x - TRUE_CORNERS[i]!.x, y - TRUE_CORNERS[i]!.y)).toBeLessThan(0.4);
  });
  expect(Math.max(...deviationPx)).toBeLessThan(1);
});

test('when there is no edge beside a side, corners stay as they were clicked, with their larger error', () => {
  const photo = photographSheets(CAMERA, []);
  const { stated, deviationPx } = measureStated(photo, rectangle(TRUE_CORNERS));
  expect(stated).toEqual(rectangle(TRUE_CORNERS));
  expect(Math.min(...deviationPx)).toBeGreaterThan(1);
});
