import { describe, expect, test } from 'vitest';
import type { Curve } from '../types/shape.js';
import { curveArea, curveLength } from './measure.js';
import { circleCurve } from './path.js';
import { curveStretch, startedAt } from './stretch.js';
import { curveToArcs } from './to-arcs.js';
import { drawnCurve } from './test-curves.js';

describe('part of a curve', () => {
  test('when a curve is cut at a length, its two parts are as long as the whole', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const curve = drawnCurve(seed);
      const whole = curveLength(curve);
      const at = (whole * seed) / 21;
      expect(curveLength(curveStretch(curve, 0, at))).toBeCloseTo(at, 5);
      expect(curveLength(curveStretch(curve, at, whole))).toBeCloseTo(whole - at, 5);
    }
  });

  test('when a stretch of a circle is taken, it is an arc of that circle', () => {
    const quarter = curveStretch(circleCurve({ x: 10, y: 0 }, 5), 0, (5 * Math.PI) / 2);
    expect(quarter.segments.map(({ kind }) => kind)).toEqual(['arc']);
    expect(quarter.segments[0]!.to.x).toBeCloseTo(10, 9);
    expect(quarter.segments[0]!.to.y).toBeCloseTo(5, 9);
  });

  test('when a closed curve is started elsewhere, it encloses the same and is closed', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const curve = drawnCurve(seed);
      const turned = startedAt(curve, (curveLength(curve) * seed) / 21);
      expect(curveArea(turned)).toBeCloseTo(curveArea(curve), 5);
      expect(turned.segments[turned.segments.length - 1]!.to).toEqual(turned.start);
    }
  });
});

describe('curves in arcs', () => {
  test('when cubics become arcs, the area stays within the tolerance times the length', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const curve: Curve = drawnCurve(seed);
      const arcs = curveToArcs(curve, 0.005);
      expect(arcs.segments.some(({ kind }) => kind === 'cubic')).toBe(false);
      expect(Math.abs(curveArea(arcs) - curveArea(curve))).toBeLessThan(0.005 * curveLength(curve));
      expect(arcs.segments.length).toBeLessThan(200);
    }
  });
});
