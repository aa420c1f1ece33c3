import { describe, expect, it } from 'vitest';
import { areaOfRings } from './area.js';
import { isStrictlyInside } from './point-in-area.js';
import { polygon, rectangleRing } from './test-jobs.js';

const outline = rectangleRing(0, 0, 100, 100);
const isIn = (rings: Parameters<typeof areaOfRings>[0], x: number, y: number): boolean =>
  isStrictlyInside(areaOfRings(rings), x, y);

describe('when a point is looked for in an area', () => {
  it('does not count the boundary', () => {
    for (const [x, y] of [
      [0, 0],
      [100, 100],
      [50, 0],
      [100, 50],
      [0, 50],
      [50, 100],
    ] as const) {
      expect(isIn([outline], x, y)).toBe(false);
    }
    expect(isIn([outline], 1e-12, 1e-12)).toBe(true);
    expect(isIn([outline], -1e-12, 50)).toBe(false);
  });

  it('passes corners at its own height once', () => {
    const star = polygon([0, 0], [40, 50], [60, 20], [80, 50], [100, 0], [100, 100], [0, 100]).outer;
    expect(isIn([star], 10, 50)).toBe(true);
    expect(isIn([star], 60, 50)).toBe(true);
    expect(isIn([star], 95, 20)).toBe(true);
    expect(isIn([star], 60, 10)).toBe(false);
  });

  it('takes rings that run either way', () => {
    const opening = rectangleRing(40, 40, 60, 60);
    for (const outer of [outline, [...outline].reverse()]) {
      for (const inner of [opening, [...opening].reverse()]) {
        expect(isIn([outer, inner], 50, 50)).toBe(false);
        expect(isIn([outer, inner], 40, 50)).toBe(false);
        expect(isIn([outer, inner], 30, 50)).toBe(true);
      }
    }
  });

  it('leaves nothing where openings overlap, and no hole where an outline crosses itself', () => {
    expect(isIn([outline, rectangleRing(20, 20, 60, 60), rectangleRing(40, 40, 80, 80)], 50, 50)).toBe(false);
    const twice = [...rectangleRing(0, 0, 60, 60), ...rectangleRing(20, 20, 100, 100)];
    expect(isIn([twice], 40, 40)).toBe(true);
  });
});
