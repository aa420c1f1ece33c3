import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { points, rectangle, solid, staircase, starRing } from '../../test-support/shapes.js';
import type { Point, Ring } from '../types/shape.js';
import { regionsArea, ringArea } from './ring.js';
import { subtractRegions } from './clipper.js';
import { pointInRing } from './contain.js';
import { pointToRing } from './distance.js';
import { findSelfContacts } from './self-contact.js';
import { simplifyGrowing, simplifyShrinking } from './simplify.js';

/** Many corners with small steps, as from a photo: a rough disc. */
const rough = fc
  .array(fc.double({ min: 99, max: 100, noNaN: true }), { minLength: 40, maxLength: 120 })
  .map((radii) =>
    radii.map((r, i) => {
      const angle = (2 * Math.PI * i) / radii.length;
      return {
        x: Math.round(r * 1000 * Math.cos(angle)) / 1000,
        y: Math.round(r * 1000 * Math.sin(angle)) / 1000,
      };
    }),
  );

function samplesOf(ring: Ring): Point[] {
  return ring.flatMap((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    return [0, 0.25, 0.5, 0.75].map((t) => ({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t }));
  });
}

function furthest(from: Ring, to: Ring): number {
  return Math.max(...samplesOf(from).map((p) => pointToRing(p, to)));
}

function furthestOutside(inner: Ring, outer: Ring): number {
  return Math.max(
    0,
    ...samplesOf(inner)
      .filter((p) => pointInRing(p, outer) === 'outside')
      .map((p) => pointToRing(p, outer)),
  );
}

describe('simplification that keeps to one side', () => {
  it('when a ring may only grow, it does, within the tolerance, and touches itself nowhere new', () => {
    fc.assert(
      fc.property(fc.oneof(rough, starRing()), fc.constantFrom(0.2, 1, 5), (ring, tolerance) => {
        const grown = simplifyGrowing(ring, tolerance);
        expect(grown.length).toBeLessThanOrEqual(ring.length);
        expect(ringArea(grown)).toBeGreaterThanOrEqual(ringArea(ring) - 1e-9);
        expect(furthestOutside(ring, grown)).toBeLessThan(1e-9);
        expect(furthest(grown, ring)).toBeLessThanOrEqual(tolerance + 1e-9);
        expect(furthest(ring, grown)).toBeLessThanOrEqual(tolerance + 1e-9);
        expect(findSelfContacts(grown)).toEqual([]);
      }),
      { seed: 1, numRuns: 60 },
    );
  });

  it('when a ring may only shrink, it does, within the tolerance, and touches itself nowhere new', () => {
    fc.assert(
      fc.property(fc.oneof(rough, starRing()), fc.constantFrom(0.2, 1, 5), (ring, tolerance) => {
        const shrunk = simplifyShrinking(ring, tolerance);
        expect(ringArea(shrunk)).toBeGreaterThan(0);
        expect(ringArea(shrunk)).toBeLessThanOrEqual(ringArea(ring) + 1e-9);
        expect(furthestOutside(shrunk, ring)).toBeLessThan(1e-9);
        expect(furthest(shrunk, ring)).toBeLessThanOrEqual(tolerance + 1e-9);
        expect(furthest(ring, shrunk)).toBeLessThanOrEqual(tolerance + 1e-9);
        expect(findSelfContacts(shrunk)).toEqual([]);
      }),
      { seed: 2, numRuns: 60 },
    );
  });

  it('when edges share lines and corners, nothing is lost on the wrong side', () => {
    fc.assert(
      fc.property(staircase(), (ring) => {
        expect(regionsArea(subtractRegions([solid(ring)], [solid(simplifyGrowing(ring, 1.5))]))).toBeLessThan(
          0.01,
        );
        expect(
          regionsArea(subtractRegions([solid(simplifyShrinking(ring, 1.5))], [solid(ring)])),
        ).toBeLessThan(0.01);
      }),
      { seed: 3 },
    );
  });

  it('when an outline has many small steps, most corners go', () => {
    const steps = Array.from({ length: 400 }, (_, i) => {
      const angle = (2 * Math.PI * i) / 400;
      const r = 300 + (i % 2 === 0 ? 0.3 : 0);
      return { x: r * Math.cos(angle), y: r * Math.sin(angle) };
    });
    expect(simplifyGrowing(steps, 1).length).toBeLessThan(80);
    expect(simplifyShrinking(steps, 1).length).toBeLessThan(80);
  });

  it('when a corner lies on the line between its neighbours, it goes even at no tolerance, and true corners stay', () => {
    const ring = points([0, 0], [5, 0], [10, 0], [10, 10], [0, 10]);
    expect(simplifyGrowing(ring, 0)).toHaveLength(4);
    expect(ringArea(simplifyShrinking(ring, 0))).toBe(100);
    expect(simplifyGrowing(rectangle(0, 0, 10, 10), 1)).toHaveLength(4);
  });
});
