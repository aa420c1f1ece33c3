import type { Point, Ring } from '@hidebound/geometry';
import { expect, test } from 'vitest';
import { errors, find } from './test-find.js';
import { rectangle } from './test-scenes.js';
import type { TestScene } from './test-scenes.js';

// Drawn from known rings, which are what the results are held against.
const LEATHER = rectangle(400, 300, 440, 320);
const DARK_ON_PALE: TestScene = {
  seed: 4,
  floor: 'plain',
  floorColour: [175, 172, 166],
  hideColour: [70, 45, 32],
  pxPerMm: 0.8,
  widthMm: 800,
  heightMm: 600,
  rings: [LEATHER],
  edgeShadowMm: 5,
};

/** The leather with a notch of a given width, 120 mm deep, from the middle of its upper edge. */
function notched(wideMm: number): Ring {
  const [a, b, c, d] = LEATHER as [Point, Point, Point, Point];
  const at = (x: number, y: number): Point => ({ x: 400 + x, y: a.y + y });
  const half = wideMm / 2;
  return [a, at(-half, 0), at(-half, 120), at(half, 120), at(half, 0), b, c, d];
}

test('when a chalk line runs out over the edge of dark leather, the outline does not run in along it', async () => {
  const chalk = [rectangle(400, 200, 5, 220), rectangle(560, 400, 260, 4, 25)];
  const { pieces } = await find({ ...DARK_ON_PALE, chalk });
  const { worst, area } = errors(pieces[0]!, LEATHER);
  expect(worst).toBeLessThan(6);
  expect(area).toBeLessThan(0.006);
});

test.each([
  ['14 mm wide', 14],
  ['7 mm wide and shaded floor is seen in it', 7],
])('when a notch in the leather is %s, it stays', async (_, wideMm) => {
  const ring = notched(wideMm);
  const { pieces } = await find({ ...DARK_ON_PALE, rings: [ring] });
  expect(errors(pieces[0]!, ring).worst).toBeLessThan(6);
});
