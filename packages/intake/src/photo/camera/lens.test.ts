import { createRandom } from '@hidebound/geometry';
import { expect, test } from 'vitest';
import { throughLens, withoutLens } from './lens.js';

test('when a place goes through a lens and back, it is where it was', () => {
  const random = createRandom(11);
  for (let i = 0; i < 500; i++) {
    const lens = {
      axis: { x: random.between(1900, 2100), y: random.between(1400, 1600) },
      radiusPx: 2500,
      k1: random.between(-0.12, 0.15),
      k2: random.between(-0.02, 0.02),
      p1: random.between(-0.002, 0.002),
      p2: random.between(-0.002, 0.002),
    };
    const ideal = { x: random.between(0, 4000), y: random.between(0, 3000) };
    const back = withoutLens(lens, throughLens(lens, ideal));
    expect(Math.hypot(back.x - ideal.x, back.y - ideal.y)).toBeLessThan(1e-6);
  }
});

test('when a lens has a k1 of 0.1, a corner of the picture moves outwards by a tenth of the half diagonal', () => {
  // Source: OpenCV's documentation, "Camera Calibration and 3D Reconstruction": x'' = x' (1 + k1 r² + …).
  const lens = { axis: { x: 0, y: 0 }, radiusPx: 500, k1: 0.1, k2: 0, p1: 0, p2: 0 };
  const { x, y } = throughLens(lens, { x: 300, y: -400 });
  expect(x).toBeCloseTo(330, 9);
  expect(y).toBeCloseTo(-440, 9);
});

test('when a lens has tangential terms, they are those of OpenCV', () => {
  // Source: the same page: x'' = … + 2 p1 x' y' + p2 (r² + 2 x'²), y'' = … + p1 (r² + 2 y'²) + 2 p2 x' y'.
  const lens = { axis: { x: 0, y: 0 }, radiusPx: 1, k1: 0, k2: 0, p1: 0.01, p2: 0.002 };
  const { x, y } = throughLens(lens, { x: 0.6, y: 0.8 });
  expect(x).toBeCloseTo(0.6 + 2 * 0.01 * 0.48 + 0.002 * (1 + 0.72), 12);
  expect(y).toBeCloseTo(0.8 + 0.01 * (1 + 1.28) + 2 * 0.002 * 0.48, 12);
});
