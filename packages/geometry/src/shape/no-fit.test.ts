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
import type { Ring } from '../types/shape.js';
import { transformRing, translation } from './affine.js';
import { pointInRegion } from './contain.js';
import { convexParts } from './convex-parts.js';
import { convexHull } from './hull.js';
import { signedDistance } from './inscribed-circle.js';
import { convexSum, noFitPolygon, noFitRegions } from './no-fit.js';
import { turnOf } from './orientation.js';
import { regionArea, regionsArea, ringArea, ringPerimeter } from './ring.js';

/** The judge takes most of the time; a busy machine may need several times its second. */
const SLOW_MACHINE_MS = 30_000;

let judge: Judge;
beforeAll(async () => {
  judge = await loadJudge();
});

const convex = fc
  .array(fc.record({ x: fc.integer({ min: -40, max: 40 }), y: fc.integer({ min: -40, max: 40 }) }), {
    minLength: 5,
    maxLength: 14,
  })
  .map((cloud) => convexHull(cloud))
  .filter((hull) => hull.length > 2);

function overlaps(a: Ring, b: Ring): boolean {
  return judge.intersectionArea(judge.shapeOf(solid(a)), judge.shapeOf(solid(b))) > 1e-6;
}

describe('convex parts', () => {
  it('when a region is cut, the parts are convex, have its corners and make up its area', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          starRegion(),
          staircase().map((ring) => solid(ring)),
        ),
        (region) => {
          const parts = convexParts(region);
          expect(parts.reduce((sum, part) => sum + ringArea(part), 0)).toBeCloseTo(regionArea(region), 6);
          const corners = [region.outer, ...region.openings].flat();
          for (const part of parts) {
            part.forEach((p, i) => {
              expect(corners).toContainEqual(p);
              expect(
                turnOf(p, part[(i + 1) % part.length]!, part[(i + 2) % part.length]!),
              ).toBeGreaterThanOrEqual(0);
            });
          }
        },
      ),
      { seed: 1, numRuns: 100 },
    );
  });

  it('when a region is convex it is one part, and an L is two', () => {
    expect(convexParts(solid(rectangle(0, 0, 3, 4)))).toHaveLength(1);
    expect(convexParts(solid(points([0, 0], [30, 0], [30, 10], [10, 10], [10, 30], [0, 30])))).toHaveLength(
      2,
    );
  });

  it('when a ring crosses itself, it is refused by code', () => {
    expect(() => convexParts(solid(points([0, 0], [10, 10], [10, 0], [0, 12])))).toThrow(
      expect.objectContaining({ code: 'bad-argument' }),
    );
  });
});

describe('no-fit polygons', () => {
  // Standard identities of Minkowski sums: perimeters of convex shapes add; corners are at most those of both.
  it('when both are convex, perimeters add and the sum is convex', () => {
    fc.assert(
      fc.property(convex, convex, (a, b) => {
        const [result, ...more] = noFitPolygon(a, b);
        expect(more).toEqual([]);
        expect(result!.openings).toEqual([]);
        expect(ringPerimeter(result!.outer)).toBeCloseTo(ringPerimeter(a) + ringPerimeter(b), 9);
        expect(result!.outer.length).toBeLessThanOrEqual(a.length + b.length);
        expect(ringArea(result!.outer)).toBeGreaterThanOrEqual(ringArea(a) + ringArea(b));
      }),
      { seed: 2, numRuns: 60 },
    );
  });

  // A with itself turned by half a turn: four times its area if it is its own half turn, six times for a triangle.
  it('when a shape meets itself, the area is 4 times its own if it is symmetric about a point, 6 times for a triangle', () => {
    fc.assert(
      fc.property(convex, (a) => {
        const own = ringArea(a);
        const symmetric = convexSum(
          a,
          a.map((p) => ({ x: -p.x, y: -p.y })),
        );
        expect(regionsArea(noFitPolygon(symmetric, symmetric))).toBeCloseTo(4 * ringArea(symmetric), 9);
        const [p, q, r] = a;
        const triangle = [p!, q!, r!];
        expect(regionsArea(noFitPolygon(triangle, triangle))).toBeCloseTo(6 * ringArea(triangle), 9);
        expect(regionsArea(noFitPolygon(a, a))).toBeLessThanOrEqual(6 * own + 1e-9);
        expect(regionsArea(noFitPolygon(a, a))).toBeGreaterThanOrEqual(4 * own - 1e-9);
      }),
      { seed: 3, numRuns: 60 },
    );
  });

  // Judge: jsts 2.12.1 says whether the two overlap.
  it(
    'when a hollow piece is put anywhere, it overlaps just where the polygon says so',
    () => {
      const offset = fc.integer({ min: -80_000, max: 80_000 }).map((n) => n / 1000);
      fc.assert(
        fc.property(
          starRing({ corners: 10 }),
          starRing({ corners: 8, to: 30 }),
          fc.array(fc.tuple(offset, offset), { minLength: 25, maxLength: 25 }),
          (a, b, moves) => {
            const areas = noFitPolygon(a, b);
            for (const [x, y] of moves) {
              if (areas.some((area) => Math.abs(signedDistance({ x, y }, area)) < 0.01)) continue;
              const inside = areas.some((area) => pointInRegion({ x, y }, area) === 'inside');
              expect(inside).toBe(overlaps(a, transformRing(translation(x, y), b)));
            }
          },
        ),
        { seed: 4, numRuns: 12 },
      );
    },
    SLOW_MACHINE_MS,
  );

  it('when the pieces change places, the polygon is turned by half a turn', () => {
    fc.assert(
      fc.property(starRing({ corners: 9 }), starRing({ corners: 7, to: 30 }), (a, b) => {
        const there = regionsArea(noFitPolygon(a, b));
        const back = regionsArea(noFitPolygon(b, a));
        expect(Math.abs(there - back)).toBeLessThan(0.5);
      }),
      { seed: 5, numRuns: 20 },
    );
  });

  it('when a piece fits into a hollow or an opening, the polygon has an opening there', () => {
    const frame = solid(rectangle(0, 0, 30, 30), hole(rectangle(10, 10, 10, 10)));
    const [result] = noFitRegions(frame, solid(rectangle(0, 0, 4, 4)));
    expect(result!.openings.map(ringArea)).toEqual([-36]);
    expect(ringArea(result!.outer)).toBe(34 * 34);
    expect(noFitRegions(solid(rectangle(0, 0, 4, 4)), frame)[0]!.openings.map(ringArea)).toEqual([-36]);
    expect(noFitRegions(frame, solid(rectangle(0, 0, 10, 4)))[0]!.openings).toEqual([]);
  });
});
