import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hole, points, rectangle, solid, starRegion } from '../../test-support/shapes.js';
import {
  applyAffine,
  composeAffine,
  rotationDeg,
  scaling,
  transformRegion,
  transformRing,
  translation,
} from './affine.js';
import {
  boxUnion,
  boxesTouch,
  growBox,
  orientRegion,
  orientRing,
  regionArea,
  regionBox,
  regionCentroid,
  reverseRing,
  ringArea,
  ringBox,
  ringCentroid,
  ringPerimeter,
} from './ring.js';

describe('rings and regions', () => {
  it('when a ring runs clockwise as seen (y down), its area is positive', () => {
    expect(ringArea(rectangle(1, 2, 30, 20))).toBe(600);
    expect(ringArea(hole(rectangle(1, 2, 30, 20)))).toBe(-600);
    expect(ringPerimeter(rectangle(1, 2, 30, 20))).toBe(100);
  });

  it('when a ring is turned round, it starts at the same corner', () => {
    expect(reverseRing(points([0, 0], [1, 0], [0, 1]))).toEqual(points([0, 0], [0, 1], [1, 0]));
    expect(ringArea(orientRing(rectangle(0, 0, 1, 1), 'opening'))).toBe(-1);
    expect(ringArea(orientRegion(solid(hole(rectangle(0, 0, 9, 9)), rectangle(1, 1, 1, 1))).outer)).toBe(81);
  });

  // Handbook facts: a triangle's centroid is the mean of its corners; a half disc's lies 4 r / (3 pi) from its chord.
  it('when a triangle or a half disc is given, its centroid is where the handbook says', () => {
    expect(ringCentroid(points([0, 0], [30, 0], [0, 60]))).toEqual({ x: 10, y: 20 });
    const half = Array.from({ length: 2001 }, (_, i) =>
      applyAffine(rotationDeg((180 * i) / 2000), { x: 100, y: 0 }),
    );
    expect(ringCentroid(half).y).toBeCloseTo(400 / (3 * Math.PI), 4);
    expect(ringArea(half)).toBeCloseTo((Math.PI * 10_000) / 2, 0);
  });

  it('when a square has a square opening to one side, centroid and area follow from the two', () => {
    const region = solid(rectangle(0, 0, 10, 10), hole(rectangle(6, 4, 2, 2)));
    expect(regionArea(region)).toBe(96);
    expect(regionCentroid(region).x).toBeCloseTo((100 * 5 - 4 * 7) / 96, 12);
    expect(regionCentroid(region).y).toBeCloseTo(5, 12);
  });

  // Pick's theorem: a ring on whole numbers has area inside + edge / 2 - 1.
  it('when the corners of a triangle are whole numbers, its area is what Pick counts', () => {
    const triangle = points([0, 0], [12, 0], [0, 8]);
    let inside = 0;
    for (let x = 1; x < 12; x++) for (let y = 1; y < 8; y++) if (8 * x + 12 * y < 96) inside++;
    const edge = 12 + 8 + 4;
    expect(ringArea(triangle)).toBe(inside + edge / 2 - 1);
  });

  it('when a region is moved far off, turned or scaled, area and centroid follow', () => {
    fc.assert(
      fc.property(
        starRegion(),
        fc.integer({ min: 0, max: 3 }),
        fc.constantFrom(1e-3, 1, 1e3),
        (region, quarter, scale) => {
          const m = composeAffine(
            translation(20_000, -30_000),
            composeAffine(rotationDeg(90 * quarter), scaling(scale)),
          );
          const moved = transformRegion(m, region);
          expect(regionArea(moved) / (regionArea(region) * scale * scale)).toBeCloseTo(1, 6);
          const expected = applyAffine(m, regionCentroid(region));
          const found = regionCentroid(moved);
          expect(Math.abs(found.x - expected.x) + Math.abs(found.y - expected.y)).toBeLessThan(
            1e-6 * Math.max(1, scale),
          );
        },
      ),
      { seed: 1 },
    );
  });

  // Seven pieces of a tangram of side 4: areas 4, 4, 2, 2, 2, 1, 1.
  it('when the seven pieces of a tangram are measured, their areas are the known ones and sum to the square', () => {
    const pieces = [
      points([0, 0], [4, 0], [2, 2]),
      points([0, 0], [2, 2], [0, 4]),
      points([4, 2], [4, 4], [2, 4]),
      points([2, 2], [3, 1], [4, 2], [3, 3]),
      points([0, 4], [1, 3], [3, 3], [2, 4]),
      points([4, 0], [4, 2], [3, 1]),
      points([2, 2], [3, 3], [1, 3]),
    ];
    const areas = pieces.map((piece) => Math.abs(ringArea(piece)));
    expect(areas).toEqual([4, 4, 2, 2, 2, 1, 1]);
    const turned = pieces.map((piece) => Math.abs(ringArea(transformRing(rotationDeg(45), piece))));
    expect(turned.reduce((a, b) => a + b)).toBeCloseTo(16, 12);
  });

  it('when boxes are compared, touching counts, and so does coming near enough', () => {
    const a = ringBox(rectangle(0, 0, 10, 10));
    const b = regionBox(solid(rectangle(10, 10, 5, 5)));
    const c = ringBox(rectangle(12, 0, 1, 1));
    expect([boxesTouch(a, b), boxesTouch(a, c), boxesTouch(a, c, 2), boxesTouch(a, c, 1.9)]).toEqual([
      true,
      false,
      true,
      false,
    ]);
    expect(boxUnion(a, c)).toEqual({ minX: 0, minY: 0, maxX: 13, maxY: 10 });
    expect(growBox(c, 2)).toEqual({ minX: 10, minY: -2, maxX: 15, maxY: 3 });
  });
});
