import {
  arcCentre,
  circleCurve,
  curveArea,
  curveFromPolyline,
  curveSteps,
  flattenCurve,
  pointToRing,
} from '@hidebound/geometry';
import type { Curve, Point } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
import { fitLine } from './fit-line.js';
import { kindsOf, placesAlong } from './test-places.js';

const STEP_MM = 0.127;
const NOISE_MM = 0.04;

function turned(curve: Curve, deg: number, by: Point): Curve {
  const [c, s] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
  const move = ({ x, y }: Point) => ({ x: c * x - s * y + by.x, y: s * x + c * y + by.y });
  return {
    start: move(curve.start),
    closed: curve.closed,
    segments: curve.segments.map((segment) =>
      segment.kind === 'arc'
        ? { kind: 'arc', via: move(segment.via), to: move(segment.to) }
        : { kind: 'line', to: move(segment.to) },
    ),
  };
}

function roundedRectangle(w: number, h: number, r: number): Curve {
  const k = r * (1 - Math.SQRT1_2);
  return {
    start: { x: r, y: 0 },
    closed: true,
    segments: [
      { kind: 'line', to: { x: w - r, y: 0 } },
      { kind: 'arc', via: { x: w - k, y: k }, to: { x: w, y: r } },
      { kind: 'line', to: { x: w, y: h - r } },
      { kind: 'arc', via: { x: w - k, y: h - k }, to: { x: w - r, y: h } },
      { kind: 'line', to: { x: r, y: h } },
      { kind: 'arc', via: { x: k, y: h - k }, to: { x: 0, y: h - r } },
      { kind: 'line', to: { x: 0, y: r } },
      { kind: 'arc', via: { x: k, y: k }, to: { x: r, y: 0 } },
    ],
  };
}

/** The farthest that either line lies from the other, mm. */
function apart(a: Curve, b: Curve): number {
  const [p, q] = [flattenCurve(a, 0.002).slice(0, -1), flattenCurve(b, 0.002).slice(0, -1)];
  return Math.max(...p.map((at) => pointToRing(at, q)), ...q.map((at) => pointToRing(at, p)));
}

function radii(curve: Curve): number[] {
  return curveSteps(curve).flatMap(({ from, segment }) => {
    const circle = segment.kind === 'arc' ? arcCentre(from, segment.via, segment.to) : 'straight';
    return circle === 'straight' ? [] : [circle.radius];
  });
}

// What is fitted is held against the true line that the places were taken from: plain geometry.
describe('clean lines through measured places', () => {
  test.each([3, 10, 25])(
    'when they lie on a rectangle rounded by %i mm, it is four lines and four arcs',
    (r) => {
      const truth = turned(roundedRectangle(120, 80, r), 17, { x: 300, y: 40 });
      const fit = fitLine(placesAlong(truth, STEP_MM, NOISE_MM, 5), { closed: true })!;
      expect(kindsOf(fit.curve)).toBe('4 lines, 4 arcs');
      expect(apart(fit.curve, truth)).toBeLessThan(0.1);
      for (const radius of radii(fit.curve)) expect(Math.abs(radius - r)).toBeLessThan(0.15);
    },
  );

  test('when they lie on a rectangle, its corners are sharp and right', () => {
    const truth = turned(
      curveFromPolyline(
        [
          { x: 0, y: 0 },
          { x: 90, y: 0 },
          { x: 90, y: 50 },
          { x: 0, y: 50 },
        ],
        true,
      ),
      -31,
      { x: 10, y: 10 },
    );
    const fit = fitLine(placesAlong(truth, STEP_MM, NOISE_MM, 9), { closed: true })!;
    expect(kindsOf(fit.curve)).toBe('4 lines, 0 arcs');
    expect(apart(fit.curve, truth)).toBeLessThan(0.06);
    const steps = curveSteps(fit.curve);
    steps.forEach(({ from, segment }, i) => {
      const next = steps[(i + 1) % 4]!.segment.to;
      const [ax, ay] = [segment.to.x - from.x, segment.to.y - from.y];
      const [bx, by] = [next.x - segment.to.x, next.y - segment.to.y];
      const cos = (ax * bx + ay * by) / (Math.hypot(ax, ay) * Math.hypot(bx, by));
      expect(Math.abs(cos)).toBeLessThan(1e-4);
    });
  });

  test('when a corner is one degree off square, it stays so', () => {
    const slant = 50 * Math.tan(Math.PI / 180);
    const truth = curveFromPolyline(
      [
        { x: 0, y: 0 },
        { x: 90, y: 0 },
        { x: 90 + slant, y: 50 },
        { x: 0, y: 50 },
      ],
      true,
    );
    const fit = fitLine(placesAlong(truth, STEP_MM, NOISE_MM, 2), { closed: true })!;
    expect(apart(fit.curve, truth)).toBeLessThan(0.06);
  });

  test('when they lie on a strap with two half round ends, it is two lines and two half turns', () => {
    const truth: Curve = turned(
      {
        start: { x: 0, y: 0 },
        closed: true,
        segments: [
          { kind: 'line', to: { x: 200, y: 0 } },
          { kind: 'arc', via: { x: 215, y: 15 }, to: { x: 200, y: 30 } },
          { kind: 'line', to: { x: 0, y: 30 } },
          { kind: 'arc', via: { x: -15, y: 15 }, to: { x: 0, y: 0 } },
        ],
      },
      73,
      { x: 0, y: 0 },
    );
    const fit = fitLine(placesAlong(truth, STEP_MM, NOISE_MM, 4), { closed: true })!;
    expect(kindsOf(fit.curve)).toBe('2 lines, 2 arcs');
    expect(apart(fit.curve, truth)).toBeLessThan(0.1);
    for (const radius of radii(fit.curve)) expect(Math.abs(radius - 15)).toBeLessThan(0.1);
  });

  test('when they lie on a circle, it is one', () => {
    const truth = circleCurve({ x: 40, y: 30 }, 22);
    const fit = fitLine(placesAlong(truth, STEP_MM, NOISE_MM, 4), { closed: true })!;
    expect(kindsOf(fit.curve)).toBe('0 lines, 2 arcs');
    expect(apart(fit.curve, truth)).toBeLessThan(0.05);
  });

  test('when they lie on an ellipse, arcs follow it closely and smoothly', () => {
    const corners = Array.from({ length: 720 }, (_, i) => {
      const a = (i * Math.PI) / 360;
      return { x: 70 * Math.cos(a), y: 40 * Math.sin(a) };
    });
    const truth = curveFromPolyline(corners, true);
    const fit = fitLine(placesAlong(truth, STEP_MM, NOISE_MM, 4), { closed: true })!;
    expect(fit.curve.segments.length).toBeLessThanOrEqual(14);
    expect(apart(fit.curve, truth)).toBeLessThan(0.2);
    // Area of an ellipse: π a b.
    expect(Math.abs(curveArea(fit.curve)) / (Math.PI * 70 * 40)).toBeCloseTo(1, 3);
  });

  test('when an open line of places is straight, it is one line from end to end', () => {
    const truth = curveFromPolyline(
      [
        { x: 5, y: 5 },
        { x: 80, y: 25 },
      ],
      false,
    );
    const fit = fitLine(placesAlong(truth, 0.2, NOISE_MM, 8), { closed: false })!;
    expect(kindsOf(fit.curve)).toBe('1 lines, 0 arcs');
    expect(fit.curve.start.x).toBeCloseTo(5, 0);
    expect(fit.meanOffMm).toBeLessThan(NOISE_MM);
  });
});
