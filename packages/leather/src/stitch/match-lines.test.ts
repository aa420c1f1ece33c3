import fc from 'fast-check';
import { circleCurve, curveFromPolyline, reverseCurve } from '@hidebound/geometry';
import type { Curve } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
import { walkLine } from './line-walk.js';
import type { MarkRule } from './marks-along.js';
import { matchedMarks } from './match-lines.js';
import type { MatchedMarks } from './match-lines.js';

const IRON: MarkRule = {
  pitchMm: 4,
  with: 'iron',
  gives: 'both ends',
  adjustShare: 0.1,
  cornerDeg: 30,
  endGapMm: 0,
};
const AWL: MarkRule = { ...IRON, with: 'awl' };

const match = (rule: MarkRule, ...curves: readonly Curve[]): MatchedMarks =>
  matchedMarks(curves.map(walkLine), rule);
const lineTo = (...points: readonly (readonly [number, number])[]): Curve =>
  curveFromPolyline(
    points.map(([x, y]) => ({ x, y })),
    false,
  );
const counts = ({ marks }: MatchedMarks): number[] => marks.map(({ holes }) => holes.length);
const straight = (mm: number): Curve => lineTo([0, 0], [mm, 0]);

describe('lines that are sewn together with an iron', () => {
  test('when they differ by less than a pitch, all have its exact pitch and the ends give', () => {
    const { marks } = match(IRON, straight(102), straight(99));
    expect(marks.map(({ holes }) => holes.length)).toEqual([25, 25]);
    for (const { usedPitchMm } of marks) expect(usedPitchMm.max).toBeCloseTo(4, 9);
    expect(marks.map(({ startGapMm }) => startGapMm)).toEqual([3, 1.5]);
  });

  test('when they differ by more, the first is pricked and the other is eased to it', () => {
    const { marks } = match(IRON, straight(100), straight(106));
    expect(marks.map(({ holes }) => holes.length)).toEqual([26, 26]);
    expect(marks[0]!.usedPitchMm.mean).toBeCloseTo(4, 9);
    expect(marks[1]!.usedPitchMm.min).toBeCloseTo(4.24, 9);
    expect(marks[1]!.usedPitchMm.max).toBeCloseTo(4.24, 9);
    expect(marks[1]!.gave.what).toBe('gathering');
    expect(marks[1]!.gave.changeMm).toBeCloseTo(6, 9);
  });

  test('when a line is eased, its end gaps are in proportion to those of the line that it is sewn to', () => {
    const { marks } = match({ ...IRON, gives: 'end', endGapMm: 2 }, straight(101), straight(111.1));
    expect([marks[0]!.startGapMm, marks[0]!.endGapMm]).toEqual([2, 3]);
    expect(marks[1]!.startGapMm).toBeCloseTo(2.2, 9);
    expect(marks[1]!.endGapMm).toBeCloseTo(3.3, 9);
  });

  test('when a strip goes around a disc, its ends meet half a stitch from its outer holes', () => {
    const { marks } = match(IRON, circleCurve({ x: 0, y: 0 }, 20), straight(140));
    expect(marks.map(({ holes }) => holes.length)).toEqual([31, 31]);
    expect(marks[1]!.startGapMm).toBeCloseTo(140 / 62, 9);
    expect(marks[1]!.endGapMm).toBeCloseTo(140 / 62, 6);
  });
});

describe('lines that are sewn together with an awl', () => {
  const bent = lineTo([0, 0], [60, 0], [60, 33]);
  const bentToo = lineTo([0, 0], [0, 62], [34, 62]);
  const inCorner = ({ marks }: MatchedMarks): number[] =>
    marks.map(({ holes }) => holes.findIndex(({ isCorner }) => isCorner));

  test('when both turn a corner, the corners meet, whichever way round the lines are drawn', () => {
    const alike = match(AWL, bent, bentToo);
    expect(counts(alike)).toEqual([24, 24]);
    expect(inCorner(alike)).toEqual([15, 15]);
    const against = match(AWL, bent, reverseCurve(bentToo));
    expect(counts(against)).toEqual([24, 24]);
    expect(inCorner(against)).toEqual([15, 8]);
  });

  test('when only one turns corners, it says where the holes are and the other is divided evenly', () => {
    const { main, marks } = match(AWL, straight(93), bent);
    expect(main).toBe(1);
    expect(marks.map(({ holes }) => holes.length)).toEqual([24, 24]);
    expect(marks[0]!.usedPitchMm.max - marks[0]!.usedPitchMm.min).toBeLessThan(1e-9);
  });

  test('when two closed lines start at different corners, long sides still meet long sides', () => {
    const box = (...points: readonly (readonly [number, number])[]): Curve =>
      curveFromPolyline(
        points.map(([x, y]) => ({ x, y })),
        true,
      );
    const { marks } = match(
      AWL,
      box([0, 0], [80, 0], [80, 21], [0, 21]),
      box([0, 0], [0, 79], [20, 79], [20, 0]),
    );
    expect(marks.map(({ holes }) => holes.length)).toEqual([50, 50]);
    for (const { usedPitchMm } of marks) expect(usedPitchMm.max).toBeLessThan(4.3);
    for (const { holes } of marks) expect(holes.filter(({ isCorner }) => isCorner)).toHaveLength(4);
  });
});

describe('any lines that are sewn together', () => {
  const leg = fc.integer({ min: 15, max: 200 });
  const curve = fc.oneof(
    leg.map(straight),
    fc.tuple(leg, leg).map(([a, b]) => lineTo([0, 0], [a, 0], [a, b])),
    fc.tuple(leg, leg, leg).map(([a, b, c]) => lineTo([0, 0], [0, a], [b, a], [b, a - c])),
    leg.map((r) => circleCurve({ x: 0, y: 0 }, r)),
  );
  const rule = fc.record({
    pitchMm: fc.constantFrom(1.9, 2.7, 3.4, 4.5),
    with: fc.constantFrom('iron' as const, 'awl' as const),
    gives: fc.constantFrom('end' as const, 'start' as const, 'both ends' as const, 'length' as const),
    adjustShare: fc.constant(0.1),
    cornerDeg: fc.constantFrom(20, 30, 100),
    endGapMm: fc.constantFrom(0, 1.5),
  });

  test('when they are marked, every line has as many holes, in its own order, none beyond a drawn end', () => {
    fc.assert(
      fc.property(fc.array(curve, { minLength: 2, maxLength: 4 }), rule, (curves, how) => {
        const { main, marks } = match(how, ...curves);
        for (const each of marks) {
          expect(each.holes).toHaveLength(marks[main]!.holes.length);
          expect(each.usedPitchMm.min).toBeGreaterThan(0);
          if (how.gives !== 'length') expect(Math.min(each.startGapMm, each.endGapMm)).toBeGreaterThan(-1e-6);
        }
        if (how.with === 'iron' && !marks[main]!.isClosed) {
          expect(marks[main]!.usedPitchMm.min).toBeCloseTo(how.pitchMm, 6);
          expect(marks[main]!.usedPitchMm.max).toBeCloseTo(how.pitchMm, 6);
        }
      }),
      { seed: 33, numRuns: 300 },
    );
  });
});
