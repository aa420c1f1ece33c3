import { beforeAll, describe, expect, test } from 'vitest';
import { loadJudge } from '../../test-support/judge.js';
import type { Judge } from '../../test-support/judge.js';
import { orientRing } from '../shape/ring.js';
import type { Curve, Region } from '../types/shape.js';
import { flattenCurve } from './flatten.js';
import { curveArea, curveBox, curveLength } from './measure.js';
import { offsetCurve } from './offset-curve.js';
import { circleCurve, curveFromPolyline, reverseCurve } from './path.js';
import { drawnCurve } from './test-curves.js';

let judge: Judge;
beforeAll(async () => {
  judge = await loadJudge();
}, 30_000);

function regionOf(curve: Curve): Region {
  return { outer: orientRing(flattenCurve(curve, 0.002).slice(0, -1), 'outer'), openings: [] };
}

const square = curveFromPolyline(
  [
    { x: 0, y: 0 },
    { x: 40, y: 0 },
    { x: 40, y: 40 },
    { x: 0, y: 40 },
  ],
  true,
);

describe('a closed curve moved sideways', () => {
  test('when a square of 40 mm grows by 0.1 mm, it is one of 40.2 mm with four lines', () => {
    const { curves, isExact } = offsetCurve(square, 0.1);
    expect(isExact).toBe(true);
    expect(curves[0]!.segments.map(({ kind }) => kind)).toEqual(['line', 'line', 'line', 'line']);
    const box = curveBox(curves[0]!);
    expect([box.minX, box.minY, box.maxX, box.maxY].map((n) => Math.round(n * 1e9) / 1e9)).toEqual([
      -0.1, -0.1, 40.1, 40.1,
    ]);
  });

  test('when a circle shrinks, it stays two arcs, and which way it runs makes no difference', () => {
    for (const curve of [circleCurve({ x: 3, y: 4 }, 2), reverseCurve(circleCurve({ x: 3, y: 4 }, 2))]) {
      const { curves, isExact } = offsetCurve(curve, -0.25);
      expect(isExact).toBe(true);
      expect(curves[0]!.segments.map(({ kind }) => kind)).toEqual(['arc', 'arc']);
      expect(Math.abs(curveArea(curves[0]!))).toBeCloseTo(Math.PI * 1.75 ** 2, 6);
      expect(curveArea(curves[0]!) > 0).toBe(curveArea(curve) > 0);
    }
  });

  test('when an opening is no wider than twice the distance, nothing is left', () => {
    expect(offsetCurve(circleCurve({ x: 0, y: 0 }, 0.5), -0.5).curves).toEqual([]);
    expect(offsetCurve(square, -20).curves).toEqual([]);
  });

  test('when the neck of a dumbbell is narrower than twice the distance, two parts are left', () => {
    const dumbbell = curveFromPolyline(
      [
        [0, 0],
        [10, 0],
        [10, 4.9],
        [20, 4.9],
        [20, 0],
        [30, 0],
        [30, 10],
        [20, 10],
        [20, 5.1],
        [10, 5.1],
        [10, 10],
        [0, 10],
      ].map(([x, y]) => ({ x: x!, y: y! })),
      true,
    );
    const { curves, isExact } = offsetCurve(dumbbell, -0.25);
    expect(isExact).toBe(false);
    expect(curves).toHaveLength(2);
  });

  // Judged by the buffers of jsts, which share no code with ours.
  test('when drawn curves are moved, the result lies where jsts has it', () => {
    let exact = 0;
    for (let seed = 1; seed <= 24; seed++) {
      const curve = drawnCurve(seed);
      for (const distance of [0.1, 0.6, -0.1, -0.6]) {
        const moved = offsetCurve(curve, distance);
        if (moved.isExact) exact++;
        expect(moved.curves).toHaveLength(1);
        const own = judge.shapeOf(regionOf(moved.curves[0]!));
        // Corners reach further than jsts' round ones, by no more than their own square of twice the distance.
        const wanted = judge.buffer(judge.shapeOf(regionOf(curve)), distance);
        const off = judge.differenceArea(own, wanted) + judge.differenceArea(wanted, own);
        expect(off, `seed ${seed}, ${distance} mm`).toBeLessThan(
          0.006 * curveLength(curve) + 12 * distance * distance,
        );
        // Nowhere nearer than the distance, on the side that is asked for.
        const nearer = judge.buffer(judge.shapeOf(regionOf(curve)), distance - 0.01 * Math.sign(distance));
        expect(distance > 0 ? judge.covers(own, nearer) : judge.covers(nearer, own)).toBe(true);
      }
    }
    expect(exact).toBeGreaterThan(90);
  });
});
