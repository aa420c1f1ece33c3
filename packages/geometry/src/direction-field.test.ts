import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hole, points, rectangle, solid } from '../test-support/shapes.js';
import { directionAt, gridPointsIn, thicknessAt } from './direction-field.js';
import { angleBetweenDeg } from './number/trigonometry.js';
import { applyAffine, composeAffine, rotationDeg, translation } from './shape/affine.js';
import type { Polyline } from './types/shape.js';

function known(field: Parameters<typeof directionAt>[0], x: number, y: number) {
  const local = directionAt(field, { x, y });
  if (local === 'unknown') throw new Error('the direction is known here');
  return local;
}

describe('the direction field', () => {
  it('when only the axis is drawn, the direction is its own everywhere, from head to tail', () => {
    const axis = points([0, 0], [0, 1000]);
    for (const [x, y] of [
      [0, 0],
      [300, 500],
      [-50, 4000],
    ] as const) {
      const local = known({ axis, strokes: [] }, x, y);
      expect(local.angleDeg).toBeCloseTo(90, 12);
      expect(local).toMatchObject({ directed: true, strength: 1 });
      expect(known({ axis: [...axis].reverse(), strokes: [] }, x, y).angleDeg).toBeCloseTo(270, 12);
    }
  });

  it('when only strokes are drawn, opposite strokes are one axis and the angle is below 180', () => {
    const there = points([0, 0], [100, -100]);
    const local = known({ strokes: [there, [...there].reverse()] }, 30, 40);
    expect(local.angleDeg).toBeCloseTo(135, 10);
    expect(local.directed).toBe(false);
  });

  // Worked by hand: weights 1/100 and 1/400 at 0 and 60 degrees; doubled angles 0 and 120 degrees.
  it('when two strokes differ, the nearer counts with the inverse square of its distance', () => {
    const level = points([-1000, 0], [1000, 0]);
    const c = Math.cos(Math.PI / 3);
    const s = Math.sin(Math.PI / 3);
    // a line at 60 degrees whose nearest point to (0, 10) lies 20 off
    const foot = { x: 20 * s, y: 10 - 20 * c };
    const slanted: Polyline = [
      { x: foot.x - 900 * c, y: foot.y - 900 * s },
      { x: foot.x + 900 * c, y: foot.y + 900 * s },
    ];
    const local = known({ strokes: [level, slanted] }, 0, 10);
    const x = 1 / 100 + (1 / 400) * Math.cos((2 * Math.PI) / 3);
    const y = (1 / 400) * Math.sin((2 * Math.PI) / 3);
    expect(local.angleDeg).toBeCloseTo((Math.atan2(y, x) * 90) / Math.PI, 9);
    expect(local.strength).toBeCloseTo(Math.hypot(x, y) * 80, 9);
  });

  it('when a stroke is nearer than 5 mm, it counts no more than at 5 mm', () => {
    const level = points([-100, 0], [100, 0]);
    const upright = points([3, 4], [3, 400]);
    const near = directionAt({ strokes: [level, upright] }, { x: 3, y: 4 });
    expect(near).toBe('unknown');
    expect(known({ strokes: [level, upright] }, 50, 1).angleDeg).toBeCloseTo(0, 9);
  });

  it('when strokes contradict each other or nothing is drawn, the direction is unknown', () => {
    expect(directionAt({ strokes: [] }, { x: 0, y: 0 })).toBe('unknown');
    expect(directionAt({ strokes: [points([0, 0], [10, 0]), points([5, -5], [5, 5])] }, { x: 5, y: 0 })).toBe(
      'unknown',
    );
  });

  it('when the strokes contradict the axis, its sense still tells head from tail', () => {
    const axis = points([0, 0], [0, 1000]);
    const local = known(
      { axis, strokes: [points([100, 500], [130, 540]), points([90, 500], [120, 470])] },
      100,
      505,
    );
    expect(local.directed).toBe(true);
    expect(Math.sin((local.angleDeg * Math.PI) / 180)).toBeGreaterThanOrEqual(0);
  });

  it('when the whole hide is turned and moved, the direction turns with it', () => {
    const coordinate = fc.integer({ min: -500_000, max: 500_000 }).map((n) => n / 1000);
    const place = fc.record({ x: coordinate, y: coordinate });
    const stroke = fc.array(place, { minLength: 2, maxLength: 4 });
    fc.assert(
      fc.property(
        stroke,
        fc.array(stroke, { maxLength: 4 }),
        place,
        coordinate,
        (axis, strokes, at, turn) => {
          const m = composeAffine(translation(100, 20), rotationDeg(turn));
          const move = (line: Polyline) => line.map((p) => applyAffine(m, p));
          const here = directionAt({ axis, strokes }, at);
          const there = directionAt({ axis: move(axis), strokes: strokes.map(move) }, applyAffine(m, at));
          if (here === 'unknown' || here.strength < 0.21) return;
          if (there === 'unknown') throw new Error('known here, so known there');
          // one that stands square to the axis may flip with the last bit
          const apart = Math.abs(angleBetweenDeg(there.angleDeg - here.angleDeg, turn, 180));
          expect(apart).toBeLessThan(1e-6);
        },
      ),
      { seed: 1, numRuns: 200 },
    );
  });
});

describe('the thickness field', () => {
  it('when there are readings, their weighted mean counts, else the whole range', () => {
    const rangeMm = [1.8, 2.4] as const;
    expect(thicknessAt({ rangeMm, readings: [] }, { x: 0, y: 0 })).toEqual([1.8, 2.4]);
    const readings = [
      { at: { x: 0, y: 0 }, mm: 2 },
      { at: { x: 30, y: 0 }, mm: 3 },
    ];
    // weights 1/100 and 1/400
    expect(thicknessAt({ rangeMm, readings }, { x: 10, y: 0 })[0]).toBeCloseTo((2 * 4 + 3) / 5, 12);
    expect(thicknessAt({ rangeMm, readings }, { x: 15, y: 0 })[1]).toBeCloseTo(2.5, 12);
  });
});

describe('places at which rules must hold', () => {
  it('when a piece is large, they are its centroid and the grid crossings strictly inside', () => {
    expect(gridPointsIn(solid(rectangle(-60, -10, 120, 20)))).toEqual(
      points([0, 0], [-50, 0], [0, 0], [50, 0]),
    );
    expect(gridPointsIn(solid(rectangle(0, 0, 100, 100)))).toEqual(points([50, 50], [50, 50]));
    expect(
      gridPointsIn(solid(rectangle(-60, -60, 120, 120), hole(rectangle(-10, -10, 20, 20)))),
    ).toHaveLength(9);
    expect(gridPointsIn(solid(rectangle(1, 1, 10, 4)))).toEqual(points([6, 3]));
  });
});
