import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { starRegion } from '../../test-support/shapes.js';
import {
  IDENTITY,
  MIRROR_X,
  affineDeterminant,
  applyAffine,
  composeAffine,
  invertAffine,
  rotationDeg,
  scaling,
  transformRegion,
  translation,
} from './affine.js';
import { regionArea, ringArea } from './ring.js';

const number = fc.double({ min: -100, max: 100, noNaN: true });
const transform = fc
  .tuple(number, number, number, fc.boolean())
  .map(([deg, dx, dy, mirrored]) =>
    composeAffine(translation(dx, dy), composeAffine(rotationDeg(deg * 4), mirrored ? MIRROR_X : IDENTITY)),
  );

describe('affine transforms', () => {
  it('when the x axis is turned by 90 degrees, it points down as seen: clockwise, exactly', () => {
    expect(applyAffine(rotationDeg(90), { x: 3, y: 0 })).toEqual({ x: 0, y: 3 });
    expect(applyAffine(rotationDeg(180), { x: 3, y: 1 })).toEqual({ x: -3, y: -1 });
    expect(applyAffine(rotationDeg(-90), { x: 3, y: 1 })).toEqual({ x: 1, y: -3 });
  });

  it('when a place is mirrored, turned and moved, it goes where the layout format says', () => {
    const m = composeAffine(translation(10, 20), composeAffine(rotationDeg(90), MIRROR_X));
    expect(applyAffine(m, { x: 1, y: 2 })).toEqual({ x: 8, y: 19 });
  });

  it('when transforms are composed, it is as if one were done after the other', () => {
    fc.assert(
      fc.property(transform, transform, number, number, (outer, inner, x, y) => {
        const once = applyAffine(composeAffine(outer, inner), { x, y });
        const twice = applyAffine(outer, applyAffine(inner, { x, y }));
        expect(Math.abs(once.x - twice.x) + Math.abs(once.y - twice.y)).toBeLessThan(1e-11);
      }),
      { seed: 1 },
    );
  });

  it('when a transform is inverted, it leads back', () => {
    fc.assert(
      fc.property(transform, number, number, (m, x, y) => {
        const back = applyAffine(invertAffine(m), applyAffine(m, { x, y }));
        expect(Math.abs(back.x - x) + Math.abs(back.y - y)).toBeLessThan(1e-11);
      }),
      { seed: 2 },
    );
    expect(() => invertAffine(scaling(1, 0))).toThrow(expect.objectContaining({ code: 'bad-argument' }));
  });

  it('when a region is turned, moved or mirrored, its area and the signs of its rings stay', () => {
    fc.assert(
      fc.property(starRegion(), transform, (region, m) => {
        const moved = transformRegion(m, region);
        expect(Math.abs(affineDeterminant(m))).toBeCloseTo(1, 12);
        expect(regionArea(moved)).toBeCloseTo(regionArea(region), 7);
        expect(ringArea(moved.outer)).toBeGreaterThan(0);
        for (const opening of moved.openings) expect(ringArea(opening)).toBeLessThan(0);
      }),
      { seed: 3 },
    );
  });
});
