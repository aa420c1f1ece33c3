import type { Point } from '@hidebound/geometry';
import { beforeAll, expect, test } from 'vitest';
import type { Camera } from '../camera/camera.js';
import { fitHomography } from '../camera/homography.js';
import { toFloorPoint, toPhotoPx } from '../camera/places.js';
import { floorShownAt, shownAt, testCamera } from '../camera/test-scene.js';
import type { TestCamera } from '../camera/test-scene.js';
import type { Photo } from '../photo.js';
import { loadVision } from '../vision/load-vision.js';
import type { Vision } from '../vision/vision.js';
import type { StraightPicture } from './straight-picture.js';
import { toFloor } from './straight-picture.js';
import { straighten } from './straighten.js';

let vision: Vision;
beforeAll(async () => {
  ({ vision } = await loadVision());
});

const SMALL = { width: 1000, height: 750 };

/** The same camera in our own numbers: OpenCV's are in focal lengths, ours in half diagonals. */
function ourCamera(camera: TestCamera): Camera {
  const radiusPx = Math.hypot(camera.width, camera.height) / 2;
  const unit = radiusPx / camera.focalPx;
  const corners: Point[] = [
    { x: -400, y: -300 },
    { x: 400, y: -300 },
    { x: 400, y: 300 },
    { x: -400, y: 300 },
  ];
  const straight = { ...camera, k1: 0, k2: 0, k3: 0, p1: 0, p2: 0 };
  return {
    width: camera.width,
    height: camera.height,
    homography: fitHomography(
      corners,
      corners.map(({ x, y }) => shownAt(straight, x, y)),
    )!,
    axis: camera.axis,
    radiusPx,
    k1: camera.k1 * unit ** 2,
    k2: camera.k2 * unit ** 4,
    p1: camera.p1 * unit,
    p2: camera.p2 * unit,
  };
}

/** Hills of light on the floor, without edges, so that every pixel tells where it came from. */
const HILL_MM = 60;
const hills = (x: number, y: number): number =>
  128 + 50 * Math.sin((2 * Math.PI * x) / HILL_MM) + 50 * Math.sin((2 * Math.PI * y) / HILL_MM);

function photographHills(camera: TestCamera, file = 'hills.png'): Photo {
  const { width, height } = camera;
  const rgb = new Uint8Array(width * height * 3);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const at = floorShownAt(camera, x, y);
      rgb.fill(Math.round(hills(at.x, at.y)), (y * width + x) * 3, (y * width + x) * 3 + 3);
    }
  }
  return { file, width, height, rgb };
}

/** How far the hills around a pixel lie from where they should, px: least squares on their slopes in a window. */
function shiftAt(picture: StraightPicture, column: number, row: number): Point {
  let [xx, xy, yy, xd, yd] = [0, 0, 0, 0, 0];
  const k = (2 * Math.PI) / HILL_MM;
  for (let j = row - 40; j < row + 40; j++) {
    for (let i = column - 40; i < column + 40; i++) {
      const { x, y } = toFloor(picture, { x: i, y: j });
      const [sx, sy] = [
        (50 * k * Math.cos(k * x)) / picture.pxPerMm,
        (50 * k * Math.cos(k * y)) / picture.pxPerMm,
      ];
      const miss = picture.rgb[(j * picture.width + i) * 3]! - hills(x, y);
      xx += sx * sx;
      xy += sx * sy;
      yy += sy * sy;
      xd -= sx * miss;
      yd -= sy * miss;
    }
  }
  const determinant = xx * yy - xy * xy;
  return { x: (yy * xd - xy * yd) / determinant, y: (xx * yd - xy * xd) / determinant };
}

const LENS = { k1: -0.09, k2: 0.02, p1: 0.001, p2: -0.0008, axisShift: { x: 6, y: -4 } };

test('when a photo is straightened, every place lies within 0.05 px of where it belongs', () => {
  const camera = testCamera({ ...SMALL, x: 250, y: 150, heightMm: 900, rollDeg: 8, ...LENS });
  const box = { minX: -330, minY: -240, maxX: 310, maxY: 250 };
  const picture = straighten(
    [photographHills(camera)],
    { cameras: [ourCamera(camera)] },
    { pxPerMm: 1, box },
    vision,
  );
  expect([picture.width, picture.height]).toEqual([640, 490]);
  let worst = 0;
  for (let row = 45; row < 445; row += 50) {
    for (let column = 45; column < 595; column += 50) {
      const { x, y } = shiftAt(picture, column, row);
      worst = Math.max(worst, Math.hypot(x, y));
    }
  }
  expect(worst).toBeLessThan(0.05);
});

test('when our camera takes places there and back, they agree with the camera of the tests', () => {
  const camera = testCamera({ ...SMALL, x: -200, y: 300, heightMm: 1000, rollDeg: -30, ...LENS });
  const ours = ourCamera(camera);
  for (const floor of [
    { x: 0, y: 0 },
    { x: -310, y: 220 },
    { x: 290, y: -180 },
  ]) {
    const shown = shownAt(camera, floor.x, floor.y);
    const px = toPhotoPx(ours, floor);
    expect(Math.hypot(px.x - shown.x, px.y - shown.y)).toBeLessThan(1e-6);
    const back = toFloorPoint(ours, px);
    expect(Math.hypot(back.x - floor.x, back.y - floor.y)).toBeLessThan(1e-6);
  }
});

test('when a part of the box lies outside of the photo, it is not marked as seen', () => {
  const camera = testCamera({ ...SMALL, x: 0, y: 0, heightMm: 900 });
  const ours = ourCamera(camera);
  const box = { minX: 0, minY: 0, maxX: 700, maxY: 100 };
  const picture = straighten([photographHills(camera)], { cameras: [ours] }, { pxPerMm: 0.5, box }, vision);
  for (let column = 0; column < picture.width; column++) {
    const px = toPhotoPx(ours, toFloor(picture, { x: column, y: 10 }));
    const isIn = px.x <= camera.width - 0.5;
    // Within a tenth of a pixel of the photo's own edge both are right.
    if (Math.abs(px.x - (camera.width - 0.5)) < 0.1) continue;
    expect(picture.seen[10 * picture.width + column]).toBe(isIn ? 255 : 0);
  }
});

test('when two photos see the floor, what each sees best is put together without a shift at the seam', () => {
  const left = testCamera({ ...SMALL, x: -60, y: 0, heightMm: 900, rollDeg: 3, focalShare: 1.6, ...LENS });
  const right = testCamera({ ...SMALL, x: 90, y: 20, heightMm: 850, rollDeg: -5, focalShare: 1.6 });
  const cameras = [left, right].map(ourCamera);
  const photos = [photographHills(left, 'left.png'), photographHills(right, 'right.png')];
  const box = { minX: -230, minY: -160, maxX: 230, maxY: 160 };
  const picture = straighten(photos, { cameras }, { pxPerMm: 1, box }, vision);
  let worst = 0;
  for (let row = 45; row < 270; row += 40) {
    for (let column = 45; column < 410; column += 40) {
      const { x, y } = shiftAt(picture, column, row);
      worst = Math.max(worst, Math.hypot(x, y));
    }
  }
  expect(worst).toBeLessThan(0.05);
});

test('when no scale is asked for, it is what the photo has, and a whole photo gives about as many pixels', () => {
  const camera = testCamera({ ...SMALL, x: 0, y: 0, heightMm: 900 });
  const ours = ourCamera(camera);
  const picture = straighten([photographHills(camera)], { cameras: [ours] }, {}, vision);
  // A pinhole right above sees focal length over height px for a mm.
  expect(picture.pxPerMm).toBeCloseTo(camera.focalPx / 900, 2);
  expect(picture.width * picture.height).toBeGreaterThan(0.97 * camera.width * camera.height);
});
