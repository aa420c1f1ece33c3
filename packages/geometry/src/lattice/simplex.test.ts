import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveLinearProgram } from './simplex.js';
import type { LinearProgram } from './simplex.js';

function program(objective: number[], rows: number[][], bounds: number[], reach = 100): LinearProgram {
  return {
    variables: objective.length,
    objective: Float64Array.from(objective),
    rows: Float64Array.from(rows.flat()),
    bounds: Float64Array.from(bounds),
    rowCount: rows.length,
    reach,
  };
}

const small = fc.integer({ min: -9, max: 9 });

describe('linear programs', () => {
  // Worked by hand: 3x + 5y with x <= 4, 2y <= 12, 3x + 2y <= 18 is greatest at (2, 6).
  it('when the best corner is known, it is found', () => {
    const x = solveLinearProgram(
      program(
        [3, 5],
        [
          [1, 0],
          [0, 2],
          [3, 2],
        ],
        [4, 12, 18],
      ),
    );
    expect([...x].map((n) => Math.round(n * 1e9) / 1e9)).toEqual([2, 6]);
  });

  it('when variables may be negative, they are, down to the reach', () => {
    expect([...solveLinearProgram(program([-1, 0.5], [[1, 1]], [1], 7))]).toEqual([-7, 7]);
  });

  it('when many bounds meet at zero, the answer keeps all bounds and no corner of two bounds is better', () => {
    fc.assert(
      fc.property(
        fc.tuple(small, small),
        fc.array(fc.tuple(small, small, fc.integer({ min: 0, max: 5 })), { minLength: 1, maxLength: 9 }),
        (objective, lines) => {
          const reach = 10;
          const [x, y] = solveLinearProgram(
            program(
              [...objective],
              lines.map(([a, b]) => [a, b]),
              lines.map(([, , c]) => c),
              reach,
            ),
          );
          const all = [...lines, [1, 0, reach], [-1, 0, reach], [0, 1, reach], [0, -1, reach]] as const;
          const keeps = (p: number, q: number): boolean =>
            all.every(([a, b, c]) => a * p + b * q <= c + 1e-9);
          expect(keeps(x!, y!)).toBe(true);
          const value = objective[0] * x! + objective[1] * y!;
          for (const [a, b, c] of all) {
            for (const [d, e, f] of all) {
              const det = a * e - b * d;
              if (det === 0) continue;
              const [p, q] = [(c * e - b * f) / det, (a * f - c * d) / det];
              if (keeps(p, q)) expect(objective[0] * p + objective[1] * q).toBeLessThanOrEqual(value + 1e-7);
            }
          }
        },
      ),
      { seed: 1, numRuns: 300 },
    );
  });
});
