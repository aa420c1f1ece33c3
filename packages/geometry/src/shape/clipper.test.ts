import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { loadJudge } from '../../test-support/judge.js';
import type { Judge } from '../../test-support/judge.js';
import { pressedPieces } from '../../test-support/pressed-pieces.js';
import {
  hole,
  points,
  rectangle,
  solid,
  staircase,
  starRegion,
  starRing,
} from '../../test-support/shapes.js';
import type { Region } from '../types/shape.js';
import { composeAffine, rotationDeg, transformRegion, translation } from './affine.js';
import { intersectRegions, offsetRegions, subtractRegions, unionRegions } from './clipper.js';
import { regionArea, regionsArea, ringArea, ringPerimeter } from './ring.js';
import { findSelfCrossing } from './self-contact.js';

/** The judge takes most of the time; a busy machine may need several times its second. */
const SLOW_MACHINE_MS = 30_000;

let judge: Judge;
beforeAll(async () => {
  judge = await loadJudge();
});

/** The grid moves a corner by up to 0.71 µm, which changes an area by no more than that times the outline. */
function slack(...regions: readonly Region[]): number {
  return (
    regions.reduce(
      (sum, { outer, openings }) => sum + [outer, ...openings].reduce((l, r) => l + ringPerimeter(r), 0),
      0,
    ) * 0.001
  );
}

function expectTidy(regions: readonly Region[]): void {
  for (const region of regions) {
    expect(ringArea(region.outer)).toBeGreaterThan(0);
    for (const opening of region.openings) expect(ringArea(opening)).toBeLessThan(0);
    for (const ring of [region.outer, ...region.openings]) expect(findSelfCrossing(ring)).toBeUndefined();
  }
}

describe('booleans of regions', () => {
  // Judge: jsts 2.12.1.
  it(
    'when random regions are combined, areas agree with an independent library and rings are tidy',
    () => {
      fc.assert(
        fc.property(starRegion(), starRegion({ center: { x: 22, y: 13 } }), (a, b) => {
          const ja = judge.shapeOf(a);
          const jb = judge.shapeOf(b);
          const within = slack(a, b);
          const both = intersectRegions([a], [b]);
          const either = unionRegions([a, b]);
          const first = subtractRegions([a], [b]);
          expect(Math.abs(regionsArea(both) - judge.intersectionArea(ja, jb))).toBeLessThan(within);
          expect(Math.abs(regionsArea(either) - judge.unionArea(ja, jb))).toBeLessThan(within);
          expect(Math.abs(regionsArea(first) - judge.differenceArea(ja, jb))).toBeLessThan(within);
          for (const result of [both, either, first]) expectTidy(result);
        }),
        { seed: 1, numRuns: 40 },
      );
    },
    SLOW_MACHINE_MS,
  );

  it('when regions share corners, edges and lines, areas are exact', () => {
    fc.assert(
      fc.property(staircase(), staircase(), (a, b) => {
        const ja = judge.shapeOf(solid(a));
        const jb = judge.shapeOf(solid(b));
        expect(regionsArea(intersectRegions([solid(a)], [solid(b)]))).toBeCloseTo(
          judge.intersectionArea(ja, jb),
          9,
        );
        expect(regionsArea(unionRegions([solid(a), solid(b)]))).toBeCloseTo(judge.unionArea(ja, jb), 9);
        expect(regionsArea(subtractRegions([solid(a)], [solid(b)]))).toBeCloseTo(
          judge.differenceArea(ja, jb),
          9,
        );
      }),
      { seed: 2, numRuns: 80 },
    );
  });

  it('when the whole scene is turned by quarters and moved, areas stay', () => {
    fc.assert(
      fc.property(
        starRegion(),
        starRegion({ center: { x: 30, y: 0 } }),
        fc.integer({ min: 1, max: 3 }),
        (a, b, quarter) => {
          const m = composeAffine(translation(1234.567, -89.012), rotationDeg(90 * quarter));
          const here = regionsArea(subtractRegions([a], [b]));
          const there = regionsArea(subtractRegions([transformRegion(m, a)], [transformRegion(m, b)]));
          expect(Math.abs(here - there)).toBeLessThan(slack(a, b));
        },
      ),
      { seed: 3, numRuns: 60 },
    );
  });

  it('when a region lies in an opening of another, it is a region of its own', () => {
    const frame = solid(rectangle(0, 0, 100, 100), hole(rectangle(20, 20, 60, 60)));
    const united = unionRegions([frame, solid(rectangle(30, 30, 10, 10))]);
    expect(united.map((region) => [regionArea(region), region.openings.length])).toEqual([
      [6400, 1],
      [100, 0],
    ]);
    expect(unionRegions([frame, solid(rectangle(20, 20, 60, 60))])).toEqual([
      { outer: points([100, 100], [0, 100], [0, 0], [100, 0]), openings: [] },
    ]);
  });

  it('when a covered opening is united with what covers it, it is closed', () => {
    const frame = solid(rectangle(0, 0, 100, 100), hole(rectangle(20, 20, 60, 60)));
    expect(regionsArea(unionRegions([frame, solid(rectangle(10, 10, 80, 80))]))).toBe(10_000);
  });

  it('when two squares differ by less than a micron, no sliver is left', () => {
    expect(subtractRegions([solid(rectangle(0, 0, 50, 50))], [solid(rectangle(0.0004, 0, 50, 50))])).toEqual(
      [],
    );
    expect(intersectRegions([solid(rectangle(0, 0, 50, 50))], [solid(rectangle(50, 0, 50, 50))])).toEqual([]);
  });

  // With clipper-lib's tree of rings this took 12 s where plain rings take one.
  it(
    'when a hull clings to the borders of many pieces, they are taken from it and rings are tidy',
    () => {
      const { hull, pieces } = pressedPieces(14, 200);
      const rest = subtractRegions(hull, pieces);
      const both = regionsArea(rest) + regionsArea(intersectRegions(hull, pieces));
      expect(Math.abs(both - regionsArea(hull))).toBeLessThan(slack(...hull, ...pieces));
      expectTidy(rest);
    },
    SLOW_MACHINE_MS,
  );

  it('when squares meet at corners only, they stay apart, and a ring that meets itself is parted there', () => {
    const board = [0, 1, 2, 3].flatMap((row) =>
      [0, 1, 2, 3]
        .filter((column) => (row + column) % 2 === 0)
        .map((column) => rectangle(column * 9, row * 9, 9, 9)),
    );
    expect(unionRegions(board.map((square) => solid(square)))).toHaveLength(8);
    const rest = subtractRegions(
      [solid(rectangle(-9, -9, 54, 54))],
      board.map((square) => solid(square)),
    );
    expectTidy(rest);
    for (const { outer, openings } of rest) {
      for (const ring of [outer, ...openings]) {
        expect(new Set(ring.map(({ x, y }) => `${x},${y}`)).size).toBe(ring.length);
      }
    }
    expect(regionsArea(rest)).toBe(54 * 54 - 8 * 81);
  });

  it('when there is nothing on one side, the answer is nothing or the other side', () => {
    const square = solid(rectangle(0, 0, 5, 5));
    expect([unionRegions([]), intersectRegions([square], []), subtractRegions([], [square])]).toEqual([
      [],
      [],
      [],
    ]);
    expect(regionsArea(subtractRegions([square], []))).toBe(25);
  });
});

describe('offsets of regions', () => {
  // Steiner's formula: a convex ring grown by d has area A + P d + pi d².
  it('when a convex ring is grown, its area follows Steiner', () => {
    for (const [width, height, d] of [
      [100, 50, 5],
      [3, 2, 0.5],
      [800, 400, 40],
    ] as const) {
      const grown = regionsArea(
        offsetRegions([solid(rectangle(-7, 11, width, height))], d, { join: 'round' }),
      );
      const expected = width * height + 2 * (width + height) * d + Math.PI * d * d;
      expect(grown).toBeLessThanOrEqual(expected);
      expect(grown).toBeGreaterThan(expected - 2 * Math.PI * d * 0.012);
    }
  });

  it('when a frame is shrunk with mitres, outline and opening both give way', () => {
    const frame = solid(rectangle(0, 0, 100, 100), hole(rectangle(20, 20, 60, 60)));
    expect(regionsArea(offsetRegions([frame], -5, { join: 'mitre' }))).toBe(90 * 90 - 70 * 70);
    expect(regionsArea(offsetRegions([frame], 5, { join: 'mitre' }))).toBe(110 * 110 - 50 * 50);
    expect(offsetRegions([frame], -10.001, { join: 'mitre' })).toEqual([]);
    expect(regionsArea(offsetRegions([frame], 0, { join: 'round' }))).toBe(6400);
  });

  it('when a region is shrunk, every corner of the result keeps the distance but for the promised shortfall', () => {
    fc.assert(
      fc.property(starRing({ from: 30 }), fc.double({ min: 0.5, max: 6, noNaN: true }), (ring, d) => {
        const edge = judge.shapeOf(solid(ring)).getBoundary();
        for (const { outer } of offsetRegions([solid(ring)], -d, { join: 'round' })) {
          expect(judge.distance(judge.shapeOf(solid(outer)), edge)).toBeGreaterThan(d - 0.011);
        }
      }),
      { seed: 4, numRuns: 15 },
    );
  });

  it('when mitres would reach too far, they are cut', () => {
    const needle = points([0, 0], [100, 0], [100, 2]);
    const grown = offsetRegions([solid(needle)], 1, { join: 'mitre', mitreLimit: 2 });
    expect(Math.min(...grown[0]!.outer.map((p) => p.x))).toBeGreaterThan(-2.5);
  });
});
