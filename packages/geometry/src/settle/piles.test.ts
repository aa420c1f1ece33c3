import { beforeAll, describe, expect, it } from 'vitest';
import { loadJudge } from '../../test-support/judge.js';
import type { Judge } from '../../test-support/judge.js';
import { createRandom } from '../number/random.js';
import { convexHull } from '../shape/hull.js';
import type { Ring } from '../types/shape.js';
import { compactStrip } from './compact.js';
import { settle } from './settle.js';
import { disturbed, isProvenLayout, laidByBoxes, ringOf, roughRing, shapesOf } from './test-layouts.js';

let judge: Judge;
beforeAll(async () => {
  judge = await loadJudge();
});

interface Places {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** Judge: jsts. The least distance of two pieces, and the greatest overlap as area for each mm of outline shared. */
function judged(rings: readonly Ring[], { x, y }: Places): { distance: number; overlap: number } {
  const shapes = rings.map((ring, i) =>
    judge.shapeOf({ outer: ring.map((p) => ({ x: p.x + x[i]!, y: p.y + y[i]! })), openings: [] }),
  );
  let distance = Infinity;
  let overlap = 0;
  for (let i = 0; i < shapes.length; i++) {
    for (let j = i + 1; j < shapes.length; j++) {
      const apart = judge.distance(shapes[i]!, shapes[j]!);
      distance = Math.min(distance, apart);
      if (apart === 0) overlap = Math.max(overlap, judge.intersectionArea(shapes[i]!, shapes[j]!));
    }
  }
  return { distance, overlap };
}

function pile(seed: number, kind: 'convex' | 'rough', count: number) {
  const random = createRandom(seed);
  const rings = Array.from({ length: count }, () => {
    const ring = roughRing(random, 5 + random.integer(8), kind === 'convex' ? 40 : 20, 60);
    return kind === 'convex' ? convexHull(ring) : ring;
  });
  return { random, rings, shapes: shapesOf(rings) };
}

const HEIGHT = 400;

describe('piles of pieces', () => {
  it('when a strip is compacted, it gets shorter, and no gap is lost on the way', () => {
    for (const kind of ['convex', 'rough'] as const) {
      for (const gap of [0, 2]) {
        for (let seed = 1; seed <= 2; seed++) {
          const { rings, shapes } = pile(seed, kind, 14);
          const start = laidByBoxes(shapes, HEIGHT, gap);
          const bounds = { minX: 0, minY: 0, maxX: Infinity, maxY: HEIGHT };
          const before = Math.max(...shapes.map((shape, i) => start.x[i]! + shape.maxX));
          const strip = compactStrip({ shapes, ...start, gap, bounds });
          expect(strip.length).toBeLessThan(0.95 * before);
          expect(strip.worst).toBeLessThan(1e-6);
          const { distance, overlap } = judged(rings, strip);
          expect(distance).toBeGreaterThanOrEqual(gap - 1e-6);
          expect(distance).toBeLessThan(gap + 1e-6);
          expect(overlap).toBeLessThan(1e-4);
          expect(isProvenLayout(rings, strip, strip.length + 0.001, HEIGHT, gap)).toBe(true);
        }
      }
    }
  });

  it('when a tight strip is disturbed by up to 0.1 mm, it settles within its length, as jsts and the check say', () => {
    for (const kind of ['convex', 'rough'] as const) {
      for (const gap of [0, 2]) {
        for (let seed = 11; seed <= 12; seed++) {
          const { random, rings, shapes } = pile(seed, kind, 14);
          const open = { minX: 0, minY: 0, maxX: Infinity, maxY: HEIGHT };
          const strip = compactStrip({ shapes, ...laidByBoxes(shapes, HEIGHT, gap), gap, bounds: open });
          const x = disturbed(random, strip.x, 0.1);
          const y = disturbed(random, strip.y, 0.1);
          const bounds = { ...open, maxX: strip.length };
          const settled = settle({ shapes, x, y, gap, bounds });
          expect(settled.isExact, `${kind}, gap ${gap}, seed ${seed}: ${settled.worst}`).toBe(true);
          const { distance, overlap } = judged(rings, settled);
          expect(distance).toBeGreaterThanOrEqual(gap - 0.001);
          expect(overlap).toBeLessThan(0.0004 * 100);
          expect(isProvenLayout(rings, settled, strip.length + 0.001, HEIGHT, gap)).toBe(true);
        }
      }
    }
  });

  it('when a body is fixed, it stays to the bit and the others give way', () => {
    const { rings, shapes } = pile(31, 'convex', 10);
    const start = laidByBoxes(shapes, HEIGHT, 2.5);
    const fixed = new Uint8Array(10);
    fixed[4] = 1;
    const strip = compactStrip({
      shapes,
      ...start,
      fixed,
      gap: 2,
      bounds: { minX: 0, minY: 0, maxX: Infinity, maxY: HEIGHT },
    });
    expect([strip.x[4], strip.y[4]]).toEqual([start.x[4], start.y[4]]);
    expect(judged(rings, strip).distance).toBeGreaterThan(2 - 1e-6);
  });

  it('when two diamonds meet corner to corner across a gap of 2 mm, it is 2 mm, and so it is askew', () => {
    const diamond = ringOf([[-10, 0], [0, -10], [10, 0], [0, 10]]); // prettier-ignore
    const shapes = shapesOf([diamond, diamond]);
    const across = (dy: number) =>
      compactStrip({
        shapes,
        x: Float64Array.of(10, 40),
        y: Float64Array.of(10, 10 + dy),
        gap: 2,
        // Room for no move up or down.
        bounds: { minX: 0, minY: dy === 0 ? 0 : -1e9, maxX: Infinity, maxY: dy === 0 ? 20 : 1e9 },
        fixed: Uint8Array.of(1, 0),
      });
    const level = across(0);
    expect(level.x[1]! - level.x[0]!).toBeCloseTo(22, 6);
    // Free to slip, the second diamond goes past the first.
    const slipped = across(0.5);
    expect(judged([diamond, diamond], slipped).distance).toBeGreaterThan(2 - 1e-6);
    expect(slipped.length).toBeLessThan(level.length);
  });

  it('when squares meet corner to corner, they slip past each other', () => {
    const square = ringOf([[0, 0], [50, 0], [50, 50], [0, 50]]); // prettier-ignore
    const shapes = shapesOf([square, square, square]);
    const strip = compactStrip({
      shapes,
      x: Float64Array.of(0, 50, 100),
      y: Float64Array.of(0, 50, 100),
      gap: 0,
      bounds: { minX: 0, minY: 0, maxX: Infinity, maxY: 150 },
    });
    expect(strip.length).toBeCloseTo(50, 6);
  });

  it('when a call is repeated, the places are the same to the bit', () => {
    const { shapes } = pile(41, 'rough', 12);
    const task = {
      shapes,
      ...laidByBoxes(shapes, HEIGHT, 0),
      gap: 0,
      bounds: { minX: 0, minY: 0, maxX: Infinity, maxY: HEIGHT },
    };
    expect(compactStrip(task)).toEqual(compactStrip(task));
  });
});
