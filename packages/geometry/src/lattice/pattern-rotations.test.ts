import { describe, expect, it } from 'vitest';
import type { AngleRule } from '../types/problem.js';
import type { Point } from '../types/shape.js';
import { allowsHalfTurn, patternRotations } from './pattern-rotations.js';
import { toRepeat } from './repeat.js';
import { FREE } from './test-shapes.js';

const single = toRepeat(900, { u: { x: 40, y: 10 }, v: { x: -5, y: 30 } });
const double = toRepeat(900, { u: { x: 40, y: 10 }, v: { x: -5, y: 60 }, turned: { x: 1, y: 30 } });
const along: AngleRule = { frame: 'sheet', arrowDeg: 0, targetsDeg: [0], toleranceDeg: 0, modulo: 180 };

/** How far two axes are apart, degrees. */
function axesApart(a: number, b: number): number {
  const turn = (((a - b) % 180) + 180) % 180;
  return Math.min(turn, 180 - turn);
}

function directionOf({ x, y }: Point): number {
  return (Math.atan2(y, x) * 180) / Math.PI;
}

describe('rotations of a pattern', () => {
  it('when the item is free, rows run along the sides', () => {
    const rotations = patternRotations(double, { rule: FREE, sidesDeg: [0, 90] });
    const row = directionOf(double.u);
    for (const side of [0, 90]) {
      expect(rotations.some((deg) => axesApart(deg + row, side) < 1e-6)).toBe(true);
    }
    expect(new Set(rotations).size).toBe(rotations.length);
    expect(rotations.length).toBeLessThanOrEqual(16);
  });

  it('when the rule has no tolerance, only its own angles are left', () => {
    expect(patternRotations(single, { rule: along, sidesDeg: [0, 90] })).toEqual([0, 180]);
    expect(patternRotations(double, { rule: along, sidesDeg: [0, 90] })).toEqual([0]);
    const oneWay: AngleRule = { ...along, modulo: 360, targetsDeg: [90], arrowDeg: 30 };
    expect(patternRotations(single, { rule: oneWay, sidesDeg: [0] })).toEqual([60]);
    const local: AngleRule = { ...along, frame: 'local' };
    expect(patternRotations(double, { rule: local, directionDeg: 25, sidesDeg: [] })).toEqual([25]);
  });

  it('when the rule has a tolerance, a row that it lets run along a side is tried', () => {
    const rotations = patternRotations(single, { rule: { ...along, toleranceDeg: 15 }, sidesDeg: [0] });
    expect(rotations).toContain(0);
    for (const deg of rotations) expect(axesApart(deg, 0)).toBeLessThanOrEqual(15);
    const rows = [single.u, single.v].map(directionOf);
    expect(rows.some((row) => rotations.some((deg) => axesApart(deg + row, 0) < 1e-6))).toBe(true);
  });

  it('when a rule names both directions, the half turn is allowed', () => {
    expect(allowsHalfTurn(FREE)).toBe(true);
    expect(allowsHalfTurn(along)).toBe(true);
    expect(allowsHalfTurn({ ...along, modulo: 360 })).toBe(false);
    expect(allowsHalfTurn({ ...along, modulo: 360, targetsDeg: [20, 200] })).toBe(true);
  });
});
