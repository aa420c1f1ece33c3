import { describe, expect, test } from 'vitest';
import { IDENTITY, ringBox } from '@hidebound/geometry';
import type { Camera } from '../camera/camera.js';
import { hideFrame } from './hide-frame.js';
import { hideToPhoto, photoToHide, photoViews } from './photo-view.js';

/** Two pixels for a mm, the floor's (100, 50) in the photo's corner, no lens: places can be told by hand. */
const CAMERA: Camera = {
  width: 2000,
  height: 1500,
  homography: [2, 0, -200, 0, 2, -100, 0, 0, 1],
  axis: { x: 1000, y: 750 },
  radiusPx: 1250,
  k1: 0,
  k2: 0,
  p1: 0,
  p2: 0,
};
const HIDE_ON_FLOOR = [
  { x: 300, y: 150 },
  { x: 900, y: 150 },
  { x: 900, y: 550 },
];
const PHOTO = { file: 'side.jpg', width: 2000, height: 1500, rgb: new Uint8Array() };

describe('how a photo sees a hide', () => {
  test('when the grain side lay upwards, a place of the hide is found where reckoning by hand puts it', () => {
    const [view] = photoViews([PHOTO], [CAMERA], [], hideFrame(ringBox(HIDE_ON_FLOOR), 'grain'));
    // Floor (300, 150) is px 2 · 300 − 200, 2 · 150 − 100.
    expect(hideToPhoto(view!, { x: 0, y: 0 })).toEqual({ x: 400, y: 200 });
    const inside = hideToPhoto(view!, { x: 10, y: 20 })!;
    expect(inside.x).toBeCloseTo(420, 9);
    expect(inside.y).toBeCloseTo(240, 9);
  });

  test('when the flesh side lay upwards, the photo shows the hide mirrored', () => {
    const [view] = photoViews([PHOTO], [CAMERA], [], hideFrame(ringBox(HIDE_ON_FLOOR), 'flesh'));
    expect(hideToPhoto(view!, { x: 0, y: 0 })).toEqual({ x: 1600, y: 200 });
  });

  test('when a place goes there and back, through a lens that bends, it is the same place', () => {
    const bent = { ...CAMERA, k1: -0.03, k2: 0.01 };
    const [view] = photoViews([PHOTO], [bent], [], hideFrame(ringBox(HIDE_ON_FLOOR), 'flesh'));
    const back = photoToHide(view!, hideToPhoto(view!, { x: 120, y: 340 })!);
    expect(back.x).toBeCloseTo(120, 6);
    expect(back.y).toBeCloseTo(340, 6);
  });

  test('when the photo does not show a place, nothing is told', () => {
    const [view] = photoViews([PHOTO], [CAMERA], [], hideFrame(ringBox(HIDE_ON_FLOOR), 'grain'));
    expect(hideToPhoto(view!, { x: 1500, y: 0 })).toBeUndefined();
  });

  test('when a sheet lies partly beyond the photo, it is not among what the photo shows', () => {
    const ring = (x: number) => [
      { x, y: 100 },
      { x: x + 100, y: 100 },
      { x: x + 100, y: 200 },
    ];
    const sheet = (name: string, x: number) => ({ name, ring: ring(x), isOpaque: true, residualMm: 0 });
    const sheets = [sheet('sheet 1', 200), sheet('sheet 2', 1050)];
    const [view] = photoViews([PHOTO], [CAMERA], sheets, IDENTITY);
    expect(view!.references.map(({ name }) => name)).toEqual(['sheet 1']);
    expect(view!.references[0]!.ringPx[0]).toEqual({ x: 200, y: 100 });
  });
});
