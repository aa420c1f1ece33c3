import { describe, expect, test } from 'vitest';
import { aimCamera, meetFloor, project } from './pinhole.js';
import type { Lens, PinholeCamera } from './scene.js';

const STRAIGHT: Lens = { focal: 1.2, k1: 0, k2: 0, k3: 0, p1: 0, p2: 0, axisX: 0, axisY: 0 };
const BENT: Lens = {
  ...STRAIGHT,
  k1: -0.1,
  k2: 0.02,
  k3: 0.01,
  p1: 0.001,
  p2: -0.002,
  axisX: 0.01,
  axisY: -0.02,
};

/** 4 × 3, so that half of the diagonal is 2.5 of these units. */
function lookingDown(lens: Lens): PinholeCamera {
  const axes = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ] as const;
  return { width: 4000, height: 3000, position: { x: 0, y: 0, z: 2000 }, axes, lens };
}

describe('the simulated camera', () => {
  // Judge: similar triangles. Focal length 1.2 × 2500 px = 3000 px over 2000 mm is 1.5 px/mm.
  test('when it looks straight down, the floor is a plain picture at focal length over height', () => {
    const middle = { x: 1999.5, y: 1499.5 };
    const seen = project(lookingDown(STRAIGHT), { x: 400, y: -200, z: 0 });
    expect(seen.x).toBeCloseTo(middle.x + 600, 9);
    expect(seen.y).toBeCloseTo(middle.y - 300, 9);
  });

  // Judge: h · r / (H − h), the usual formula for relief displacement, with 10 mm at 1 m off the foot, seen from 2 m.
  test('when something stands 10 mm high, it seems to lie 5 mm farther out', () => {
    const camera = lookingDown(STRAIGHT);
    const seenOnFloor = meetFloor(camera, project(camera, { x: 1000, y: 0, z: 10 }))!;
    expect(seenOnFloor.x).toBeCloseTo(1000 + (10 * 1000) / (2000 - 10), 6);
  });

  // Judge: Brown's terms worked by hand at (u, v) = (0.6, 0.4): ρ² = 0.52.
  test('when the lens bends, a place moves as the published terms say', () => {
    const camera = lookingDown(BENT);
    const [u, v, rr] = [0.6, 0.4, 0.52];
    const radial = 1 - 0.1 * rr + 0.02 * rr * rr + 0.01 * rr * rr * rr;
    const x = u * radial + 2 * 0.001 * u * v - 0.002 * (rr + 2 * u * u);
    const y = v * radial + 0.001 * (rr + 2 * v * v) - 2 * 0.002 * u * v;
    const seen = project(camera, { x: (0.6 / 1.2) * 2000, y: (0.4 / 1.2) * 2000, z: 0 });
    expect(seen.x).toBeCloseTo(1999.5 + 2500 * (x + 0.01), 6);
    expect(seen.y).toBeCloseTo(1499.5 + 2500 * (y - 0.02), 6);
  });

  test('when a ray is followed down and back, it ends where it began, however the camera is held', () => {
    for (const tiltDeg of [0, 12, 35]) {
      const view = { tiltDeg, towardsDeg: 250, rollDeg: 5, fill: 0.9 };
      const picture = { width: 1200, height: 900 };
      const camera = aimCamera({ picture, view, lens: BENT }, [
        { x: -900, y: -700 },
        { x: 900, y: 700 },
        { x: -900, y: 700 },
        { x: 900, y: -700 },
      ]);
      for (const pixel of [
        { x: 20, y: 880 },
        { x: 600, y: 450 },
        { x: 1100, y: 700 },
      ]) {
        const back = project(camera, { ...meetFloor(camera, pixel)!, z: 0 });
        expect(Math.hypot(back.x - pixel.x, back.y - pixel.y)).toBeLessThan(1e-6);
      }
      // Everything that it was aimed at is in the picture.
      const corner = project(camera, { x: -900, y: -700, z: 0 });
      expect(corner.x).toBeGreaterThan(0);
      expect(corner.y).toBeGreaterThan(0);
    }
  });
});
