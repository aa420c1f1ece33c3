import { describe, expect, it } from 'vitest';
import type { AngleRule, DirectionField, Item, Sheet } from '../types/problem.js';
import type { Polyline } from '../types/shape.js';
import { directionAt, distanceToAxis } from './direction-at.js';
import { checkAnswer } from './index.js';
import { proofPointsOfRegion } from './proof-points.js';
import { frame, makeItem, makeJob, makeSheet, place, rectangle } from './test-jobs.js';
import type { FoundViolation } from './index.js';

const line = (...corners: readonly (readonly [number, number])[]): Polyline =>
  corners.map(([x, y]) => ({ x, y }));

const level = line([-1000, 0], [1000, 0]);
const at = { x: 0, y: 30 };

describe('when the local direction is asked for', () => {
  it('is that of a single line, from head to tail where it is the axis', () => {
    expect(directionAt({ axis: level, strokes: [] }, at)).toEqual({ angleDeg: 0, isDirected: true });
    const back = { axis: [...level].reverse(), strokes: [] };
    expect(Math.abs(directionAt(back, at)!.angleDeg)).toBeCloseTo(180, 9);
    expect(directionAt({ strokes: [level] }, at)).toEqual({ angleDeg: 0, isDirected: false });
  });

  it('is the mean of doubled angles by the inverse square of distances', () => {
    // By hand: level at 30 mm weighs 1/900 and doubles to 0°, 45° at 10 mm weighs 1/100 and doubles to 90°.
    const slanting = line(
      [-10 / Math.SQRT2 - 100, 30 + 10 / Math.SQRT2 - 100],
      [-10 / Math.SQRT2 + 100, 30 + 10 / Math.SQRT2 + 100],
    );
    const field: DirectionField = { axis: level, strokes: [slanting] };
    const expected = (Math.atan2(1 / 100, 1 / 900) * 90) / Math.PI;
    expect(directionAt(field, at)!.angleDeg).toBeCloseTo(expected, 9);
  });

  it('counts nothing nearer than 5 mm', () => {
    const upright = line([2, -100], [2, 100]);
    const slanting = line([-100, -100], [100, 100]);
    // By hand: both weigh 1/25; doubled 180° and 90° give 135°, so 67.5°.
    expect(directionAt({ strokes: [upright, slanting] }, { x: 0, y: 0 })!.angleDeg).toBeCloseTo(67.5, 9);
  });

  it('is unknown where lines contradict each other, and where there is none', () => {
    const upright = line([30, -100], [30, 100]);
    expect(directionAt({ axis: level, strokes: [upright] }, at)).toBeUndefined();
    expect(directionAt({ strokes: [] }, at)).toBeUndefined();
    expect(directionAt(undefined, at)).toBeUndefined();
    // Level at 30 mm against upright at d: the mean is |1 - q| / (1 + q), q = 900 / d²; 0.2 at d = 36.74 mm.
    const beside = (d: number): DirectionField => ({ axis: level, strokes: [line([d, -100], [d, 100])] });
    expect(directionAt(beside(36.7), at)).toBeUndefined();
    expect(directionAt(beside(36.8), at)).toBeDefined();
  });

  it('tells the distance to the axis alone', () => {
    expect(distanceToAxis({ axis: level, strokes: [] }, at)).toBe(30);
    expect(distanceToAxis({ strokes: [level] }, at)).toBeUndefined();
  });
});

describe('when the points of a proof are chosen', () => {
  it('takes the centroid and the grid of 50 mm strictly inside, by the own frame', () => {
    const region = frame(rectangle(-60, -60, 100, 60), rectangle(-40, -40, 10, 40));
    const [centroid, ...grid] = proofPointsOfRegion(region);
    // By hand: 160 × 120 about (20, 0) less 50 × 80 about (-15, 0).
    expect(centroid!.x).toBeCloseTo((19200 * 20 - 4000 * -15) / 15200, 9);
    expect(centroid!.y).toBeCloseTo(0, 9);
    expect(grid).toEqual(
      line([-50, -50], [0, -50], [50, -50], [-50, 0], [50, 0], [-50, 50], [0, 50], [50, 50]),
    );
  });
});

const RULE: AngleRule = { frame: 'local', arrowDeg: 0, targetsDeg: [0], toleranceDeg: 5, modulo: 180 };

function check(item: Item, sheet: Partial<Sheet>, rotationDeg = 0): readonly FoundViolation[] {
  const { problem, answer } = makeJob({
    items: [item],
    sheets: [makeSheet(sheet)],
    placements: [place(item.id, 500, 300, rotationDeg)],
  });
  return checkAnswer(problem, answer);
}

const strip = (angleRule: AngleRule): Item => makeItem('strip', rectangle(-220, -10, 220, 10), { angleRule });

describe('when an item follows the local direction', () => {
  it('fails it where the direction is unknown, but for a free item', () => {
    const unknown = [expect.objectContaining({ rule: 'angle', at: { item: 'strip', set: 1, copy: 1 } })];
    expect(check(strip(RULE), {})).toEqual(unknown);
    expect(check(strip(RULE), { direction: { strokes: [] } })).toEqual(unknown);
    expect(check(strip({ ...RULE, frame: 'free' }), {})).toEqual([]);
  });

  it('fails one that must not be half-turned where no axis tells head from tail', () => {
    const strokes = { direction: { strokes: [line([0, 300], [1000, 300])] } };
    expect(check(strip(RULE), strokes)).toEqual([]);
    expect(check(strip({ ...RULE, modulo: 360 }), strokes)).toMatchObject([{ rule: 'angle' }]);
  });

  it('tells head from tail by the axis', () => {
    const direction = { direction: { axis: line([0, 300], [1000, 300]), strokes: [] } };
    expect(check(strip({ ...RULE, modulo: 360 }), direction, 184)).toMatchObject([
      { rule: 'angle', measured: 176, required: 5 },
    ]);
    expect(check(strip(RULE), direction, 184)).toEqual([]);
  });

  it('must hold at the far ends too, not only at the centroid', () => {
    const direction = {
      axis: line([0, 0], [1000, 0]),
      strokes: [line([680, 280], [720, 320])],
    };
    const [fault, ...others] = check(strip(RULE), { direction });
    expect(others).toEqual([]);
    expect(fault).toMatchObject({ rule: 'angle', place: { x: 700, y: 300 } });
    expect(check(strip(RULE), { direction: { axis: direction.axis, strokes: [] } })).toEqual([]);
  });
});

describe('when an item needs some thickness', () => {
  const strap = (tooThick: 'refuse' | 'skive'): Item =>
    makeItem('strip', rectangle(-220, -10, 220, 10), { thickness: { minMm: 2, maxMm: 3, tooThick } });
  const readings = (...mm: readonly number[]): Partial<Sheet> => ({
    thickness: {
      rangeMm: [0, 9],
      readings: mm.map((one, i) => ({ at: { x: 300 + 400 * i, y: 300 }, mm: one })),
    },
  });

  it('proves nothing on a sheet of unknown thickness', () => {
    expect(check(strap('refuse'), {})).toEqual([]);
  });

  it('fails too thick leather unless it is skived, and too thin leather always', () => {
    expect(check(strap('refuse'), readings(4, 4))).toMatchObject([
      { rule: 'thickness', measured: 4, required: 3 },
    ]);
    expect(check(strap('skive'), readings(4, 4))).toEqual([]);
    expect(check(strap('skive'), readings(1, 1))).toMatchObject([
      { rule: 'thickness', measured: 1, required: 2 },
    ]);
  });

  it('holds at each end, and tells the worst place', () => {
    expect(check(strap('refuse'), readings(2.5, 1.5))).toMatchObject([
      { rule: 'thickness', place: { x: 700, y: 300 }, required: 2 },
    ]);
  });
});
