import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { loadJudge } from '../../test-support/judge.js';
import type { Judge } from '../../test-support/judge.js';
import {
  hole,
  points,
  rectangle,
  solid,
  staircase,
  starRegion,
  starRing,
} from '../../test-support/shapes.js';
import { applyAffine, composeAffine, rotationDeg, transformRegion, translation } from './affine.js';
import { pointInRegion, pointInRing, pointInside, regionInRegion, ringInRing } from './contain.js';
import { signedDistance } from './inscribed-circle.js';

let judge: Judge;
beforeAll(async () => {
  judge = await loadJudge();
});

const coordinate = fc.double({ min: -70, max: 70, noNaN: true });

describe('points in regions', () => {
  // Judge: jsts 2.12.1.
  it('when random points are asked for, they lie where an independent library says', () => {
    fc.assert(
      fc.property(starRegion(), coordinate, coordinate, (region, x, y) => {
        const shape = judge.shapeOf(region);
        const expected = judge.covers(shape, judge.pointAt({ x, y })) ? 'inside' : 'outside';
        expect(pointInRegion({ x, y }, region)).toBe(expected);
        expect(Math.abs(signedDistance({ x, y }, region))).toBeCloseTo(
          judge.distance(judge.pointAt({ x, y }), shape.getBoundary()),
          9,
        );
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it('when a point is a corner or lies on an edge, it is on the edge, whichever way the ring runs', () => {
    const ring = points([0, 0], [10, 0], [10, 5], [5, 5], [5, 10], [0, 10]);
    for (const turned of [ring, hole(ring)]) {
      for (const p of points([0, 0], [10, 5], [5, 5], [7, 5], [5, 7], [0, 4], [4, 10]))
        expect(pointInRing(p, turned)).toBe('edge');
      for (const p of points([2, 5], [4.999, 9], [9, 4.999])) expect(pointInRing(p, turned)).toBe('inside');
      for (const p of points([12, 5], [-1, 5], [-1, 0], [11, 0], [7, 10]))
        expect(pointInRing(p, turned)).toBe('outside');
    }
  });

  it('when a point lies one bit beside a slanted edge, its side is told rightly', () => {
    const ring = points([0, 0], [30, 10], [0, 10]);
    const onEdge = { x: 15, y: 5 };
    expect(pointInRing(onEdge, ring)).toBe('edge');
    expect(pointInRing({ x: 15, y: 5 + Number.EPSILON * 4 }, ring)).toBe('inside');
    expect(pointInRing({ x: 15, y: 5 - Number.EPSILON * 4 }, ring)).toBe('outside');
  });

  it('when the scene is turned and moved, insides stay insides', () => {
    fc.assert(
      fc.property(starRegion(), coordinate, coordinate, coordinate, (region, x, y, deg) => {
        fc.pre(Math.abs(signedDistance({ x, y }, region)) > 1e-6);
        const m = composeAffine(translation(500, -300), rotationDeg(deg * 5));
        expect(pointInRegion(applyAffine(m, { x, y }), transformRegion(m, region))).toBe(
          pointInRegion({ x, y }, region),
        );
      }),
      { seed: 2, numRuns: 200 },
    );
  });

  it('when a point inside a ring is asked for, it is strictly inside', () => {
    fc.assert(
      fc.property(fc.oneof(starRing(), staircase()), (ring) => {
        expect(pointInRing(pointInside(ring), ring)).toBe('inside');
      }),
      { seed: 3, numRuns: 200 },
    );
  });
});

describe('regions in regions', () => {
  // Judge: jsts 2.12.1 (`covers`).
  it('when shapes share corners, edges and lines, containment agrees with an independent library', () => {
    let yes = 0;
    fc.assert(
      fc.property(staircase(), staircase(), (a, b) => {
        const expected = judge.covers(judge.shapeOf(solid(b)), judge.shapeOf(solid(a)));
        if (expected) yes++;
        expect(ringInRing(a, b)).toBe(expected);
      }),
      { seed: 4, numRuns: 600 },
    );
    expect(yes).toBeGreaterThan(20);
  });

  it('when random regions with openings are compared, containment agrees with an independent library', () => {
    let yes = 0;
    fc.assert(
      fc.property(
        starRegion({ from: 40, to: 60 }),
        starRing({ center: { x: 12, y: 3 }, from: 2, to: 30, corners: 8 }),
        (outer, inner) => {
          const expected = judge.covers(judge.shapeOf(outer), judge.shapeOf(solid(inner)));
          if (expected) yes++;
          expect(regionInRegion(solid(inner), outer)).toBe(expected);
        },
      ),
      { seed: 5, numRuns: 200 },
    );
    expect(yes).toBeGreaterThan(20);
  });

  it('when the outer region has an opening, the inner one must lie beside it or spare it', () => {
    const sheet = solid(rectangle(0, 0, 100, 100), hole(rectangle(40, 40, 20, 20)));
    expect(regionInRegion(solid(rectangle(10, 10, 30, 80)), sheet)).toBe(true);
    expect(regionInRegion(solid(rectangle(10, 10, 80, 80)), sheet)).toBe(false);
    expect(regionInRegion(solid(rectangle(40, 40, 20, 20)), sheet)).toBe(false);
    expect(regionInRegion(solid(rectangle(45, 45, 5, 5)), sheet)).toBe(false);
    expect(regionInRegion(solid(rectangle(10, 10, 80, 80), hole(rectangle(40, 40, 20, 20))), sheet)).toBe(
      true,
    );
    expect(regionInRegion(solid(rectangle(10, 10, 80, 80), hole(rectangle(40, 40, 20, 19))), sheet)).toBe(
      false,
    );
    expect(regionInRegion(sheet, sheet)).toBe(true);
  });

  it('when a distance is to be kept, it is kept to outline and openings', () => {
    const sheet = solid(rectangle(0, 0, 100, 100), hole(rectangle(40, 40, 20, 20)));
    const piece = solid(rectangle(5, 5, 32, 90));
    expect(regionInRegion(piece, sheet, { atLeastMm: 3 })).toBe(true);
    expect(regionInRegion(piece, sheet, { atLeastMm: 3.001 })).toBe(false);
    expect(regionInRegion(solid(rectangle(5, 5, 30, 91)), sheet, { atLeastMm: 5 })).toBe(false);
    expect(regionInRegion(solid(rectangle(5, 5, 30, 90)), sheet, { atLeastMm: 5 })).toBe(true);
  });

  it('when a region is turned with the one around it, shared edges still count as inside', () => {
    const l = solid(points([0, 0], [30, 0], [30, 10], [10, 10], [10, 30], [0, 30]));
    const leg = solid(rectangle(0, 5, 10, 25));
    const wide = solid(rectangle(0, 5, 11, 25));
    for (let deg = 0; deg < 360; deg += 7.3) {
      const m = composeAffine(translation(312.5, 77), rotationDeg(deg));
      expect(regionInRegion(transformRegion(m, leg), transformRegion(m, l))).toBe(true);
      expect(regionInRegion(transformRegion(m, wide), transformRegion(m, l))).toBe(false);
    }
  });
});
