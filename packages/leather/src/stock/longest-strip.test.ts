import { createRandom, pointInRegion, subtractRegions, regionsArea } from '@hidebound/geometry';
import type { Point, Region } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
import { longestStrip } from './longest-strip.js';
import { holdsAnyWay, largestRectangleAnyWay } from './stock-sizes.js';

function box(minX: number, minY: number, maxX: number, maxY: number): Region {
  return {
    outer: [
      { x: minX, y: minY },
      { x: maxX, y: minY },
      { x: maxX, y: maxY },
      { x: minX, y: maxY },
    ],
    openings: [],
  };
}

function turned({ outer, openings }: Region, deg: number): Region {
  const [sin, cos] = [Math.sin((deg * Math.PI) / 180), Math.cos((deg * Math.PI) / 180)];
  const turn = ({ x, y }: Point): Point => ({ x: x * cos - y * sin, y: x * sin + y * cos });
  return { outer: outer.map(turn), openings: openings.map((ring) => ring.map(turn)) };
}

function withOpening(region: Region, opening: Region): Region {
  return { outer: region.outer, openings: [[...opening.outer].reverse()] };
}

describe('the longest strip', () => {
  test('when the leather is a rectangle, a strip as wide as it is as long as it', () => {
    expect(longestStrip(box(0, 0, 300, 25), 25)!.lengthMm).toBeCloseTo(300, 1);
  });

  test('when it is laid aslant in a rectangle, its length is that of the elementary geometry of a strip in a box', () => {
    // A strip of width w at the angle t in a box a × b: length = min over both pairs of sides; its four corners touch
    // when L cos t + w sin t = a and L sin t + w cos t = b (elementary geometry). For a = 300, b = 200, w = 20 the
    // longest is found here by trying every hundredth of a degree.
    const [a, b, w] = [300, 200, 20];
    let best = 0;
    for (let deg = 0; deg <= 90; deg += 0.01) {
      const [sin, cos] = [Math.sin((deg * Math.PI) / 180), Math.cos((deg * Math.PI) / 180)];
      const fits = Math.min(
        cos > 0 ? (a - w * sin) / cos : Infinity,
        sin > 0 ? (b - w * cos) / sin : Infinity,
      );
      best = Math.max(best, fits);
    }
    const found = longestStrip(box(0, 0, a, b), w)!.lengthMm;
    expect(found).toBeLessThanOrEqual(best + 0.01);
    expect(found).toBeGreaterThan(best - 0.5);
  });

  test('when the way is given, it is kept', () => {
    const strip = longestStrip(box(0, 0, 300, 200), 20, { angleDeg: 90 })!;
    expect(strip.lengthMm).toBeCloseTo(200, 3);
    expect(strip.angleDeg).toBe(90);
  });

  test('when a hole lies in the middle, the strip goes past it', () => {
    const region = withOpening(box(0, 0, 300, 100), box(140, 30, 160, 100 - 1));
    // 30 mm are free above the hole, 1 mm below it.
    expect(longestStrip(region, 30, { angleDeg: 0 })!.lengthMm).toBeCloseTo(300, 2);
    expect(longestStrip(region, 31, { angleDeg: 0 })!.lengthMm).toBeCloseTo(140, 2);
  });

  test('when the leather is too narrow or too small, there is none', () => {
    expect(longestStrip(box(0, 0, 300, 19), 20)).toBeUndefined();
    expect(longestStrip(box(0, 0, 300, 100), 20, { atLeastMm: 2000 })).toBeUndefined();
  });

  test('when outlines are ragged at random, the strip lies inside, and no sampled strip is longer by 2 %', () => {
    const random = createRandom(11);
    for (let round = 0; round < 12; round++) {
      const region = star(random.next.bind(random), 14);
      const strip = longestStrip(region, 12)!;
      const outside = regionsArea(subtractRegions([{ outer: strip.corners, openings: [] }], [region]));
      // Clipping works on a grid of 1 µm.
      expect(outside).toBeLessThan(0.5);
      expect(sampledStrip(region, 12)).toBeLessThan(strip.lengthMm * 1.02);
    }
  });
});

/** A star-shaped outline: radii at random from 60 to 140 mm. */
function star(random: () => number, corners: number): Region {
  const outer = Array.from({ length: corners }, (_, i): Point => {
    const angle = (2 * Math.PI * i) / corners;
    const radius = 60 + 80 * random();
    return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
  });
  return { outer, openings: [] };
}

/** Another way to the same: strips as rows of points 2 mm apart, every 2 degrees, rows of points inside counted. */
function sampledStrip(region: Region, widthMm: number): number {
  const step = 2;
  let best = 0;
  for (let deg = 0; deg < 180; deg += 2) {
    const back = turned(region, -deg);
    const inside = new Set<string>();
    const cells = Math.ceil(150 / step);
    for (let i = -cells; i <= cells; i++) {
      for (let j = -cells; j <= cells; j++) {
        if (pointInRegion({ x: i * step, y: j * step }, back) !== 'outside') inside.add(`${i} ${j}`);
      }
    }
    const across = Math.ceil(widthMm / step);
    for (let j = -cells; j + across <= cells; j++) {
      let run = 0;
      for (let i = -cells; i <= cells; i++) {
        let all = true;
        for (let k = 0; k <= across && all; k++) all = inside.has(`${i} ${j + k}`);
        run = all ? run + 1 : 0;
        best = Math.max(best, (run - 1) * step);
      }
    }
  }
  return best;
}

describe('the largest rectangle turned any way', () => {
  test('when the leather is a rectangle that lies aslant, it is found whole', () => {
    const found = largestRectangleAnyWay(turned(box(0, 0, 200, 80), 33))!;
    expect(found.alongMm * found.acrossMm).toBeGreaterThan(200 * 80 * 0.99);
    expect(found.alongMm * found.acrossMm).toBeLessThanOrEqual(200 * 80 + 1);
  });

  test('when the leather is a triangle, it has half of its area', () => {
    // The largest rectangle in a triangle has half its area (a known theorem of elementary geometry).
    const triangle: Region = {
      outer: [
        { x: 0, y: 0 },
        { x: 260, y: 0 },
        { x: 90, y: 180 },
      ],
      openings: [],
    };
    const found = largestRectangleAnyWay(triangle)!;
    const half = (260 * 180) / 4;
    expect(found.alongMm * found.acrossMm).toBeGreaterThan(half * 0.985);
    expect(found.alongMm * found.acrossMm).toBeLessThanOrEqual(half + 1);
  });

  test('when the leather is a circle, it is the square in it, which has 2 / π of its area', () => {
    const circle: Region = {
      outer: Array.from({ length: 360 }, (_, i) => ({
        x: 100 * Math.cos((i * Math.PI) / 180),
        y: 100 * Math.sin((i * Math.PI) / 180),
      })),
      openings: [],
    };
    const found = largestRectangleAnyWay(circle)!;
    expect(found.alongMm * found.acrossMm).toBeGreaterThan(20_000 * 0.99);
    expect(found.alongMm * found.acrossMm).toBeLessThanOrEqual(20_000);
  });
});

describe('room for a rectangle turned any way', () => {
  test('when it fits only aslant, it is found', () => {
    // 250 × 20 in a box of 200 × 200: its diagonal has 282.8 mm, less the strip's own width.
    expect(holdsAnyWay([box(0, 0, 200, 200)], [20, 250])).toBe(true);
    expect(holdsAnyWay([box(0, 0, 200, 200)], [250, 20])).toBe(true);
    expect(holdsAnyWay([box(0, 0, 200, 200)], [20, 264])).toBe(false);
  });
});
