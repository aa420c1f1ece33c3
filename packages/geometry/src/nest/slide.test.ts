import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { segmentDistanceSq } from './distance.js';
import { extendEscape, limitSlide } from './slide.js';
import type { SlideAxis } from './slide.js';
import { buildSoup, isInSoup, moveSoup } from './soup.js';
import type { Soup } from './soup.js';

/** Independent of the kernel: all pairs of edges. */
function distanceBetween(a: Soup, b: Soup): number {
  let least = Infinity;
  for (let i = 0; i < a.count; i++) {
    for (let k = 0; k < b.count; k++) {
      const sq = segmentDistanceSq(
        a.ax[i]!,
        a.ay[i]!,
        a.bx[i]!,
        a.by[i]!,
        b.ax[k]!,
        b.ay[k]!,
        b.bx[k]!,
        b.by[k]!,
      );
      least = Math.min(least, sq);
    }
  }
  return Math.sqrt(least);
}

const triangle = fc
  .array(fc.integer({ min: -10_000, max: 10_000 }), { minLength: 6, maxLength: 6 })
  .map((numbers) => buildSoup([Float64Array.from(numbers, (n) => n / 1000)]));
const axes = fc.constantFrom<SlideAxis>(
  { alongX: true, sign: 1 },
  { alongX: true, sign: -1 },
  { alongX: false, sign: 1 },
  { alongX: false, sign: -1 },
);
const gaps = fc.constantFrom(0.001, 0.5, 3);
/** Grazing contacts take a square root of a difference that cancels: a thousandth of a µm. */
const ARITHMETIC_MM = 1e-6;
const SETTINGS = { seed: 20_260_101, numRuns: 400 };

function travelled(soup: Soup, axis: SlideAxis, travel: number): Soup {
  return moveSoup(soup, axis.alongX ? axis.sign * travel : 0, axis.alongX ? 0 : axis.sign * travel);
}

describe('slides', () => {
  it('when a shape slides until it is stopped, it is at the distance, and never nearer on the way', () => {
    fc.assert(
      fc.property(triangle, triangle, axes, gaps, (moving, other, axis, gap) => {
        const standing = moveSoup(other, axis.alongX ? axis.sign * 30 : 0, axis.alongX ? 0 : axis.sign * 30);
        const state = { travel: 80, blocked: false };
        limitSlide(moving, 0, 0, standing, gap, axis, state);
        expect(state.blocked).toBe(false);
        const stopped = state.travel < 80;
        if (stopped) {
          const at = distanceBetween(travelled(moving, axis, state.travel), standing);
          expect(Math.abs(at - gap)).toBeLessThan(ARITHMETIC_MM);
        }
        for (const share of [0.5, 0.8, 0.95]) {
          const at = distanceBetween(travelled(moving, axis, share * state.travel), standing);
          expect(at).toBeGreaterThan(gap - ARITHMETIC_MM);
        }
      }),
      SETTINGS,
    );
  });

  it('when a shape is pushed free, it ends at the distance or beyond', () => {
    fc.assert(
      fc.property(triangle, triangle, axes, gaps, (moving, standing, axis, gap) => {
        const state = { travel: 0, blocked: false };
        while (extendEscape(moving, 0, 0, standing, gap, axis, 200, state));
        const at = distanceBetween(travelled(moving, axis, state.travel), standing);
        expect(at).toBeGreaterThan(gap - ARITHMETIC_MM);
      }),
      SETTINGS,
    );
  });
});

describe('containment', () => {
  it('when a point lies in an opening, it is outside', () => {
    const ring = (r: number): Float64Array => Float64Array.from([-r, -r, r, -r, r, r, -r, r]);
    const soup = buildSoup([ring(10), ring(4)]);
    expect(isInSoup(soup, 0, 0)).toBe(false);
    expect(isInSoup(soup, 7, 1)).toBe(true);
    expect(isInSoup(soup, 11, 1)).toBe(false);
  });
});
