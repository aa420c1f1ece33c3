import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { loadJudge } from '../../test-support/judge.js';
import type { Judge } from '../../test-support/judge.js';
import { hole, points, rectangle, solid, starRegion, starRing } from '../../test-support/shapes.js';
import { distanceBetween } from '../point.js';
import { scaling, transformRing } from './affine.js';
import {
  outlineDistance,
  pointToRing,
  pointToSegment,
  polylineNearest,
  regionDistance,
  ringDistance,
  segmentDistance,
} from './distance.js';

let judge: Judge;
beforeAll(async () => {
  judge = await loadJudge();
});

const place = fc.record({
  x: fc.double({ min: -90, max: 90, noNaN: true }),
  y: fc.double({ min: -90, max: 90, noNaN: true }),
});

describe('distances', () => {
  // Judge: jsts 2.12.1.
  it('when regions lie anywhere, their distance is what an independent library says', () => {
    const somewhere = place.chain((center) => starRegion({ center, to: 40 }));
    fc.assert(
      fc.property(somewhere, somewhere, (a, b) => {
        const expected = judge.distance(judge.shapeOf(a), judge.shapeOf(b));
        expect(regionDistance(a, b)).toBeCloseTo(expected, 9);
        expect(regionDistance(b, a)).toBeCloseTo(expected, 9);
        const solidA = judge.shapeOf(solid(a.outer));
        expect(ringDistance(a.outer, b.outer)).toBeCloseTo(
          judge.distance(solidA, judge.shapeOf(solid(b.outer))),
          9,
        );
      }),
      { seed: 1, numRuns: 120 },
    );
  });

  it('when a small region lies in an opening, the distance is to the opening', () => {
    const frame = solid(rectangle(0, 0, 100, 100), hole(rectangle(20, 20, 60, 60)));
    expect(regionDistance(frame, solid(rectangle(25, 30, 10, 10)))).toBe(5);
    expect(regionDistance(solid(rectangle(25, 30, 10, 10)), frame)).toBe(5);
    expect(regionDistance(frame, solid(rectangle(5, 5, 10, 10)))).toBe(0);
    expect(ringDistance(frame.outer, rectangle(25, 30, 10, 10))).toBe(0);
    expect(outlineDistance(frame.outer, rectangle(25, 30, 10, 10))).toBe(25);
  });

  it('when a distance of some size is enough, no smaller one is missed', () => {
    fc.assert(
      fc.property(
        starRing(),
        starRing({ center: { x: 100, y: 0 } }),
        fc.double({ min: 1e-6, max: 60, noNaN: true }),
        (a, b, enough) => {
          const exact = outlineDistance(a, b);
          const found = outlineDistance(a, b, enough);
          if (exact < enough * (1 - 1e-15)) expect(found).toBe(exact);
          else expect(found).toBe(enough);
        },
      ),
      { seed: 2 },
    );
  });

  it('when rings of many corners are compared, skipping far runs changes nothing', () => {
    const many = (center: { x: number; y: number }) =>
      fc.array(fc.double({ min: 20, max: 40, noNaN: true }), { minLength: 60, maxLength: 90 }).map((radii) =>
        radii.map((r, i) => {
          const angle = (2 * Math.PI * i) / radii.length;
          return { x: center.x + r * Math.cos(angle), y: center.y + r * Math.sin(angle) };
        }),
      );
    fc.assert(
      fc.property(many({ x: 0, y: 0 }), many({ x: 85, y: 20 }), (a, b) => {
        let least = Infinity;
        a.forEach((p, i) =>
          b.forEach(
            (q, j) =>
              (least = Math.min(
                least,
                segmentDistance(p, a[(i + 1) % a.length]!, q, b[(j + 1) % b.length]!),
              )),
          ),
        );
        expect(outlineDistance(a, b)).toBe(least);
      }),
      { seed: 3, numRuns: 20 },
    );
  });

  it('when everything is scaled, distances scale', () => {
    for (const scale of [1e-3, 1e-1, 1, 10, 1e3]) {
      const a = transformRing(scaling(scale), points([0, 0], [10, 0], [0, 10]));
      const b = transformRing(scaling(scale), points([10, 10], [20, 10], [20, 20]));
      expect(ringDistance(a, b) / scale).toBeCloseTo(Math.sqrt(50), 9);
    }
  });

  it('when a point lies beside, beyond or on a segment, its distance follows', () => {
    const [a, b] = points([0, 0], [10, 0]);
    expect(pointToSegment({ x: 5, y: 3 }, a!, b!)).toBe(3);
    expect(pointToSegment({ x: 13, y: 4 }, a!, b!)).toBe(5);
    expect(pointToSegment({ x: 2, y: 0 }, a!, b!)).toBe(0);
    expect(pointToSegment({ x: 3, y: 4 }, a!, a!)).toBe(5);
    expect(pointToRing({ x: 5, y: 4 }, rectangle(0, 0, 10, 10))).toBe(4);
    expect(segmentDistance(a!, b!, { x: 5, y: -1 }, { x: 5, y: 1 })).toBe(0);
  });

  it('when the nearest point of a chain is asked for, it is told where along the chain it lies', () => {
    const chain = points([0, 0], [10, 0], [10, 10], [0, 10]);
    expect(polylineNearest(chain, { x: 12, y: 4 })).toEqual({
      point: { x: 10, y: 4 },
      distance: 2,
      segmentIndex: 1,
      alongMm: 14,
    });
    expect(polylineNearest(chain, { x: -3, y: -4 })).toEqual({
      point: { x: 0, y: 0 },
      distance: 5,
      segmentIndex: 0,
      alongMm: 0,
    });
    fc.assert(
      fc.property(fc.array(place, { minLength: 2, maxLength: 12 }), place, (line, p) => {
        const near = polylineNearest(line, p);
        expect(distanceBetween(near.point, p)).toBeCloseTo(near.distance, 9);
        const all = line.slice(1).map((q, i) => pointToSegment(p, line[i]!, q));
        expect(near.distance).toBeCloseTo(Math.min(...all), 9);
        expect(all[near.segmentIndex]).toBeCloseTo(near.distance, 9);
      }),
      { seed: 4 },
    );
  });
});
