import { expect, test } from 'vitest';
import { PX_PER_MM } from './bitmap.js';
import type { Bitmap } from './bitmap.js';
import { findCross } from './crosses.js';

const SIZE_MM = 24;
const CENTRE = { x: 11.987, y: 12.513 };
const HALF_LINE = 0.125;
/** What an edge may darken of a pixel, over the root of the many that are looked at: a tenth of a pixel, mm. */
const WITHIN_MM = 0.005;

/** A cross as docs/templates.md has it, and what else `isLine` says, each pixel black if its middle is. */
function drawnCross(isLine: (x: number, y: number) => boolean): Bitmap {
  const width = 8 * Math.round((SIZE_MM * PX_PER_MM) / 8);
  const bytesPerRow = width / 8;
  const bits = new Uint8Array(bytesPerRow * width);
  for (let row = 0; row < width; row++) {
    for (let column = 0; column < width; column++) {
      const x = (column + 0.5) / PX_PER_MM - CENTRE.x;
      const y = (row + 0.5) / PX_PER_MM - CENTRE.y;
      const isArm =
        (Math.abs(x) <= 4 && Math.abs(y) <= HALF_LINE) || (Math.abs(y) <= 4 && Math.abs(x) <= HALF_LINE);
      const isRing = Math.abs(Math.hypot(x, y) - 2) <= HALF_LINE;
      if (isArm || isRing || isLine(x, y)) bits[row * bytesPerRow + (column >> 3)]! |= 0x80 >> (column & 7);
    }
  }
  return { width, height: width, bytesPerRow, bits };
}

test.each([
  ['nothing is beside it', () => false],
  [
    'an edge of 0.7 mm runs along its level line',
    (x: number, y: number) => Math.abs(y + 0.01 * x + 0.2) <= 0.35,
  ],
  ['a slanting line crosses it', (x: number, y: number) => Math.abs(y - 0.7 * x - 0.4) <= 0.175],
])('when %s, the centre of a cross is found in the pixels', (_, isLine) => {
  const found = findCross(
    drawnCross(isLine),
    { x: (CENTRE.x + 2) * PX_PER_MM, y: (CENTRE.y - 2) * PX_PER_MM },
    PX_PER_MM,
  )!;
  expect(Math.abs(found.x / PX_PER_MM - CENTRE.x)).toBeLessThan(WITHIN_MM);
  expect(Math.abs(found.y / PX_PER_MM - CENTRE.y)).toBeLessThan(WITHIN_MM);
});

test('when there is a crossing of lines without a circle, no cross is found', () => {
  const bitmap = drawnCross(() => false);
  for (let row = 0; row < bitmap.height; row++) {
    const y = (row + 0.5) / PX_PER_MM - CENTRE.y;
    if (Math.abs(y) > HALF_LINE + 0.1)
      bitmap.bits.fill(0, row * bitmap.bytesPerRow, (row + 1) * bitmap.bytesPerRow);
  }
  expect(findCross(bitmap, { x: CENTRE.x * PX_PER_MM, y: CENTRE.y * PX_PER_MM }, PX_PER_MM)).toBeUndefined();
});
