import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { loadJudge } from '../../test-support/judge.js';
import type { Judge } from '../../test-support/judge.js';
import { solid } from '../../test-support/shapes.js';
import { ringArea } from '../shape/ring.js';
import type { Ring } from '../types/shape.js';
import { densestDoubleLattice } from './double-lattice.js';
import { cross } from './repeat.js';
import type { Repeat } from './repeat.js';
import { convexRing, laidRing, regular } from './test-shapes.js';

let judge: Judge;
beforeAll(async () => {
  judge = await loadJudge();
});

/** The pieces around the one at the origin, unrounded, and that one first. */
function neighbours(repeat: Repeat, ring: Ring): Ring[] {
  const around: Ring[] = [ring];
  for (let i = -2; i <= 2; i++) {
    for (let j = -2; j <= 2; j++) {
      for (const member of repeat.members) {
        const x = member.x + i * repeat.u.x + j * repeat.v.x;
        const y = member.y + i * repeat.u.y + j * repeat.v.y;
        if (i === 0 && j === 0 && member.rotationDeg === 0) continue;
        around.push(laidRing(ring, { x, y, rotationDeg: member.rotationDeg }));
      }
    }
  }
  return around;
}

describe('densest double lattice', () => {
  const { sqrt, SQRT2, PI, cos } = Math;
  const c = cos(PI / 7);
  const exact: readonly (readonly [name: string, corners: number, density: number])[] = [
    // They tile the plane.
    ['triangle', 3, 1],
    ['square', 4, 1],
    ['hexagon', 6, 1],
    // Hales & Kusner 2016, arXiv 1602.07220: the densest packing of regular pentagons.
    ['pentagon', 5, (5 - sqrt(5)) / 3],
    // Kallus 2013, "Pessimal packing shapes", arXiv 1305.0289.
    ['heptagon', 7, (2 / 97) * (-111 + 492 * c - 356 * c * c)],
    // Symmetric about a point, so the densest packing is the lattice of the least hexagon around it.
    ['octagon', 8, (4 + 4 * SQRT2) / (5 + 4 * SQRT2)],
    ['dodecagon', 12, 4 * sqrt(3) - 6],
  ];
  it.each(exact)('when the piece is a regular %s, the density is the exact one', (_, corners, density) => {
    expect(densestDoubleLattice(regular(corners)).density).toBeCloseTo(density, 12);
  });

  // Computed once with another implementation of the same theorem, to six digits.
  const computed: readonly (readonly [corners: number, density: number])[] = [
    [9, 0.90103],
    [10, 0.91372],
    [11, 0.907665],
    [13, 0.904371],
    [14, 0.907466],
    [16, 0.909017],
  ];
  it.each(computed)(
    'when the piece is a regular polygon of %i corners, so is the density',
    (corners, density) => {
      expect(densestDoubleLattice(regular(corners)).density).toBeCloseTo(density, 6);
    },
  );

  // Thue 1910, Fejes Toth 1940: discs pack to pi / sqrt 12. A polygon of many corners comes near from above.
  it('when the piece is nearly a disc, the density is nearly that of discs', () => {
    const { density } = densestDoubleLattice(regular(300));
    expect(density).toBeGreaterThan(PI / sqrt(12));
    expect(density).toBeLessThan(PI / sqrt(12) + 1e-4);
  });

  // Kuperberg & Kuperberg 1990: any convex shape packs in a double lattice to sqrt(3)/2 at least.
  it('when the piece is any convex polygon, the density is at least sqrt(3)/2 and at most 1', () => {
    fc.assert(
      fc.property(convexRing(), (ring) => {
        const { density, u, v } = densestDoubleLattice(ring);
        expect(density).toBeGreaterThanOrEqual(sqrt(3) / 2 - 1e-12);
        expect(density).toBeLessThanOrEqual(1 + 1e-9);
        expect((2 * ringArea(ring)) / cross(u, v)).toBeCloseTo(density, 9);
      }),
      { seed: 1, numRuns: 50 },
    );
  });

  // Judge: jsts 2.12.1.
  it('when neighbours are drawn, none overlap and at least four touch', () => {
    fc.assert(
      fc.property(convexRing(), (ring) => {
        const [own, ...around] = neighbours(densestDoubleLattice(ring), ring).map((one) =>
          judge.shapeOf(solid(one)),
        );
        const touching = around.filter((other) => judge.distance(own!, other) < 1e-9);
        for (const other of touching) expect(judge.intersectionArea(own!, other)).toBeLessThan(1e-6);
        // Two each of its own kind and half-turned: the ends of the longest chord, the parallelogram's corners.
        expect(touching.length).toBeGreaterThanOrEqual(4);
      }),
      { seed: 2, numRuns: 15 },
    );
  });

  it('when the piece has a hollow, it is refused by code', () => {
    const ring = [...regular(6), { x: 5, y: -1 }];
    expect(() => densestDoubleLattice(ring)).toThrow(expect.objectContaining({ code: 'bad-argument' }));
  });

  it('when the piece is scaled, the density stays', () => {
    for (const radius of [1e-3, 1, 1e4]) {
      expect(densestDoubleLattice(regular(7, radius)).density).toBeCloseTo(
        densestDoubleLattice(regular(7)).density,
        12,
      );
    }
  });
});
