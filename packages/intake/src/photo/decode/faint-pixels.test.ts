import { ringArea, scaling } from '@hidebound/geometry';
import { expect, test } from 'vitest';
import { faintPixels } from './faint-pixels.js';
import { regionMask } from './leather-mask.js';

const SIDE = 240;
const SLOW_PX = 60;

/** Leather of one colour with fine grain, lit from the right, with a dark scar across its middle, on a grey floor. */
function leather(colour: readonly [number, number, number]) {
  const rgb = new Uint8Array(SIDE * SIDE * 3).fill(170);
  const mask = new Uint8Array(SIDE * SIDE);
  for (let y = 20; y < SIDE - 20; y++) {
    for (let x = 20; x < SIDE - 20; x++) {
      const grain = ((x * 7 + y * 13) % 11) - 5;
      const isScar = Math.abs(y - SIDE / 2) < 3;
      const light = 0.7 + (0.6 * x) / SIDE;
      const strength = Math.max(...colour) / 255;
      for (const [channel, value] of colour.entries()) {
        const level = value * light + strength * grain - (isScar ? 40 * strength : 0);
        rgb[3 * (y * SIDE + x) + channel] = Math.max(0, Math.min(255, level));
      }
      mask[y * SIDE + x] = 1;
    }
  }
  return { pixels: { width: SIDE, height: SIDE, rgb }, mask };
}

function meanLevel(rgb: Uint8Array, fromX: number, toX: number, fromY: number, toY: number): number {
  let sum = 0;
  for (let y = fromY; y < toY; y++) {
    sum += rgb.subarray(3 * (y * SIDE + fromX), 3 * (y * SIDE + toX)).reduce((a, b) => a + b, 0);
  }
  return sum / ((toX - fromX) * (toY - fromY) * 3);
}

test.each([
  ['black', [30, 28, 28]],
  ['dark brown', [60, 38, 26]],
  ['russet', [190, 140, 95]],
] as const)('when leather is %s, it becomes light, and its scar stays to be seen', (_, colour) => {
  const { pixels, mask } = leather(colour);
  const { rgb } = faintPixels(pixels, mask, SLOW_PX);
  const calm = meanLevel(rgb, 40, 200, 50, 90);
  const scar = meanLevel(rgb, 40, 200, SIDE / 2 - 1, SIDE / 2 + 2);
  expect(calm).toBeGreaterThan(205);
  expect(calm).toBeLessThan(245);
  expect(calm - scar).toBeGreaterThan(20);
});

test('when a stroke of chalk lies on dark leather, its scar stays to be seen as without it', () => {
  const scarOf = (hasChalk: boolean): number => {
    const { pixels, mask } = leather([60, 38, 26]);
    for (let i = 0; hasChalk && i < mask.length; i++) {
      if (mask[i] === 1 && Math.abs((i % SIDE) - 60) < 6) pixels.rgb.fill(235, 3 * i, 3 * i + 3);
    }
    const { rgb } = faintPixels(pixels, mask, SLOW_PX);
    return meanLevel(rgb, 150, 200, 60, 100) - meanLevel(rgb, 150, 200, SIDE / 2 - 1, SIDE / 2 + 2);
  };
  expect(Math.abs(scarOf(true) - scarOf(false))).toBeLessThan(0.25 * scarOf(false));
});

test('when the light comes from one side, both sides become alike', () => {
  const { pixels, mask } = leather([150, 105, 70]);
  const before = Math.abs(meanLevel(pixels.rgb, 30, 60, 40, 100) - meanLevel(pixels.rgb, 180, 210, 40, 100));
  const { rgb } = faintPixels(pixels, mask, SLOW_PX);
  const after = Math.abs(meanLevel(rgb, 30, 60, 40, 100) - meanLevel(rgb, 180, 210, 40, 100));
  expect(before).toBeGreaterThan(30);
  // Near the edge, where leather lies on one side only, some of it is left, and grown with the grain.
  expect(after).toBeLessThan(before / 2);
});

test('when a pixel is beyond the leather, it becomes white, and does not shine onto the edge', () => {
  const { pixels, mask } = leather([60, 38, 26]);
  const { rgb } = faintPixels(pixels, mask, SLOW_PX);
  expect(meanLevel(rgb, 0, SIDE, 0, 20)).toBe(255);
  const edge = meanLevel(rgb, 100, 140, 21, 27);
  const inner = meanLevel(rgb, 100, 140, 60, 90);
  expect(Math.abs(edge - inner)).toBeLessThan(12);
});

test('when no pixel is leather, the picture is white', () => {
  const { pixels } = leather([60, 38, 26]);
  const { rgb } = faintPixels(pixels, new Uint8Array(SIDE * SIDE), SLOW_PX);
  expect(rgb.every((level) => level === 255)).toBe(true);
});

test('when a region lies on a picture, as many pixels are within it as its area says', () => {
  const outer = [
    { x: 10.3, y: 8.1 },
    { x: 91.7, y: 20.4 },
    { x: 70.2, y: 88.8 },
    { x: 22.6, y: 71.5 },
  ];
  const opening = [
    { x: 40, y: 40 },
    { x: 40, y: 50 },
    { x: 55, y: 50 },
    { x: 55, y: 40 },
  ];
  const mask = regionMask({ outer, openings: [opening] }, scaling(4), { width: 400, height: 400 });
  const count = mask.reduce((sum, isWithin) => sum + isWithin, 0);
  const area = (ringArea(outer) + ringArea(opening)) * 16;
  // Pixels at the edge count by their middles: the error is far below one row of them along the edge.
  expect(Math.abs(count - area)).toBeLessThan(60);
  expect([mask[45 * 4 * 400 + 47 * 4], mask[30 * 4 * 400 + 47 * 4], mask[2]]).toEqual([0, 1, 0]);
});

test('when a region reaches beyond the picture, what lies on it is told', () => {
  const outer = [
    { x: -50, y: -50 },
    { x: 50, y: -50 },
    { x: 50, y: 500 },
    { x: -50, y: 500 },
  ];
  const mask = regionMask({ outer, openings: [] }, scaling(1), { width: 100, height: 80 });
  expect(mask.reduce((sum, isWithin) => sum + isWithin, 0)).toBe(50 * 80);
});
