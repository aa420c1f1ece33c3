import fc from 'fast-check';
import { circleCurve, curveFromPolyline } from '@hidebound/geometry';
import type { Curve, CurveSegment, Point } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
import type { StitchMarks } from '../model/stitch.js';
import { stitchMarks } from './marks-along.js';
import type { MarkRule } from './marks-along.js';
import { fineChords, placeOnChords } from './test-chords.js';

const IRON: MarkRule = {
  pitchMm: 3.4,
  with: 'iron',
  gives: 'both ends',
  adjustShare: 0.1,
  cornerDeg: 30,
  endGapMm: 0,
};
const AWL: MarkRule = { ...IRON, with: 'awl' };

const mark = (curve: Curve, rule: MarkRule): StitchMarks =>
  stitchMarks(curve, rule, { piece: 'p', line: 'l' });
const lineTo = (...points: readonly (readonly [number, number])[]): Curve =>
  curveFromPolyline(
    points.map(([x, y]) => ({ x, y })),
    false,
  );
const closedLine = (...points: readonly (readonly [number, number])[]): Curve =>
  curveFromPolyline(
    points.map(([x, y]) => ({ x, y })),
    true,
  );
function expectGave({ gave }: StitchMarks, what: StitchMarks['gave']['what'], changeMm: number): void {
  expect(gave.what).toBe(what);
  expect(gave.changeMm).toBeCloseTo(changeMm, 6);
}
const xs = ({ holes }: StitchMarks): number[] => holes.map(({ at }) => Number(at.x.toFixed(6)));

describe('with an iron along a straight line', () => {
  const line = lineTo([0, 0], [20, 0]);

  test('when the ends give, five pitches of 3.4 mm leave 1.5 mm at each end', () => {
    const marks = mark(line, IRON);
    expect(xs(marks)).toEqual([1.5, 4.9, 8.3, 11.7, 15.1, 18.5]);
    expectGave(marks, 'end gap', 3);
    expect(marks.startGapMm).toBeCloseTo(1.5, 9);
    expect(marks.endGapMm).toBeCloseTo(1.5, 9);
    expect(marks.sewnMm).toBeCloseTo(17, 9);
  });

  test('when one end gives, the holes start at the other', () => {
    expect(xs(mark(line, { ...IRON, gives: 'end' }))[0]).toBe(0);
    expect(xs(mark(line, { ...IRON, gives: 'start' })).at(-1)).toBe(20);
  });

  test('when the length gives, the nearest number of pitches goes, and the change is told', () => {
    const longer = mark(line, { ...IRON, gives: 'length' });
    expect(xs(longer)).toEqual([0, 3.4, 6.8, 10.2, 13.6, 17, 20.4]);
    expectGave(longer, 'length', 0.4);
    const shorter = mark(lineTo([0, 0], [18, 0]), { ...IRON, gives: 'length' });
    expectGave(shorter, 'length', -1);
  });

  test('when an end gap is kept, no hole lies within it', () => {
    const marks = mark(line, { ...IRON, endGapMm: 3 });
    expect(marks.holes).toHaveLength(5);
    expect(marks.startGapMm).toBeCloseTo(3.2, 9);
    expect(marks.gave.changeMm).toBeCloseTo(0.4, 9);
  });

  test('when the line is ten pitches long but for rounding, it has eleven holes and nothing gives', () => {
    const marks = mark(lineTo([0, 0], [33.999999999, 0]), IRON);
    expect(marks.holes).toHaveLength(11);
    expect(marks.gave.what).toBe('nothing');
  });

  test('when the line bends at corners, the pitch is kept along it and the corners passed over are counted', () => {
    const marks = mark(lineTo([0, 0], [10, 0], [10, 20]), IRON);
    expect(marks.usedPitchMm.min).toBeCloseTo(3.4, 9);
    expect(marks.usedPitchMm.max).toBeCloseTo(3.4, 9);
    expect(marks.cornersMissed).toBe(1);
  });
});

describe('around closed lines', () => {
  // Circumference 2 pi r: r = 10 is 62.832 mm, 18 pitches of 3.4 mm are 61.2 mm.
  const circle = circleCurve({ x: 5, y: -3 }, 10);

  test('when an iron goes around a circle, the last stitch tells what is left, or by how much it is too long', () => {
    const marks = mark(circle, IRON);
    expect(marks.holes).toHaveLength(18);
    expectGave(marks, 'last stitch', 20 * Math.PI - 61.2);
    expectGave(mark(circle, { ...IRON, gives: 'length' }), 'length', 61.2 - 20 * Math.PI);
    const stepDeg = (3.4 / 10) * (180 / Math.PI);
    marks.holes.forEach(({ at, angleDeg }, i) => {
      expect(at.x).toBeCloseTo(5 + 10 * Math.cos((i * stepDeg * Math.PI) / 180), 6);
      expect(at.y).toBeCloseTo(-3 + 10 * Math.sin((i * stepDeg * Math.PI) / 180), 6);
      expect(angleDeg).toBeCloseTo((90 + i * stepDeg) % 360, 6);
    });
  });

  test('when an awl goes around a circle, every stitch is as long', () => {
    const marks = mark(circle, AWL);
    expect(marks.holes).toHaveLength(18);
    expect(marks.usedPitchMm.min).toBeCloseTo((20 * Math.PI) / 18, 6);
    expect(marks.usedPitchMm.max).toBeCloseTo((20 * Math.PI) / 18, 6);
  });

  test('when an awl goes around a rectangle, each corner has a hole that looks along the bisector', () => {
    const marks = mark(closedLine([0, 0], [40, 0], [40, 17], [0, 17]), AWL);
    // 40 / 3.4 = 11.8 and 17 / 3.4 = 5
    expect(marks.holes).toHaveLength(2 * (12 + 5));
    const corners = marks.holes.filter(({ isCorner }) => isCorner);
    expect(corners.map(({ at }) => [at.x, at.y])).toEqual([
      [0, 0],
      [40, 0],
      [40, 17],
      [0, 17],
    ]);
    expect(corners.map(({ angleDeg }) => angleDeg)).toEqual([315, 45, 135, 225]);
    expect(marks.cornersMissed).toBe(0);
  });
});

describe('with an awl along an open line', () => {
  test('when a line turns sharply, ends and corner get holes and each leg its own pitch', () => {
    const marks = mark(lineTo([0, 0], [33, 0], [33, 10]), AWL);
    expect(marks.holes).toHaveLength(10 + 3 + 1);
    expect(marks.usedPitchMm.min).toBeCloseTo(3.3, 9);
    expect(marks.usedPitchMm.max).toBeCloseTo(10 / 3, 9);
    expectGave(marks, 'pitch', -0.1);
    expect([marks.startGapMm, marks.endGapMm]).toEqual([0, 0]);
  });

  test('when a turn is gentler than the stated angle, it is no corner', () => {
    const bend = lineTo([0, 0], [30, 0], [56, 15]);
    expect(mark(bend, AWL).holes.some(({ isCorner }) => isCorner)).toBe(false);
    expect(mark(bend, { ...AWL, cornerDeg: 25 }).holes.filter(({ isCorner }) => isCorner)).toHaveLength(1);
  });

  test('when two arcs meet without a turn, there is no corner', () => {
    const wave: Curve = {
      start: { x: 0, y: 0 },
      segments: [
        { kind: 'arc', via: { x: 10, y: -10 }, to: { x: 20, y: 0 } },
        { kind: 'arc', via: { x: 30, y: 10 }, to: { x: 40, y: 0 } },
      ],
      closed: false,
    };
    const marks = mark(wave, AWL);
    expect(marks.lengthMm).toBeCloseTo(20 * Math.PI, 6);
    expect(marks.holes).toHaveLength(Math.round((20 * Math.PI) / 3.4) + 1);
    expect(marks.holes.some(({ isCorner }) => isCorner)).toBe(false);
  });
});

describe('lines that hold no stitch', () => {
  test.each([
    ['an open line', lineTo([0, 0], [3.3, 0]), IRON],
    ['a line that its end gaps use up', lineTo([0, 0], [9, 0]), { ...IRON, endGapMm: 3 }],
    ['a closed line', circleCurve({ x: 0, y: 0 }, 0.5), IRON],
    ['a line too short for the awl, too', lineTo([0, 0], [3, 0]), AWL],
  ])('when it is %s, it is refused in one sentence', (_, curve, rule) => {
    const run = () => stitchMarks(curve, rule, { article: 'bag', piece: 'front', line: 'edge' });
    expect(run).toThrow(expect.objectContaining({ code: 'stitch-line-too-short' }));
    expect(run).toThrow(
      /^The stitch line "edge" on "front" of bag is [\d.]+ mm long.*shorter than one pitch of 3\.4 mm;.*\.$/,
    );
  });

  test('when the awl may shorten its pitch far enough, a line shorter than the pitch gets its one stitch', () => {
    expect(mark(lineTo([0, 0], [3.2, 0]), AWL).holes).toHaveLength(2);
  });
});

const place: fc.Arbitrary<Point> = fc.record({
  x: fc.integer({ min: 0, max: 400 }),
  y: fc.integer({ min: 0, max: 400 }),
});
const segment: fc.Arbitrary<CurveSegment> = fc.oneof(
  fc.record({ kind: fc.constant('line' as const), to: place }),
  fc.record({ kind: fc.constant('arc' as const), via: place, to: place }),
  fc.record({ kind: fc.constant('cubic' as const), handle1: place, handle2: place, to: place }),
);
const curve: fc.Arbitrary<Curve> = fc
  .record({ start: place, segments: fc.array(segment, { minLength: 1, maxLength: 5 }), closed: fc.boolean() })
  .map(({ start, segments, closed }) => ({
    start,
    segments: closed ? [...segments, { kind: 'line' as const, to: start }] : segments,
    closed,
  }));
const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
const pitch = fc.integer({ min: 19, max: 80 }).map((tenths) => tenths / 10);

describe('any line of lines, arcs and cubics', () => {
  test('when an iron marks it, every hole is exactly one pitch along the line from the one before', () => {
    fc.assert(
      fc.property(curve, pitch, (drawn, pitchMm) => {
        const rule = { ...IRON, pitchMm, gives: 'end' as const };
        const chords = fineChords(drawn);
        fc.pre(chords.lengthMm > 3 * pitchMm);
        const marks = mark(drawn, rule);
        expect(Math.abs(marks.lengthMm - chords.lengthMm)).toBeLessThan(0.01);
        marks.holes.forEach(({ at }, i) => {
          expect(apart(at, placeOnChords(chords, i * pitchMm))).toBeLessThan(0.01);
        });
        const leftMm = chords.lengthMm - (marks.holes.length - 1) * pitchMm;
        if (!drawn.closed) expect(leftMm).toBeLessThan(pitchMm + 0.01);
        if (drawn.closed) expect(Math.abs(leftMm - pitchMm)).toBeLessThan(pitchMm / 2 + 0.01);
      }),
      { seed: 31, numRuns: 150 },
    );
  });

  test('when an awl marks it, stitches between two corners are alike, and ends and corners have holes', () => {
    fc.assert(
      fc.property(curve, pitch, (drawn, pitchMm) => {
        const chords = fineChords(drawn);
        fc.pre(chords.lengthMm > 3 * pitchMm);
        const marks = mark(drawn, { ...AWL, pitchMm });
        expect(marks.cornersMissed).toBe(0);
        const { holes } = marks;
        if (!drawn.closed) {
          expect(apart(holes[0]!.at, drawn.start)).toBeLessThan(1e-9);
          expect(apart(holes.at(-1)!.at, drawn.segments.at(-1)!.to)).toBeLessThan(1e-5);
        }
        expect(marks.usedPitchMm.mean * (drawn.closed ? holes.length : holes.length - 1)).toBeCloseTo(
          drawn.closed ? marks.lengthMm : marks.sewnMm,
          6,
        );
        // A stretch that holds at least five pitches is off by a tenth at the most: half a pitch shared by five.
        const longEnough = holes.every(({ isCorner }) => !isCorner) && marks.lengthMm > 5 * pitchMm;
        if (longEnough)
          expect(Math.abs(marks.usedPitchMm.max - pitchMm)).toBeLessThanOrEqual(pitchMm * 0.1 + 1e-6);
        if (longEnough) expect(marks.usedPitchMm.max - marks.usedPitchMm.min).toBeLessThan(1e-6);
      }),
      { seed: 32, numRuns: 150 },
    );
  });
});
