import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { loadJudge } from '../../test-support/judge.js';
import type { Judge } from '../../test-support/judge.js';
import { points, solid, starRing } from '../../test-support/shapes.js';
import type { Ring } from '../types/shape.js';
import { densestDoubleLattice } from './double-lattice.js';
import type { Repeat } from './repeat.js';
import { repeatsOf } from './repeats-of.js';
import { brokenRules, convexRing, laidRing, patch, regular, WIDE_SHEET } from './test-shapes.js';

const SLOW_MACHINE_MS = 120_000;

let judge: Judge;
beforeAll(async () => {
  judge = await loadJudge();
});

/** What was found of a ring, for the tests that ask for the same. */
const known = new Map<string, readonly Repeat[]>();

function all(ring: Ring, gap = 0, mayHalfTurn = true): readonly Repeat[] {
  const key = JSON.stringify([ring, gap, mayHalfTurn]);
  const repeats = known.get(key) ?? repeatsOf(solid(ring), { gap, mayHalfTurn });
  known.set(key, repeats);
  return repeats;
}

function best(ring: Ring, gap = 0, mayHalfTurn = true): Repeat {
  return all(ring, gap, mayHalfTurn)[0]!;
}

const L = points([0, 0], [40, 0], [40, 10], [10, 10], [10, 30], [0, 30]);
const T = points([0, 0], [30, 0], [30, 10], [20, 10], [20, 20], [10, 20], [10, 10], [0, 10]);
const CROSS = points(
  [10, 0],
  [20, 0],
  [20, 10],
  [30, 10],
  [30, 20],
  [20, 20],
  [20, 30],
  [10, 30],
  [10, 20],
  [0, 20],
  [0, 10],
  [10, 10],
);
/** A dovetail on the right that goes into the same hollow on the left, from nowhere but across the plane. */
const DOVETAIL = points(
  [0, 0],
  [40, 0],
  [40, 15],
  [45, 10],
  [50, 20],
  [45, 30],
  [40, 25],
  [40, 40],
  [0, 40],
  [0, 25],
  [5, 30],
  [10, 20],
  [5, 10],
  [0, 15],
);

describe('repeats of a piece', () => {
  // Each of them tiles the plane: drawn by hand.
  const tiles: readonly (readonly [name: string, ring: Ring])[] = [
    ['an L', L],
    ['a T', T],
    ['a cross', CROSS],
    ['a dovetailed square', DOVETAIL],
    ['a hollow quadrilateral', points([0, 0], [70, 11], [30, 20], [20, 50])],
    ['a triangle', points([0, 0], [70, 11], [20, 50])],
  ];
  it.each(tiles)('when the piece is %s and the gap 0, it tiles the plane', (_, ring) => {
    expect(best(ring).density).toBeCloseTo(1, 9);
  });

  // A lattice of triangles, none turned, is 2/3 dense at best: Fary 1950.
  it('when a triangle may not be turned, the density is 2/3', () => {
    expect(best(points([0, 0], [70, 11], [20, 50]), 0, false).density).toBeCloseTo(2 / 3, 9);
  });

  // Standard: of a shape that is symmetric about a point no packing is denser than its best lattice.
  it('when an octagon may not be turned, it loses nothing', () => {
    const exact = (4 + 4 * Math.SQRT2) / (5 + 4 * Math.SQRT2);
    expect(best(regular(8), 0, false).density).toBeCloseTo(exact, 9);
  });

  it(
    'when the piece is convex and the gap 0, the best is the densest double lattice',
    () => {
      fc.assert(
        fc.property(convexRing(), (ring) => {
          const found = best(ring).density;
          expect(found).toBeGreaterThanOrEqual(densestDoubleLattice(ring).density - 1e-9);
          expect(found).toBeLessThanOrEqual(1 + 1e-9);
        }),
        { seed: 1, numRuns: 4 },
      );
    },
    SLOW_MACHINE_MS,
  );

  // Judge: the project's exact check, which forgives 2 µm of what rounding to 0.001 mm moves.
  it(
    'when cells of any piece are laid out, turned and rounded, the exact check finds the gap kept',
    () => {
      fc.assert(
        fc.property(
          starRing({ from: 6, to: 40, corners: 9 }),
          fc.constantFrom(0, 2),
          fc.integer({ min: 0, max: 359_999_999 }),
          fc.boolean(),
          (ring, gap, micro, mayHalfTurn) => {
            const repeats = repeatsOf(solid(ring), { gap, mayHalfTurn, most: 3 });
            expect(repeats.length).toBeGreaterThan(0);
            for (const repeat of repeats) {
              const pieces = patch(repeat, 2, micro / 1e6);
              expect(brokenRules(ring, pieces, { gap, sheet: WIDE_SHEET })).toEqual([]);
            }
          },
        ),
        { seed: 3, numRuns: 4 },
      );
    },
    SLOW_MACHINE_MS,
  );

  // Judge: jsts 2.12.1 measures the distances.
  it.each([0, 2])('when the gap is %f, the nearest neighbours are just that far', (gap) => {
    for (const ring of [L, regular(5)]) {
      const [own, ...others] = patchExact(best(ring, gap)).map((piece) =>
        judge.shapeOf(solid(laidRing(ring, piece))),
      );
      const distances = others.map((other) => judge.distance(own!, other));
      expect(Math.min(...distances)).toBeCloseTo(gap, 6);
      expect(distances.filter((d) => d < gap + 1e-6).length).toBeGreaterThanOrEqual(4);
    }
  });

  // By hand: pieces grown by half the gap have round corners, so no more than their area can be won beyond 42 by 42.
  it('when the gap is 2 mm, squares lie 2 mm apart both ways, or nestle a little closer', () => {
    const square = points([0, 0], [40, 0], [40, 40], [0, 40]);
    const repeats = repeatsOf(solid(square), { gap: 2, mayHalfTurn: true });
    const areas = repeats.map(({ areaPerPieceMm2 }) => areaPerPieceMm2);
    expect(areas[0]).toBeLessThanOrEqual(42 * 42);
    expect(areas[0]).toBeGreaterThan(42 * 42 - (4 - Math.PI));
    expect(areas.some((area) => Math.abs(area - 42 * 42) < 1e-4)).toBe(true);
  });

  it('when the origin lies elsewhere on the piece, the repeats are the same leather', () => {
    const moved = L.map(({ x, y }) => ({ x: x + 100, y: y - 30 }));
    for (const gap of [0, 2]) expect(best(moved, gap).density).toBeCloseTo(best(L, gap).density, 9);
    expect(brokenRules(moved, patch(best(moved), 2), { gap: 0, sheet: WIDE_SHEET })).toEqual([]);
  });

  it('when a piece has more corners than are looked at, the gap is kept by all of them', () => {
    const ring = Array.from({ length: 90 }, (_, i) => {
      const r = 30 + 8 * Math.cos((2 * Math.PI * i * 3) / 90);
      return {
        x: Math.round(1000 * r * Math.cos((2 * Math.PI * i) / 90)) / 1000,
        y: Math.round(1000 * r * Math.sin((2 * Math.PI * i) / 90)) / 1000,
      };
    });
    const repeat = best(ring, 1);
    expect(brokenRules(ring, patch(repeat, 2), { gap: 1, sheet: WIDE_SHEET })).toEqual([]);
    expect(repeat.density).toBeGreaterThan(0.8);
  });

  it('when it is asked again, the answer is the same to the last digit', () => {
    expect(repeatsOf(solid(L), { gap: 2, mayHalfTurn: true })).toEqual(all(L, 2));
  });
});

/** As `patch`, not rounded, the piece at the origin first. */
function patchExact(repeat: Repeat): { x: number; y: number; rotationDeg: number }[] {
  const pieces = [{ x: 0, y: 0, rotationDeg: 0 }];
  for (let i = -2; i <= 2; i++) {
    for (let j = -2; j <= 2; j++) {
      for (const { x, y, rotationDeg } of repeat.members) {
        if (i === 0 && j === 0 && rotationDeg === 0) continue;
        pieces.push({
          x: x + i * repeat.u.x + j * repeat.v.x,
          y: y + i * repeat.u.y + j * repeat.v.y,
          rotationDeg,
        });
      }
    }
  }
  return pieces;
}
