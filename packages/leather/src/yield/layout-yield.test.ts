import {
  circleCurve,
  containingRing,
  createRandom,
  regionsArea,
  ringPerimeter,
  rotationDeg,
  transformRing,
} from '@hidebound/geometry';
import type { Curve, Point, Random, Region } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
import { flawRegions } from '../hide/flaw-region.js';
import { hideRegion } from '../hide/hide-region.js';
import type { Flaw, Hide } from '../model/hide.js';
import { plainHide, rectangleCorners, rectangleCurve } from '../testing/plain.js';
import { leftoverOf } from './freeing-cut.js';
import { sumOfYields, yieldOfHide } from './layout-yield.js';
import type { HideUse } from './layout-yield.js';

const rectangle = (minX: number, minY: number, maxX: number, maxY: number): Region => ({
  outer: rectangleCorners(minX, minY, maxX, maxY),
  openings: [],
});

function useOf(
  hide: Hide,
  pieces: readonly Region[],
  useFrom: Point,
  keepMm: readonly [number, number],
): HideUse {
  const region = hideRegion(hide);
  const leftover = leftoverOf({ hide: region, taken: pieces, useFrom, keepMm });
  return { hide, region, pieces, taken: pieces, keepMm, leftover };
}

const hole: Flaw = {
  id: 'hole',
  kind: 'hole',
  side: 'grain',
  shape: { kind: 'area', outline: rectangleCurve(200, 0, 300, 100) },
};

/** The rim of 0.01 mm that counts as between, around two pieces of 100 x 100. */
const RIM_MM2 = 0.0101 * 800;

describe('yield of a hide', () => {
  // By hand: 1000 x 500; opening 50 x 50; two pieces of 100 x 100 with 100 between them, filled by a void flaw in
  // its upper fifth … and the freeing cut at x = 400.
  const hide = plainHide('h', rectangleCurve(0, 0, 1000, 500), {
    openings: [rectangleCurve(0, 450, 50, 500)],
    flaws: [hole],
  });
  const pieces = [rectangle(100, 0, 200, 100), rectangle(300, 0, 400, 100)];
  const use = useOf(hide, pieces, { x: 1, y: 0 }, [80, 80]);
  const found = yieldOfHide(use);

  test('when pieces lie left of x = 400, the freeing cut runs there and all beyond is kept', () => {
    expect(found.freeingCut).toEqual({
      from: { x: 400, y: 0 },
      to: { x: 400, y: 500 },
      towards: { x: 1, y: 0 },
    });
    expect(found.offcutMm2).toBeCloseTo(600 * 500, 3);
    expect(found.usedUpMm2).toBeCloseTo(400 * 500 - 2500, 3);
  });

  test('when areas are known by hand, each part is what the hand says', () => {
    expect(found.grossMm2).toBeCloseTo(500_000, 3);
    expect(found.netMm2).toBeCloseTo(497_500, 3);
    expect(found.usableMm2).toBeCloseTo(487_500, 3);
    expect(found.openingsMm2).toBeCloseTo(2500, 3);
    expect(found.piecesMm2).toBeCloseTo(20_000, 3);
    expect(found.flawsMm2).toBeCloseTo(10_000, 3);
    // A gap of 100 is wider than what is worth keeping, so nothing lies "between".
    expect(Math.abs(found.betweenMm2)).toBeLessThan(RIM_MM2);
    expect(Math.abs(found.edgeMm2 - (200_000 - 2500 - 30_000))).toBeLessThan(RIM_MM2);
    expect(found.grossYield).toBeCloseTo(20_000 / 500_000, 9);
    expect(found.usableYield).toBeCloseTo(20_000 / 487_500, 9);
    expect(found.usedUpYield).toBeCloseTo(20_000 / 197_500, 9);
  });

  test('when the gap is narrower than what is worth keeping, it lies between the pieces', () => {
    const near = [rectangle(100, 200, 200, 300), rectangle(260, 200, 360, 300)];
    const { betweenMm2, edgeMm2 } = yieldOfHide(useOf(hide, near, { x: 1, y: 0 }, [80, 80]));
    expect(Math.abs(betweenMm2 - 60 * 100)).toBeLessThan(RIM_MM2);
    expect(Math.abs(edgeMm2 - (360 * 500 - 2500 - 20_000 - 6000 - 100 * 100))).toBeLessThan(RIM_MM2);
  });

  test('when pieces close in a wide gap on all sides, it lies between them', () => {
    const frame: Region = {
      outer: rectangleCorners(100, 150, 400, 450),
      openings: [[...rectangleCorners(110, 160, 390, 440)].reverse()],
    };
    const { betweenMm2 } = yieldOfHide(useOf(hide, [frame], { x: 1, y: 0 }, [80, 80]));
    expect(Math.abs(betweenMm2 - 280 * 280)).toBeLessThan(2 * RIM_MM2);
  });

  test('when what lies beyond the cut is too small to keep, it is used up and belongs to the edge', () => {
    const { offcutMm2, usedUpMm2 } = yieldOfHide(
      useOf(hide, [rectangle(800, 0, 930, 100)], { x: 1, y: 0 }, [80, 80]),
    );
    expect(offcutMm2).toBe(0);
    expect(usedUpMm2).toBeCloseTo(497_500, 3);
  });

  test('when two hides are summed, shares are those of the sums', () => {
    const total = sumOfYields([found, found]);
    expect(total.grossMm2).toBeCloseTo(1_000_000, 3);
    expect(total.grossYield).toBeCloseTo(found.grossYield, 12);
  });
});

/** A lumpy closed outline of arcs and lines about the origin. */
function lumpyOutline(random: Random): Curve {
  const corners = Array.from({ length: 24 }, (_, i) => {
    const deg = (i * 360) / 24;
    const radius = random.between(400, 600);
    const [p] = transformRing(rotationDeg(deg), [{ x: radius, y: 0 }]);
    return { x: Math.round(p!.x * 1000) / 1000, y: Math.round(p!.y * 1000) / 1000 };
  });
  return {
    start: corners[0]!,
    segments: corners.map((from, i) => {
      const to = corners[(i + 1) % corners.length]!;
      if (i % 3 !== 0) return { kind: 'line', to };
      const via = {
        x: (from.x + to.x) / 2 + random.between(1, 8),
        y: (from.y + to.y) / 2 + random.between(1, 8),
      };
      return { kind: 'arc', via, to };
    }),
    closed: true,
  };
}

function randomHide(random: Random): Hide {
  const place = (): Point => ({ x: random.between(-350, 350), y: random.between(-350, 350) });
  const flaws: Flaw[] = Array.from({ length: 12 }, (_, i): Flaw => {
    const base = { id: `f${i}`, kind: i % 3 === 0 ? 'scar' : 'hole', side: 'grain' } as const;
    if (i % 2 === 0)
      return { ...base, shape: { kind: 'point', at: place(), radiusMm: random.between(1, 30) } };
    return { ...base, shape: { kind: 'line', line: [place(), place()], widthMm: random.between(1, 10) } };
  });
  const openings = [
    circleCurve({ x: -200, y: 0 }, random.between(5, 40)),
    circleCurve({ x: 200, y: 50 }, 25),
  ];
  return plainHide('random', lumpyOutline(random), { openings, flaws });
}

function randomPieces(random: Random): Region[] {
  const side = 70;
  const at: Point[] = [];
  for (let x = -280; x <= 280; x += side) for (let y = -280; y <= 280; y += side) at.push({ x, y });
  return at
    .filter(() => random.next() < 0.5)
    .map((p): Region => {
      const middle = { x: p.x + random.between(-2, 2), y: p.y + random.between(-2, 2) };
      return { outer: containingRing(circleCurve(middle, random.between(10, 33))), openings: [] };
    });
}

describe('the parts of a hide', () => {
  test('when hides, flaws and pieces are random, the parts add up to the gross area', () => {
    const random = createRandom(20260105);
    for (let round = 0; round < 10; round++) {
      const hide = randomHide(random);
      const pieces = randomPieces(random);
      const [axis] = transformRing(rotationDeg(random.between(0, 360)), [{ x: 1, y: 0 }]);
      const use = useOf(hide, pieces, axis!, [random.between(20, 120), random.between(20, 120)]);
      const found = yieldOfHide(use);
      const parts =
        found.piecesMm2 +
        found.flawsMm2 +
        found.edgeMm2 +
        found.betweenMm2 +
        found.offcutMm2 +
        found.openingsMm2;
      const boundaries = [use.region, ...pieces, ...hide.flaws.flatMap((flaw) => flawRegions(flaw.shape))];
      const length = boundaries
        .flatMap(({ outer, openings }) => [outer, ...openings])
        .reduce((sum, ring) => sum + ringPerimeter(ring), 0);
      // Half a grid step to either side of every boundary.
      expect(Math.abs(parts - found.grossMm2)).toBeLessThanOrEqual(0.0005 * length);
      expect(found.usedUpMm2 + found.offcutMm2).toBeCloseTo(found.netMm2, 0);
      expect(found.offcutMm2).toBeCloseTo(regionsArea(use.leftover.kept), 6);
      expect(found.piecesMm2).toBeGreaterThan(0);
    }
  }, 30_000);
});
