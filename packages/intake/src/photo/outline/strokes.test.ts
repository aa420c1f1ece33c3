import type { EdgeHints } from '@hidebound/leather';
import { expect, test } from 'vitest';
import { errors, find } from './test-find.js';
import { hideRing, rectangle } from './test-scenes.js';
import type { TestScene } from './test-scenes.js';

// Drawn from a known ring, which is what the result is held against. The leather is hardly paler than the planks, whose
// own tones differ more from each other than from the leather's.
const HIDE = hideRing(700, { x: 600, y: 460 });
const PALE_ON_PALE: TestScene = {
  seed: 7,
  floor: 'planks',
  floorColour: [200, 165, 125],
  hideColour: [218, 186, 148],
  pxPerMm: 0.5,
  widthMm: 1200,
  heightMm: 920,
  rings: [HIDE],
  papers: [
    rectangle(110, 120, 148, 210, 8),
    rectangle(1090, 120, 210, 148, -5),
    rectangle(120, 810, 210, 148, 3),
    rectangle(1080, 800, 148, 210, 14),
  ],
  marks: true,
  vignette: 0.35,
  softShadow: true,
  edgeShadowMm: 5,
};

const STROKES: EdgeHints = {
  edgePoints: [],
  hideStrokes: [
    [
      { x: 420, y: 460 },
      { x: 800, y: 470 },
    ],
    [
      { x: 600, y: 330 },
      { x: 610, y: 600 },
    ],
  ],
  floorStrokes: [
    [
      { x: 60, y: 300 },
      { x: 70, y: 620 },
    ],
    [
      { x: 300, y: 50 },
      { x: 900, y: 60 },
    ],
    [
      { x: 1150, y: 300 },
      { x: 1140, y: 620 },
    ],
  ],
};

test('when leather is hardly paler than the planks below it, strokes on either tell them apart, and without them it fails', async () => {
  const { pieces } = await find(PALE_ON_PALE, { hints: STROKES });
  const { median, area } = errors(pieces[0]!, HIDE);
  expect(median).toBeLessThan(1.5);
  expect(area).toBeLessThan(0.015);
  const alone = errors((await find(PALE_ON_PALE)).pieces[0]!, HIDE);
  expect(alone.median).toBeGreaterThan(10);
});
