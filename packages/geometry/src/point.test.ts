import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distanceBetween, roundCoordinate, roundPoint } from './point.js';

describe('points', () => {
  it('when a coordinate is rounded, it reads with at most three decimals and moved by at most half a micron', () => {
    fc.assert(
      fc.property(fc.double({ min: -20_000, max: 20_000, noNaN: true }), (n) => {
        const rounded = roundCoordinate(n);
        expect(String(rounded)).toMatch(/^-?\d+(\.\d{1,3})?$/);
        expect(Math.abs(rounded - n)).toBeLessThanOrEqual(0.0005 + 1e-11);
        expect(roundCoordinate(rounded)).toBe(rounded);
        expect(roundCoordinate(-n)).toBe(rounded === 0 ? 0 : -rounded);
      }),
      { seed: 1 },
    );
  });

  it('when a coordinate rounds to nothing, it is 0 and not -0', () => {
    expect(Object.is(roundCoordinate(-0.0001), 0)).toBe(true);
    expect(roundPoint({ x: -0, y: 1.23456 })).toEqual({ x: 0, y: 1.235 });
  });

  it('when two points are 3 and 4 apart along the axes, they are 5 apart', () => {
    expect(distanceBetween({ x: 1, y: -1 }, { x: 4, y: 3 })).toBe(5);
  });
});
