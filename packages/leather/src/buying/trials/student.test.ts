import { describe, expect, test } from 'vitest';
import { studentChance } from './student.js';

describe("Student's distribution", () => {
  // Percentage points of Student's t, as tabulated in Abramowitz & Stegun, table 26.10, and any handbook.
  test.each([
    [1, 0.95, 6.314],
    [2, 0.95, 2.92],
    [5, 0.9, 1.476],
    [5, 0.975, 2.571],
    [10, 0.95, 1.812],
    [11, 0.99, 2.718],
    [30, 0.9, 1.31],
    [30, 0.975, 2.042],
  ])(
    'when %i degrees of freedom are asked, the tabulated point of %f has its chance',
    (freedom, chance, point) => {
      expect(studentChance(point, freedom)).toBeCloseTo(chance, 3);
      expect(studentChance(-point, freedom)).toBeCloseTo(1 - chance, 3);
    },
  );

  test('when there is one degree, it is the Cauchy distribution: 1/2 + arctan(t)/pi', () => {
    for (const t of [-4, -0.5, 0, 1, 7]) {
      expect(studentChance(t, 1)).toBeCloseTo(0.5 + Math.atan(t) / Math.PI, 12);
    }
  });

  test('when there are two degrees, it is 1/2 + t / (2 sqrt(2 + t²))', () => {
    for (const t of [-4, -0.5, 0, 1, 7]) {
      expect(studentChance(t, 2)).toBeCloseTo(0.5 + t / (2 * Math.sqrt(2 + t * t)), 12);
    }
  });

  // Normal distribution, tables: 1.0 -> 0.8413, 1.2816 -> 0.9, 1.645 -> 0.95, 2 -> 0.9772.
  test('when there are 30 degrees, it is the normal one to within 0.006', () => {
    for (const [t, chance] of [
      [1, 0.8413],
      [1.2816, 0.9],
      [1.645, 0.95],
      [2, 0.9772],
    ] as const) {
      expect(Math.abs(studentChance(t, 30) - chance)).toBeLessThan(0.006);
    }
  });
});
