import { beforeAll, describe, expect, it } from 'vitest';
import { loadJudge } from '../../test-support/judge.js';
import type { Judge } from '../../test-support/judge.js';
import { createRandom } from '../number/random.js';
import { sinCosDeg } from '../number/trigonometry.js';
import type { Ring } from '../types/shape.js';
import { compactStrip } from './compact.js';
import { compactStripTurning, settleTurning } from './settle-turning.js';
import { disturbed, laidByBoxes, ringOf, roughRing, shapesOf } from './test-layouts.js';

let judge: Judge;
beforeAll(async () => {
  judge = await loadJudge();
});

interface Laid {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly angleDeg: Float64Array;
}

/** Judge: jsts, on rings turned by hand. */
function leastDistance(rings: readonly Ring[], { x, y, angleDeg }: Laid): number {
  const shapes = rings.map((ring, i) => {
    const { sin, cos } = sinCosDeg(angleDeg[i]!);
    const outer = ring.map((p) => ({ x: p.x * cos - p.y * sin + x[i]!, y: p.x * sin + p.y * cos + y[i]! }));
    return judge.shapeOf({ outer, openings: [] });
  });
  let least = Infinity;
  for (let i = 0; i < shapes.length; i++)
    for (let j = i + 1; j < shapes.length; j++)
      least = Math.min(least, judge.distance(shapes[i]!, shapes[j]!));
  return least;
}

const HEIGHT = 400;
const OPEN = { minX: 0, minY: 0, maxX: Infinity, maxY: HEIGHT };

describe('bodies that turn', () => {
  it('when a bar lies askew in a slot of its own width, it turns straight', () => {
    const bar = ringOf([[-50, -10], [50, -10], [50, 10], [-50, 10]]); // prettier-ignore
    for (const start of [0.3, -1.2, 179.5]) {
      const settled = settleTurning({
        shapes: shapesOf([bar]),
        x: Float64Array.of(60),
        y: Float64Array.of(10.1),
        angleDeg: Float64Array.of(start),
        gap: 0,
        bounds: { minX: 0, minY: 0, maxX: 200, maxY: 20 },
      });
      expect(settled.isExact).toBe(true);
      expect(Math.abs(settled.angleDeg[0]! - (start > 90 ? 180 : 0))).toBeLessThan(0.0005);
      expect(settled.y[0]).toBeCloseTo(10, 3);
    }
  });

  it('when bars that fill a box are disturbed and turned a little, they fill it again', () => {
    const random = createRandom(3);
    const bar = ringOf([[-50, -10], [50, -10], [50, 10], [-50, 10]]); // prettier-ignore
    const count = 8;
    const settled = settleTurning({
      shapes: shapesOf(Array.from({ length: count }, () => bar)),
      x: disturbed(random, new Float64Array(count).fill(50), 0.1),
      y: disturbed(
        random,
        Array.from({ length: count }, (_, i) => 10 + 20 * i),
        0.1,
      ),
      angleDeg: disturbed(random, new Float64Array(count), 0.1),
      gap: 0,
      bounds: { minX: 0, minY: 0, maxX: 100, maxY: 20 * count },
    });
    expect(settled.worst).toBeLessThanOrEqual(0.0004);
    for (let i = 0; i < count; i++) expect(settled.y[i]).toBeCloseTo(10 + 20 * i, 2);
  });

  it('when a strip is compacted with turns, it gets shorter than without, and no gap is lost', () => {
    for (const gap of [0, 2]) {
      const random = createRandom(7 + gap);
      const rings = Array.from({ length: 8 }, () => roughRing(random, 7, 30, 60));
      const shapes = shapesOf(rings);
      const start = { shapes, ...laidByBoxes(shapes, HEIGHT, gap), gap, bounds: OPEN };
      const still = compactStrip(start);
      const turned = compactStripTurning({ ...start, angleDeg: new Float64Array(8) });
      expect(turned.length).toBeLessThan(still.length - 0.5);
      expect(leastDistance(rings, turned)).toBeGreaterThanOrEqual(gap - 0.0001);
      expect(turned.worst).toBeLessThan(0.0001);
      for (const angle of turned.angleDeg)
        expect(Math.abs(angle * 1e6 - Math.round(angle * 1e6))).toBeLessThan(1e-3);
    }
  });

  it('when angles have a range, they keep to it, and a body without one does not turn', () => {
    const random = createRandom(9);
    const shapes = shapesOf(Array.from({ length: 8 }, () => roughRing(random, 7, 30, 60)));
    const leastDeg = new Float64Array(8).fill(-3);
    const mostDeg = new Float64Array(8).fill(2);
    leastDeg[2] = mostDeg[2] = 0;
    const { angleDeg } = compactStripTurning({
      shapes,
      ...laidByBoxes(shapes, HEIGHT, 0),
      angleDeg: new Float64Array(8),
      leastDeg,
      mostDeg,
      gap: 0,
      bounds: OPEN,
    });
    expect(angleDeg[2]).toBe(0);
    expect(Math.min(...angleDeg)).toBeGreaterThanOrEqual(-3);
    expect(Math.max(...angleDeg)).toBeLessThanOrEqual(2);
    expect(angleDeg.some((angle) => angle === -3 || angle === 2)).toBe(true);
  });
});
