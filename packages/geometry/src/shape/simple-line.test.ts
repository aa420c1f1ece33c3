import { describe, expect, it } from 'vitest';
import { createRandom } from '../number/random.js';
import type { Point } from '../types/shape.js';
import { pointToSegment } from './distance.js';
import { simpleLine } from './simple-line.js';

describe('a line of fewer corners', () => {
  it('when corners lie on the straight line between others, they go', () => {
    const line = [0, 1, 2, 3, 4].map((x) => ({ x, y: 0 }));
    expect(simpleLine([...line, { x: 4, y: 3 }], 0.01)).toEqual([
      { x: 0, y: 0 },
      { x: 4, y: 0 },
      { x: 4, y: 3 },
    ]);
  });

  // The promise of Douglas and Peucker's method (1973), held against the definition of the distance.
  it('when a trembling stroke is simplified, no left-out corner lies farther off than the tolerance', () => {
    const random = createRandom(7);
    const stroke: Point[] = [];
    for (let i = 0; i < 400; i++) stroke.push({ x: i, y: 40 * Math.sin(i / 30) + 2 * random.next() });
    for (const tolerance of [0.5, 2, 8]) {
      const simple = simpleLine(stroke, tolerance);
      expect(simple.length).toBeLessThan(stroke.length / 2);
      expect([simple[0], simple.at(-1)]).toEqual([stroke[0], stroke.at(-1)]);
      for (const corner of stroke) {
        const off = Math.min(...simple.slice(1).map((to, i) => pointToSegment(corner, simple[i]!, to)));
        expect(off).toBeLessThanOrEqual(tolerance);
      }
    }
  });

  it('when a closed stroke is simplified, it stays closed, and long strokes are no matter', () => {
    const ring = Array.from({ length: 20_001 }, (_, i) => {
      const angle = (2 * Math.PI * i) / 20_000;
      return { x: 100 * Math.cos(angle), y: 100 * Math.sin(angle) };
    });
    const simple = simpleLine(ring, 0.1);
    expect(simple.at(-1)).toEqual(ring.at(-1));
    // A chord of a circle of radius r with sagitta s spans 2·acos(1 - s/r): 71 chords would be the fewest.
    expect(simple.length).toBeGreaterThan(70);
    expect(simple.length).toBeLessThan(200);
  });
});
