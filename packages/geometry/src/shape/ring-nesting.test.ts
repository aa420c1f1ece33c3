import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hole, points, rectangle } from '../../test-support/shapes.js';
import type { Ring } from '../types/shape.js';
import { nestRings } from './ring-nesting.js';
import { regionsArea, ringArea } from './ring.js';

/** Frames within frames, each drawn in a corner of the last: rings of alternating sense from the outside in. */
function frames(count: number, x: number): Ring[] {
  return Array.from({ length: count }, (_, i) => {
    const ring = rectangle(x + i, i, 50 - 2 * i, 50 - 2 * i);
    return i % 2 === 0 ? ring : hole(ring);
  });
}

describe('rings made into regions', () => {
  it('when rings come in any order, each opening belongs to the smallest ring around it', () => {
    const rings = [...frames(7, 0), ...frames(6, 100)];
    fc.assert(
      fc.property(fc.shuffledSubarray(rings, { minLength: rings.length }), (shuffled) => {
        const regions = nestRings(shuffled);
        expect(regions.map(({ outer }) => outer)).toEqual(shuffled.filter((ring) => ringArea(ring) > 0));
        for (const { outer, openings } of regions) {
          const inner = openings.map((opening) => opening[0]!.x - outer[0]!.x);
          expect(inner).toEqual(Math.abs(ringArea(outer)) > 38 * 38 ? [1] : []);
        }
      }),
      { seed: 1, numRuns: 50 },
    );
  });

  it("when the inside of an opening is filled by an island but for a rim, the opening is not the island's", () => {
    const frame = rectangle(0, 0, 100, 100);
    const opening = hole(rectangle(20, 20, 60, 60));
    const island = rectangle(20.001, 20.001, 59.998, 59.998);
    expect(nestRings([island, opening, frame])).toEqual([
      { outer: island, openings: [] },
      { outer: frame, openings: [opening] },
    ]);
  });

  it('when an opening touches its outline at every corner, or lies in the bay of another ring, it is told apart', () => {
    const bay = points([0, 0], [100, 0], [100, 20], [20, 20], [20, 80], [100, 80], [100, 100], [0, 100]);
    const diamond = points([30, 50], [60, 30], [90, 50], [60, 70]);
    const within = hole(points([60, 30], [90, 50], [60, 70], [45, 50]));
    const regions = nestRings([bay, within, diamond]);
    expect(regions.map(({ openings }) => openings.length)).toEqual([0, 1]);
    expect(regionsArea(regions)).toBe(5200 + 1200 - 900);
  });

  it('when an opening has nothing around it, it is no leather and no opening', () => {
    expect(nestRings([hole(rectangle(0, 0, 5, 5)), rectangle(10, 0, 5, 5)])).toEqual([
      { outer: rectangle(10, 0, 5, 5), openings: [] },
    ]);
  });
});
