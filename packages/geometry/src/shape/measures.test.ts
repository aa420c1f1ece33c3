import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  hole,
  points,
  rectangle,
  solid,
  staircase,
  starRegion,
  starRing,
} from '../../test-support/shapes.js';
import { distanceBetween } from '../point.js';
import type { Point } from '../types/shape.js';
import {
  composeAffine,
  rotationDeg,
  scaling,
  transformRegion,
  transformRing,
  translation,
} from './affine.js';
import { pointInRing, regionInRegion } from './contain.js';
import { pointToRing } from './distance.js';
import { enclosingCircle } from './enclosing-circle.js';
import { convexHull } from './hull.js';
import { signedDistance, widestInscribedCircle } from './inscribed-circle.js';
import { largestRectangle } from './inscribed-rectangle.js';
import { minimumWidthBox } from './minimum-box.js';
import { regionBox, ringArea, ringBox } from './ring.js';

const wholePoints = fc.array(
  fc.record({ x: fc.integer({ min: 0, max: 12 }), y: fc.integer({ min: 0, max: 12 }) }),
  { minLength: 1, maxLength: 30 },
);

describe('the convex hull', () => {
  it('when points are given, it holds them all, bends one way only and has no straight corner', () => {
    fc.assert(
      fc.property(wholePoints, (cloud) => {
        const hull = convexHull(cloud);
        for (const corner of hull) expect(cloud).toContainEqual(corner);
        if (hull.length < 3) return;
        expect(ringArea(hull)).toBeGreaterThan(0);
        hull.forEach((a, i) => {
          const b = hull[(i + 1) % hull.length]!;
          for (const p of cloud) {
            const side = (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
            expect(side).toBeGreaterThanOrEqual(0);
            if (side === 0)
              expect((p.x - a.x) * (p.x - b.x) + (p.y - a.y) * (p.y - b.y)).toBeLessThanOrEqual(0);
          }
        });
      }),
      { seed: 1 },
    );
  });

  it('when points are equal or lie on one line, there is one corner, or two', () => {
    expect(convexHull(points([1, 1], [1, 1]))).toEqual(points([1, 1]));
    expect(convexHull(points([0, 0], [2, 2], [1, 1]))).toEqual(points([0, 0], [2, 2]));
    expect(convexHull([])).toEqual([]);
  });
});

describe('the box of the smallest width', () => {
  it('when points are given, none lies outside and no direction gives a smaller width', () => {
    fc.assert(
      fc.property(wholePoints, (cloud) => {
        const box = minimumWidthBox(cloud);
        expect(box.width).toBeLessThanOrEqual(box.length + 1e-9);
        for (let deg = 0; deg < 180; deg += 0.5) {
          const { minY, maxY } = ringBox(transformRing(rotationDeg(deg), cloud));
          expect(box.width).toBeLessThanOrEqual(maxY - minY + 1e-9);
        }
        if (box.width < 1e-9) return;
        expect(ringArea(box.corners)).toBeCloseTo(box.width * box.length, 9);
        for (const p of cloud) expect(signedDistance(p, solid(box.corners))).toBeGreaterThan(-1e-9);
        const along = ringBox(transformRing(rotationDeg(-box.angleDeg), box.corners));
        expect(along.maxX - along.minX).toBeCloseTo(box.length, 9);
      }),
      { seed: 2, numRuns: 50 },
    );
  });

  it('when a strap is turned, its width, length and angle are found at every scale', () => {
    for (const scale of [1e-3, 1, 1e3]) {
      for (let deg = 0; deg < 180; deg += 9) {
        const m = composeAffine(translation(17, 4), composeAffine(rotationDeg(deg), scaling(scale)));
        const box = minimumWidthBox(transformRing(m, rectangle(0, 0, 1200, 38)));
        expect(box.width / scale).toBeCloseTo(38, 6);
        expect(box.length / scale).toBeCloseTo(1200, 6);
        expect(
          Math.min(Math.abs(box.angleDeg - deg), Math.abs(Math.abs(box.angleDeg - deg) - 180)),
        ).toBeLessThan(1e-6);
      }
    }
    expect(() => minimumWidthBox([])).toThrow(expect.objectContaining({ code: 'empty-shape' }));
  });

  // A regular hexagon of side s is sqrt(3) s wide; an equilateral triangle is as wide as it is high.
  it('when a regular polygon is given, its width is the handbook one', () => {
    const regular = (n: number) =>
      Array.from({ length: n }, (_, i) => ({
        x: Math.cos((2 * Math.PI * i) / n),
        y: Math.sin((2 * Math.PI * i) / n),
      }));
    expect(minimumWidthBox(regular(6)).width).toBeCloseTo(Math.sqrt(3), 12);
    expect(minimumWidthBox(regular(3)).width).toBeCloseTo(1.5, 12);
    expect(minimumWidthBox(regular(5)).width).toBeCloseTo(1 + Math.cos(Math.PI / 5), 12);
  });
});

describe('the smallest enclosing circle', () => {
  it('when points are given, it holds them all and no circle through two or three of them is smaller', () => {
    fc.assert(
      fc.property(wholePoints, (cloud) => {
        const circle = enclosingCircle(cloud);
        for (const p of cloud) expect(distanceBetween(circle.center, p)).toBeLessThanOrEqual(circle.radius);
        expect(circle.radius).toBeCloseTo(smallestByTrial(convexHull(cloud)), 9);
      }),
      { seed: 3, numRuns: 60 },
    );
  });

  it('when the shape is turned and moved, centre and radius follow', () => {
    fc.assert(
      fc.property(starRing(), fc.integer({ min: 0, max: 359 }), (ring, deg) => {
        const m = composeAffine(translation(-300, 800), rotationDeg(deg));
        const here = enclosingCircle(ring);
        const there = enclosingCircle(transformRing(m, ring));
        expect(there.radius).toBeCloseTo(here.radius, 9);
        const [expected] = transformRing(m, [here.center]);
        expect(distanceBetween(there.center, expected!)).toBeLessThan(1e-6);
      }),
      { seed: 4, numRuns: 60 },
    );
    expect(enclosingCircle(rectangle(0, 0, 6, 8))).toEqual({ center: { x: 3, y: 4 }, radius: 5 });
    expect(() => enclosingCircle([])).toThrow(expect.objectContaining({ code: 'empty-shape' }));
  });
});

/** By trying all: the smallest circle on two points as diameter or through three that holds every point. */
function smallestByTrial(hull: readonly Point[]): number {
  let best = hull.length < 2 ? 0 : Infinity;
  const consider = (center: Point, radius: number) => {
    if (radius < best && hull.every((p) => distanceBetween(p, center) <= radius + 1e-9)) best = radius;
  };
  hull.forEach((a, i) => {
    for (const b of hull.slice(0, i))
      consider({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, distanceBetween(a, b) / 2);
    hull.slice(0, i).forEach((b, j) => {
      for (const c of hull.slice(0, j)) {
        const d = 2 * (a.x * (b.y - c.y) + b.x * (c.y - a.y) + c.x * (a.y - b.y));
        if (d === 0) continue;
        const s = (p: Point) => p.x * p.x + p.y * p.y;
        const x = (s(a) * (b.y - c.y) + s(b) * (c.y - a.y) + s(c) * (a.y - b.y)) / d;
        const y = (s(a) * (c.x - b.x) + s(b) * (a.x - c.x) + s(c) * (b.x - a.x)) / d;
        consider({ x, y }, distanceBetween({ x, y }, a));
      }
    });
  });
  return best;
}

describe('the widest inscribed circle', () => {
  // Handbook: the in-circle of a 3-4-5 triangle has radius 1; of a rectangle half its shorter side.
  it('when the in-circle is known, it is found to the precision asked for', () => {
    const triangle = widestInscribedCircle(solid(points([0, 0], [30, 0], [0, 40])), 0.001);
    expect(triangle.radius).toBeGreaterThan(10 - 0.001);
    expect(triangle.radius).toBeLessThanOrEqual(10);
    expect(widestInscribedCircle(solid(rectangle(0, 0, 100, 30)), 0.01).radius).toBeCloseTo(15, 1);
    const frame = solid(rectangle(0, 0, 100, 100), hole(rectangle(20, 20, 80 - 1e-9, 80 - 1e-9)));
    // in the corner: r with sqrt(2) (20 - r) = r, so r = 20 sqrt(2) / (1 + sqrt(2))
    expect(widestInscribedCircle(frame, 0.001).radius).toBeCloseTo((20 * Math.SQRT2) / (1 + Math.SQRT2), 2);
  });

  it('when a region is rough, the circle lies inside and no point of a fine grid does better', () => {
    fc.assert(
      fc.property(starRegion(), (region) => {
        const { center, radius } = widestInscribedCircle(region, 0.05);
        expect(signedDistance(center, region)).toBe(radius);
        const { minX, minY, maxX, maxY } = regionBox(region);
        for (let x = minX; x <= maxX; x += 2) {
          for (let y = minY; y <= maxY; y += 2)
            expect(signedDistance({ x, y }, region)).toBeLessThanOrEqual(radius + 0.05);
        }
      }),
      { seed: 5, numRuns: 8 },
    );
  });
});

describe('a large rectangle inside a region', () => {
  it('when all edges are upright and level on whole numbers, it is the largest one', () => {
    fc.assert(
      fc.property(staircase(), (ring) => {
        const found = largestRectangle(solid(ring))!;
        expect(found.alongMm * found.acrossMm).toBeCloseTo(largestByTrial(ring), 9);
      }),
      { seed: 6, numRuns: 30 },
    );
  });

  // The largest rectangle in a right triangle, sides on its legs, has half its area; in a circle it is the square 2 r².
  it('when edges are slanted or round, it comes near the known largest', () => {
    const triangle = largestRectangle(solid(points([0, 0], [100, 0], [0, 80])))!;
    expect(triangle.alongMm * triangle.acrossMm).toBeGreaterThan(2000 * 0.999);
    expect(triangle.alongMm * triangle.acrossMm).toBeLessThanOrEqual(2000 + 1e-9);
    const disc = Array.from({ length: 720 }, (_, i) => ({
      x: 500 * Math.cos((Math.PI * i) / 360),
      y: 500 * Math.sin((Math.PI * i) / 360),
    }));
    const square = largestRectangle(solid(disc), { angleDeg: 17 })!;
    expect(square.alongMm * square.acrossMm).toBeGreaterThan(2 * 500 * 500 * 0.998);
    expect(square.alongMm * square.acrossMm).toBeLessThanOrEqual(2 * 500 * 500);
  });

  it('when a region is rough and has an opening, the rectangle lies inside and has the asked direction', () => {
    fc.assert(
      fc.property(starRegion(), fc.integer({ min: 0, max: 179 }), (region, angleDeg) => {
        const found = largestRectangle(region, { angleDeg })!;
        expect(regionInRegion(solid(found.corners), region)).toBe(true);
        const upright = ringBox(transformRing(rotationDeg(-angleDeg), found.corners));
        expect(upright.maxX - upright.minX).toBeCloseTo(found.alongMm, 9);
        expect(upright.maxY - upright.minY).toBeCloseTo(found.acrossMm, 9);
        const inCircle = widestInscribedCircle(region, 0.1).radius;
        // the square in the in-circle lies inside too
        expect(found.alongMm * found.acrossMm).toBeGreaterThan(2 * inCircle * inCircle * 0.97);
      }),
      { seed: 7, numRuns: 12 },
    );
  });

  it('when a rectangle with an opening is given at any angle, the best side of the opening is found', () => {
    const sheet = solid(rectangle(0, 0, 100, 60), hole(rectangle(30, 20, 10, 20)));
    for (const deg of [0, 90, 30]) {
      const found = largestRectangle(transformRegion(rotationDeg(deg), sheet), { angleDeg: deg })!;
      expect(found.alongMm * found.acrossMm).toBeCloseTo(3600, 6);
    }
  });
});

function largestByTrial(ring: readonly Point[]): number {
  let best = 0;
  const { minX, minY, maxX, maxY } = ringBox(ring);
  const holds = (x: number, y: number) => pointInRing({ x: x + 0.5, y: y + 0.5 }, ring) === 'inside';
  for (let x = minX; x < maxX; x++) {
    for (let y = minY; y < maxY; y++) {
      for (let right = x + 1; right <= maxX; right++) {
        for (let bottom = y + 1; bottom <= maxY; bottom++) {
          let all = true;
          for (let i = x; i < right; i++) for (let j = y; j < bottom; j++) all &&= holds(i, j);
          if (all) best = Math.max(best, (right - x) * (bottom - y));
        }
      }
    }
  }
  return best;
}

describe('distance with a sign', () => {
  it('when a point is inside, outside or in an opening, the sign tells', () => {
    const frame = solid(rectangle(0, 0, 100, 100), hole(rectangle(20, 20, 60, 60)));
    expect(signedDistance({ x: 5, y: 50 }, frame)).toBe(5);
    expect(signedDistance({ x: -5, y: 50 }, frame)).toBe(-5);
    expect(signedDistance({ x: 30, y: 50 }, frame)).toBe(-10);
    expect(signedDistance({ x: 20, y: 50 }, frame)).toBe(0);
    expect(pointToRing({ x: 5, y: 50 }, frame.outer)).toBe(5);
  });
});
