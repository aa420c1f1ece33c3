import { expect, test, describe } from 'vitest';
import { toFloor, toPicture } from '../straight/straight-picture.js';
import type { StraightPicture } from '../straight/straight-picture.js';
import { hideFrame, pointInFrame } from './hide-frame.js';
import { pictureInFrame } from './place-picture.js';

/** 60 × 40 mm at 2 px/mm; each pixel tells its own column and row. */
const PICTURE: StraightPicture = (() => {
  const width = 120;
  const height = 80;
  const rgb = new Uint8Array(width * height * 3);
  for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) rgb.set([x, y, 7], (y * width + x) * 3);
  const seen = new Uint8Array(width * height).fill(255);
  return { width, height, rgb, seen, pxPerMm: 2, origin: { x: -10, y: 5 } };
})();

const BOX = { minX: 0.2, minY: 11, maxX: 31.9, maxY: 30 };

function colourAt(picture: StraightPicture, x: number, y: number): readonly number[] {
  const at = (Math.round(y) * picture.width + Math.round(x)) * 3;
  return [...picture.rgb.subarray(at, at + 3)];
}

describe('the picture of a hide', () => {
  test.each(['grain', 'flesh'] as const)(
    'when the %s side lay upwards, each place of the hide shows the same pixel as its place on the floor',
    (side) => {
      const frame = hideFrame(BOX, side);
      const picture = pictureInFrame(PICTURE, BOX, frame, side);
      for (const pixel of [
        { x: 25, y: 15 },
        { x: 60, y: 40 },
        { x: 80, y: 20 },
      ]) {
        const onHide = pointInFrame(frame, toFloor(PICTURE, pixel));
        const { x, y } = toPicture(picture, onHide);
        expect(x).toBeCloseTo(Math.round(x), 6);
        expect(colourAt(picture, x, y)).toEqual(colourAt(PICTURE, pixel.x, pixel.y));
      }
    },
  );

  test('when the box reaches beyond the picture, what is there is taken', () => {
    const frame = hideFrame(BOX, 'grain');
    const { width, height, rgb } = pictureInFrame(
      PICTURE,
      { minX: -500, minY: -500, maxX: 500, maxY: 500 },
      frame,
      'grain',
    );
    expect({ width, height }).toEqual({ width: 120, height: 80 });
    expect(rgb).toEqual(PICTURE.rgb);
  });
});
