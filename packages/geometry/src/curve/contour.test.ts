import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pointInRing } from '../shape/contain.js';
import { pointToRing } from '../shape/distance.js';
import { rotationDeg, translation, composeAffine } from '../shape/affine.js';
import { ringArea } from '../shape/ring.js';
import { findSelfCrossing } from '../shape/self-contact.js';
import type { Curve, Point, Ring } from '../types/shape.js';
import { containedRegion, containedRing, containingRegion, containingRing } from './contour.js';
import { flattenCurve } from './flatten.js';
import { curveArea } from './measure.js';
import { circleCurve, curveFromPolyline, reverseCurve } from './path.js';
import { transformCurve } from './transform.js';

const MICRON = 0.001;

/** Points on the curve, about 0.05 mm apart or nearer where it bends. */
function samples(curve: Curve): readonly Point[] {
  const chords = flattenCurve(curve, 0.000_05);
  return chords.flatMap((a, i) => {
    const b = chords[i + 1];
    if (b === undefined) return [a];
    const n = Math.min(20, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / 0.5));
    return Array.from({ length: n }, (_, k) => ({
      x: a.x + ((b.x - a.x) * k) / n,
      y: a.y + ((b.y - a.y) * k) / n,
    }));
  });
}

function furthestOn(side: 'inside' | 'outside', points: readonly Point[], ring: Ring): number {
  return Math.max(0, ...points.filter((p) => pointInRing(p, ring) === side).map((p) => pointToRing(p, ring)));
}

function ringSamples(ring: Ring): readonly Point[] {
  return samples(curveFromPolyline(ring, true));
}

/** A blob: smooth or with corners, convex and hollow stretches, drawn round the origin. */
const blob = fc
  .array(
    fc.record({
      r: fc.double({ min: 20, max: 60, noNaN: true }),
      k: fc.double({ min: -0.4, max: 0.6, noNaN: true }),
      kind: fc.constantFrom('line', 'arc', 'cubic'),
    }),
    {
      minLength: 3,
      maxLength: 7,
    },
  )
  .map((spokes): Curve => {
    const n = spokes.length;
    const at = (i: number) => {
      const spoke = spokes[i % n]!;
      const angle = (2 * Math.PI * i) / n;
      return { x: spoke.r * Math.cos(angle), y: spoke.r * Math.sin(angle) };
    };
    const segments = spokes.map((spoke, i): Curve['segments'][number] => {
      const a = at(i);
      const b = i + 1 === n ? at(0) : at(i + 1);
      const out = { x: (b.y - a.y) * spoke.k * 0.3, y: -(b.x - a.x) * spoke.k * 0.3 };
      const part = (t: number, s: number) => ({
        x: a.x + (b.x - a.x) * t + out.x * s,
        y: a.y + (b.y - a.y) * t + out.y * s,
      });
      if (spoke.kind === 'line') return { kind: 'line', to: b };
      if (spoke.kind === 'arc') return { kind: 'arc', via: part(0.5, 1), to: b };
      return { kind: 'cubic', handle1: part(0.3, 1), handle2: part(0.7, i % 2 === 0 ? 1 : -1), to: b };
    });
    return { start: at(0), segments, closed: true };
  })
  .filter((curve) => findSelfCrossing(flattenCurve(curve, 0.01).slice(0, -1)) === undefined);

describe('contours', () => {
  it('when a closed curve is drawn round, the curve sticks out by no more than a micron and the ring stays within the tolerance', () => {
    fc.assert(
      fc.property(blob, fc.constantFrom(0.05, 0.5), (curve, tolerance) => {
        const ring = containingRing(curve, tolerance);
        const points = samples(curve);
        expect(furthestOn('outside', points, ring)).toBeLessThanOrEqual(MICRON);
        expect(Math.max(...ringSamples(ring).map((p) => pointToRing(p, points)))).toBeLessThanOrEqual(
          tolerance,
        );
        expect(Math.max(...points.map((p) => pointToRing(p, ring)))).toBeLessThanOrEqual(tolerance);
      }),
      { seed: 11, numRuns: 40 },
    );
  });

  it('when a ring is drawn within a closed curve, the curve lies within it by no more than a micron', () => {
    fc.assert(
      fc.property(blob, fc.constantFrom(0.05, 0.5), (curve, tolerance) => {
        const ring = containedRing(reverseCurve(curve), tolerance);
        const points = samples(curve);
        expect(furthestOn('inside', points, ring)).toBeLessThanOrEqual(MICRON);
        expect(Math.max(...ringSamples(ring).map((p) => pointToRing(p, points)))).toBeLessThanOrEqual(
          tolerance,
        );
        expect(Math.max(...points.map((p) => pointToRing(p, ring)))).toBeLessThanOrEqual(tolerance);
      }),
      { seed: 12, numRuns: 40 },
    );
  });

  it('when a curve is all lines, both rings are its corners exactly', () => {
    const corners = [
      { x: 0, y: 0 },
      { x: 70.711, y: 0 },
      { x: 35.355, y: 35.355 },
      { x: 0.001, y: 35.355 },
    ];
    for (const curve of [curveFromPolyline(corners, true), reverseCurve(curveFromPolyline(corners, true))]) {
      for (const ring of [containingRing(curve), containedRing(curve)]) {
        expect(ringArea(ring)).toBeGreaterThan(0);
        expect([...ring].sort((a, b) => a.x - b.x)).toEqual([...corners].sort((a, b) => a.x - b.x));
      }
    }
  });

  it('when a circle is drawn, the two areas take the true area between them', () => {
    for (const radius of [0.5, 1, 3, 40, 900]) {
      const circle = circleCurve({ x: 12.5, y: -7.25 }, radius);
      const area = Math.PI * radius * radius;
      expect(curveArea(circle)).toBeCloseTo(area, 6);
      expect(ringArea(containingRing(circle))).toBeGreaterThan(area - 2 * Math.PI * radius * MICRON);
      expect(ringArea(containedRing(circle))).toBeLessThan(area + 2 * Math.PI * radius * MICRON);
      expect(ringArea(containingRing(circle))).toBeLessThan(area + 2 * Math.PI * radius * 0.05 + 0.01);
    }
  });

  it('when two bulges meet in a cleft with one tangent, the ring does not cross itself and still holds the curve', () => {
    // two half circles side by side on a base: between them their tangents coincide
    const curve: Curve = {
      start: { x: 0, y: 0 },
      segments: [
        { kind: 'arc', via: { x: 10, y: -10 }, to: { x: 20, y: 0 } },
        { kind: 'arc', via: { x: 30, y: -10 }, to: { x: 40, y: 0 } },
        { kind: 'line', to: { x: 20, y: 30 } },
        { kind: 'line', to: { x: 0, y: 0 } },
      ],
      closed: true,
    };
    const ring = containingRing(curve);
    expect(findSelfCrossing(ring)).toBeUndefined();
    expect(furthestOn('outside', samples(curve), ring)).toBeLessThanOrEqual(MICRON);
  });

  it('when a region is drawn of curves, its openings shrink as its outline grows', () => {
    const outline = circleCurve({ x: 0, y: 0 }, 50);
    const opening = circleCurve({ x: 5, y: 0 }, 10);
    const piece = containingRegion(outline, [opening]);
    const hide = containedRegion(outline, [opening]);
    expect(ringArea(piece.openings[0]!)).toBeLessThan(0);
    expect(-ringArea(piece.openings[0]!)).toBeLessThan(Math.PI * 100);
    expect(-ringArea(hide.openings[0]!)).toBeGreaterThan(Math.PI * 100);
    expect(ringArea(piece.outer)).toBeGreaterThan(ringArea(hide.outer));
  });

  it('when the curve is turned and moved, the area of its ring changes by no more than rounding', () => {
    fc.assert(
      fc.property(blob, fc.integer({ min: 0, max: 3 }), (curve, quarter) => {
        const moved = transformCurve(composeAffine(translation(312, -45), rotationDeg(90 * quarter)), curve);
        const before = ringArea(containingRing(curve));
        expect(ringArea(containingRing(moved))).toBeCloseTo(before, -Math.log10(400 * 2 * MICRON));
      }),
      { seed: 13, numRuns: 30 },
    );
  });

  it('when a line is open or encloses nothing, it is refused by code', () => {
    const open = curveFromPolyline(
      [
        { x: 0, y: 0 },
        { x: 1, y: 0 },
        { x: 1, y: 1 },
      ],
      false,
    );
    expect(() => containingRing(open)).toThrow(expect.objectContaining({ code: 'not-closed' }));
    const stroke = curveFromPolyline(
      [
        { x: 0, y: 0 },
        { x: 1, y: 0 },
      ],
      true,
    );
    expect(() => containingRing(stroke)).toThrow(expect.objectContaining({ code: 'empty-shape' }));
  });
});
