import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { points } from '../../test-support/shapes.js';
import { composeAffine, rotationDeg, scaling, translation, MIRROR_X } from '../shape/affine.js';
import { pointToSegment } from '../shape/distance.js';
import { ringArea } from '../shape/ring.js';
import type { Curve, Point, Polyline } from '../types/shape.js';
import { arcCentre, pointOnArc } from './arc.js';
import { cubicInflections, cubicPoint, splitCubicAt } from './cubic.js';
import type { Cubic } from './cubic.js';
import { flattenCurve } from './flatten.js';
import { curveArea, curveBox, curveLength } from './measure.js';
import {
  circleCurve,
  curveCorners,
  curveEndPoints,
  curveFromPolyline,
  reverseCurve,
  roundCurve,
} from './path.js';
import { transformCurve, transformCurveToGrid } from './transform.js';

const coordinate = fc.integer({ min: -100_000, max: 100_000 }).map((n) => n / 1000);
const place: fc.Arbitrary<Point> = fc.record({ x: coordinate, y: coordinate });
const cubic: fc.Arbitrary<Cubic> = fc.record({ p0: place, p1: place, p2: place, p3: place });

function curveOf({ p0, p1, p2, p3 }: Cubic): Curve {
  return { start: p0, segments: [{ kind: 'cubic', handle1: p1, handle2: p2, to: p3 }], closed: false };
}

function distanceToChain(p: Point, chain: Polyline): number {
  return Math.min(...chain.slice(1).map((q, i) => pointToSegment(p, chain[i]!, q)));
}

describe('arcs', () => {
  it('when an arc passes through three points, centre, radius and sense of turning follow', () => {
    // from the right, over the bottom (y down), to the left: clockwise as seen
    const half = arcCentre({ x: 10, y: 0 }, { x: 0, y: 10 }, { x: -10, y: 0 });
    expect(half).toEqual({ center: { x: 0, y: 0 }, radius: 10, startDeg: 0, sweepDeg: 180 });
    const most = arcCentre({ x: 10, y: 0 }, { x: -10, y: 0 }, { x: 0, y: 10 });
    expect(most).toEqual({ center: { x: 0, y: 0 }, radius: 10, startDeg: 0, sweepDeg: -270 });
  });

  it('when an arc is given by circle and angles, its three points give it back', () => {
    fc.assert(
      fc.property(
        place,
        fc.double({ min: 1, max: 500, noNaN: true }),
        coordinate,
        fc.integer({ min: -350, max: 350 }),
        (center, radius, startDeg, sweepDeg) => {
          fc.pre(Math.abs(sweepDeg) > 5);
          const circle = { center, radius, startDeg, sweepDeg };
          const found = arcCentre(pointOnArc(circle, 0), pointOnArc(circle, 0.4), pointOnArc(circle, 1));
          if (found === 'straight') throw new Error('this arc is not straight');
          expect(found.radius / radius).toBeCloseTo(1, 7);
          expect(Math.hypot(found.center.x - center.x, found.center.y - center.y) / radius).toBeLessThan(
            1e-7,
          );
          expect(found.sweepDeg).toBeCloseTo(sweepDeg, 4);
        },
      ),
      { seed: 1, numRuns: 200 },
    );
  });

  it('when the three points lie on one line, or start and end are one, it is straight', () => {
    expect(arcCentre({ x: 0, y: 0 }, { x: 5, y: 5 }, { x: 10, y: 10 })).toBe('straight');
    expect(arcCentre({ x: 0, y: 0 }, { x: 5, y: 5 }, { x: 0, y: 0 })).toBe('straight');
  });
});

describe('curves', () => {
  // Handbook facts: circle 2 pi r and pi r²; the cubic from (0,0) over (0,1), (1,1) to (1,0) encloses 0.6 with its chord.
  it('when length and area have closed forms, they are met', () => {
    const circle = circleCurve({ x: 3, y: 4 }, 25);
    expect(curveLength(circle)).toBeCloseTo(2 * Math.PI * 25, 9);
    expect(curveArea(circle)).toBeCloseTo(Math.PI * 625, 9);
    expect(curveArea(reverseCurve(circle))).toBeCloseTo(-Math.PI * 625, 9);
    const arch = curveOf({ p0: { x: 0, y: 0 }, p1: { x: 0, y: 1 }, p2: { x: 1, y: 1 }, p3: { x: 1, y: 0 } });
    expect(
      curveArea({
        ...arch,
        segments: [...arch.segments, { kind: 'line', to: { x: 0, y: 0 } }],
        closed: true,
      }),
    ).toBeCloseTo(-0.6, 12);
    expect(curveLength(curveFromPolyline(points([0, 0], [3, 4], [3, 9]), false))).toBe(10);
  });

  it('when a cubic is a straight line at even speed, its length is the distance', () => {
    expect(
      curveLength(
        curveOf({ p0: { x: 0, y: 0 }, p1: { x: 1, y: 0 }, p2: { x: 2, y: 0 }, p3: { x: 3, y: 0 } }),
      ),
    ).toBeCloseTo(3, 9);
  });

  it('when a cubic is measured, fine chords give the same length, area and box', () => {
    fc.assert(
      fc.property(cubic, (c) => {
        const curve = curveOf(c);
        const chords = Array.from({ length: 4001 }, (_, i) => cubicPoint(c, i / 4000));
        const length = chords
          .slice(1)
          .reduce((sum, p, i) => sum + Math.hypot(p.x - chords[i]!.x, p.y - chords[i]!.y), 0);
        expect(Math.abs(curveLength(curve) - length)).toBeLessThan(1e-3);
        const closed: Curve = {
          ...curve,
          segments: [...curve.segments, { kind: 'line', to: c.p0 }],
          closed: true,
        };
        expect(Math.abs(curveArea(closed) - ringArea(chords))).toBeLessThan(0.02);
        const box = curveBox(curve);
        expect(box.minX).toBeLessThanOrEqual(Math.min(...chords.map((p) => p.x)) + 1e-9);
        expect(box.minX).toBeGreaterThan(Math.min(...chords.map((p) => p.x)) - 1e-3);
        expect(box.maxY).toBeGreaterThanOrEqual(Math.max(...chords.map((p) => p.y)) - 1e-9);
        expect(box.maxY).toBeLessThan(Math.max(...chords.map((p) => p.y)) + 1e-3);
      }),
      { seed: 2, numRuns: 40 },
    );
  });

  it('when an arc bulges beyond its ends, the box holds the bulge', () => {
    const box = curveBox({
      start: { x: 0, y: 0 },
      segments: [{ kind: 'arc', via: { x: 5, y: -5 }, to: { x: 10, y: 0 } }],
      closed: false,
    });
    for (const [side, expected] of [
      ['minX', 0],
      ['minY', -5],
      ['maxX', 10],
      ['maxY', 0],
    ] as const)
      expect(box[side]).toBeCloseTo(expected, 9);
    expect(curveBox(circleCurve({ x: 1, y: 2 }, 7))).toEqual({ minX: -6, minY: -5, maxX: 8, maxY: 9 });
  });

  it('when a curve is flattened, chords stay within the tolerance and end where it ends', () => {
    fc.assert(
      fc.property(cubic, fc.constantFrom(0.5, 0.05), (c, tolerance) => {
        const chain = flattenCurve(curveOf(c), tolerance);
        expect(chain[chain.length - 1]).toEqual(c.p3);
        for (let i = 0; i <= 200; i++)
          expect(distanceToChain(cubicPoint(c, i / 200), chain)).toBeLessThanOrEqual(tolerance + 1e-9);
      }),
      { seed: 3, numRuns: 40 },
    );
    const circle = flattenCurve(circleCurve({ x: 0, y: 0 }, 100), 0.05);
    for (const p of circle) expect(Math.hypot(p.x, p.y)).toBeCloseTo(100, 9);
    // sagitta r (1 - cos(pi / n)) <= 0.05 needs 100 chords at r = 100
    expect(circle.length - 1).toBe(100);
  });

  it('when a curve is all lines, flattening keeps its corners exactly', () => {
    const corners = points([0.1, 0.2], [70.711, 0.3], [35.355, 35.355]);
    expect(flattenCurve(curveFromPolyline(corners, false))).toEqual(corners);
    expect(flattenCurve(curveFromPolyline(corners, true))).toEqual([...corners, corners[0]]);
    expect(curveCorners(curveFromPolyline(corners, true))).toEqual([...corners, corners[0]]);
    expect(() => curveFromPolyline([{ x: 0, y: 0 }], false)).toThrow(
      expect.objectContaining({ code: 'empty-shape' }),
    );
  });

  it('when a curve is drawn backwards twice, it is the same; once, its ends change places', () => {
    fc.assert(
      fc.property(cubic, place, place, (c, via, to) => {
        const curve: Curve = {
          ...curveOf(c),
          segments: [...curveOf(c).segments, { kind: 'arc', via, to }, { kind: 'line', to: c.p1 }],
        };
        expect(reverseCurve(reverseCurve(curve))).toEqual(curve);
        const ends = curveEndPoints(curve);
        expect(curveEndPoints(reverseCurve(curve))).toEqual({ start: ends.end, end: ends.start });
        expect(curveLength(reverseCurve(curve))).toBeCloseTo(curveLength(curve), 4);
      }),
      { seed: 4, numRuns: 50 },
    );
  });

  it('when a curve is turned, moved, mirrored and scaled evenly, its length scales and its area keeps its size', () => {
    const shape: Curve = {
      start: { x: 0, y: 0 },
      segments: [
        { kind: 'arc', via: { x: 10, y: -8 }, to: { x: 20, y: 0 } },
        { kind: 'cubic', handle1: { x: 30, y: 10 }, handle2: { x: 10, y: 20 }, to: { x: 0, y: 25 } },
        { kind: 'line', to: { x: 0, y: 0 } },
      ],
      closed: true,
    };
    for (const scale of [1e-3, 1, 1e3]) {
      const m = composeAffine(
        translation(5, -9),
        composeAffine(rotationDeg(33), composeAffine(scaling(scale), MIRROR_X)),
      );
      expect(transformCurveToGrid(m, shape)).toEqual(roundCurve(transformCurve(m, shape)));
      const moved = transformCurve(m, shape);
      expect(moved.segments.map(({ kind }) => kind)).toEqual(['arc', 'cubic', 'line']);
      expect(curveLength(moved) / scale).toBeCloseTo(curveLength(shape), 3);
      expect(curveArea(moved) / (scale * scale)).toBeCloseTo(-curveArea(shape), 6);
    }
  });

  it('when an arc is scaled unevenly, it becomes cubics of the ellipse', () => {
    const ellipse = transformCurve(scaling(2, 0.5), circleCurve({ x: 0, y: 0 }, 10));
    expect(ellipse.segments.every(({ kind }) => kind === 'cubic')).toBe(true);
    // area of an ellipse: pi a b
    expect(curveArea(ellipse)).toBeCloseTo(Math.PI * 20 * 5, 1);
    for (const p of flattenCurve(ellipse, 0.01)) expect(Math.hypot(p.x / 2, p.y * 2)).toBeCloseTo(10, 2);
  });

  it('when a curve is rounded, its points are on the grid and it stays closed', () => {
    const rounded = roundCurve(circleCurve({ x: 0.12345, y: 0 }, 3.00049));
    expect(rounded.start).toEqual({ x: 3.124, y: 0 });
    expect(curveEndPoints(rounded).end).toEqual(rounded.start);
  });
});

describe('cubics', () => {
  it('when a cubic has the form of an S, it turns over once, in its middle', () => {
    expect(
      cubicInflections({
        p0: { x: 0, y: 0 },
        p1: { x: 10, y: 0 },
        p2: { x: 0, y: 10 },
        p3: { x: 10, y: 10 },
      }),
    ).toEqual([0.5]);
    expect(
      cubicInflections({ p0: { x: 0, y: 0 }, p1: { x: 0, y: 5 }, p2: { x: 10, y: 5 }, p3: { x: 10, y: 0 } }),
    ).toEqual([]);
  });

  it('when a cubic is split at its inflections, the parts bend one way each and lie on it', () => {
    fc.assert(
      fc.property(cubic, (c) => {
        const at = cubicInflections(c);
        const parts = splitCubicAt(c, at);
        const bounds = [0, ...at, 1];
        parts.forEach((part, k) => {
          const middle = cubicPoint(c, (bounds[k]! + bounds[k + 1]!) / 2);
          const found = cubicPoint(part, 0.5);
          expect(Math.hypot(found.x - middle.x, found.y - middle.y)).toBeLessThan(1e-9);
          expect(cubicInflections(part).filter((t) => t > 1e-4 && t < 1 - 1e-4)).toEqual([]);
        });
      }),
      { seed: 5, numRuns: 200 },
    );
  });
});
