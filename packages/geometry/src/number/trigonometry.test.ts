import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { angleBetweenDeg, atan2Deg, normalizeDeg, sinCosDeg } from './trigonometry.js';

const angle = fc.double({ min: -1000, max: 1000, noNaN: true });

describe('own trigonometry', () => {
  // Judge: the engine's Math.sin, Math.cos and Math.atan2, on an angle reduced to one turn first.
  it('when an angle within a turn is taken, sine and cosine agree with the engine to 1e-15', () => {
    for (let i = -1800; i <= 1800; i++) {
      const deg = i / 5;
      const { sin, cos } = sinCosDeg(deg);
      // pi itself is rounded, so beyond a quarter turn the engine's argument is off by more than our result
      const within = Math.abs(deg) <= 90 ? 1e-15 : 2e-15;
      expect(Math.abs(sin - Math.sin((deg * Math.PI) / 180))).toBeLessThanOrEqual(within);
      expect(Math.abs(cos - Math.cos((deg * Math.PI) / 180))).toBeLessThanOrEqual(within);
    }
  });

  it('when an angle is a multiple of 90, sine and cosine are exact and never -0', () => {
    for (let quarter = -8; quarter <= 8; quarter++) {
      const k = ((quarter % 4) + 4) % 4;
      expect(sinCosDeg(90 * quarter)).toEqual({ sin: [0, 1, 0, -1][k], cos: [1, 0, -1, 0][k] });
    }
  });

  it('when a direction is asked for, it agrees with the engine to 1e-13 degrees and with the sine back', () => {
    fc.assert(
      fc.property(angle, fc.double({ min: 1e-3, max: 1e3, noNaN: true }), (deg, length) => {
        const { sin, cos } = sinCosDeg(deg);
        const found = atan2Deg(length * sin, length * cos);
        expect(Math.abs(found - (Math.atan2(length * sin, length * cos) * 180) / Math.PI)).toBeLessThan(
          1e-13,
        );
        expect(Math.abs(angleBetweenDeg(found, deg))).toBeLessThan(1e-12);
      }),
      { seed: 1, numRuns: 500 },
    );
  });

  it('when a direction is a multiple of 45, it is exact', () => {
    const cases: [number, number, number][] = [
      [0, 1, 0],
      [1, 1, 45],
      [1, 0, 90],
      [1, -1, 135],
      [0, -1, 180],
      [-1, -1, -135],
      [-1, 0, -90],
      [-1, 1, -45],
      [0, 0, 0],
    ];
    for (const [y, x, deg] of cases) expect(atan2Deg(y, x)).toBe(deg);
  });

  it('when sine and cosine are squared, they sum to one', () => {
    fc.assert(
      fc.property(angle, (deg) => {
        const { sin, cos } = sinCosDeg(deg);
        expect(Math.abs(sin * sin + cos * cos - 1)).toBeLessThan(5e-16);
      }),
      { seed: 2, numRuns: 500 },
    );
  });

  it('when angles are brought within a turn, they stay the same direction', () => {
    expect([normalizeDeg(-90), normalizeDeg(720), normalizeDeg(359.5), normalizeDeg(-1e-20)]).toEqual([
      270, 0, 359.5, 0,
    ]);
    expect([angleBetweenDeg(350, 10), angleBetweenDeg(10, 350), angleBetweenDeg(180, 0)]).toEqual([
      -20, 20, 180,
    ]);
    expect([angleBetweenDeg(170, 10, 180), angleBetweenDeg(0, 90, 180)]).toEqual([-20, 90]);
  });
});
