import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rotationDeg, applyAffine, translation, composeAffine } from '../shape/affine.js';
import type { Curve, Point } from '../types/shape.js';
import { ellipticalArcToCubics, ellipticalArcToSegments } from './ellipse.js';
import type { EllipticalArc } from './ellipse.js';
import { flattenCurve } from './flatten.js';
import { curveArea, curveBox, curveLength } from './measure.js';

function curveOf(arc: EllipticalArc, segments = ellipticalArcToSegments(arc)): Curve {
  return { start: arc.start, segments, closed: false };
}

const radius = fc.double({ min: 1, max: 300, noNaN: true });
const deg = fc.double({ min: -180, max: 180, noNaN: true });

describe('elliptical arcs of path data', () => {
  it('when an arc is cut from a known ellipse, its points lie on that ellipse and turn the way that was asked for', () => {
    fc.assert(
      fc.property(
        radius,
        radius,
        deg,
        deg,
        fc.double({ min: 10, max: 350, noNaN: true }),
        fc.boolean(),
        (rx, ry, turn, startDeg, span, sweep) => {
          fc.pre(Math.abs(span - 180) > 2);
          const frame = composeAffine(translation(40, -7), rotationDeg(turn));
          const back = composeAffine(rotationDeg(-turn), translation(-40, 7));
          const at = (angle: number): Point =>
            applyAffine(frame, {
              x: rx * Math.cos((angle * Math.PI) / 180),
              y: ry * Math.sin((angle * Math.PI) / 180),
            });
          const end = startDeg + (sweep ? span : -span);
          const arc = {
            start: at(startDeg),
            rx,
            ry,
            xAxisRotationDeg: turn,
            largeArc: span > 180,
            sweep,
            to: at(end),
          };
          const segments = ellipticalArcToCubics(arc);
          expect(segments[segments.length - 1]!.to).toEqual(arc.to);
          const smaller = Math.min(rx, ry);
          for (const p of flattenCurve(curveOf(arc, segments), 0.05)) {
            const q = applyAffine(back, p);
            expect(Math.abs(Math.hypot(q.x / rx, q.y / ry) - 1) * smaller).toBeLessThan(0.002);
          }
          // area between the arc and the two rays to the centre: rx ry span / 2
          const centre = applyAffine(frame, { x: 0, y: 0 });
          const sector: Curve = {
            start: centre,
            segments: [{ kind: 'line', to: arc.start }, ...segments, { kind: 'line', to: centre }],
            closed: true,
          };
          const area = ((sweep ? 1 : -1) * (rx * ry * span * Math.PI)) / 360;
          expect(Math.abs(curveArea(sector) - area)).toBeLessThan(0.001 * (rx + ry) * 4);
        },
      ),
      { seed: 1, numRuns: 100 },
    );
  });

  // The example of SVG 2, 9.3.8: a pie of three quarters, M300,200 h-150 a150,150 0 1,0 150,-150 z.
  it('when the arc is a circle, it is a circular arc of the right quarter turns', () => {
    const arc = {
      start: { x: 150, y: 200 },
      rx: 150,
      ry: 150,
      xAxisRotationDeg: 0,
      largeArc: true,
      sweep: false,
      to: { x: 300, y: 50 },
    };
    const segments = ellipticalArcToSegments(arc);
    expect(segments.every(({ kind }) => kind === 'arc')).toBe(true);
    expect(curveLength(curveOf(arc))).toBeCloseTo(1.5 * Math.PI * 150, 6);
    const box = curveBox(curveOf(arc));
    expect([box.minX, box.minY, box.maxX, box.maxY].map((n) => Math.round(n * 1e6) / 1e6)).toEqual([
      150, 50, 450, 350,
    ]);
  });

  it('when the radii are too small to reach, they are scaled up evenly (SVG 2, B.2.5)', () => {
    const arc = {
      start: { x: 0, y: 0 },
      rx: 1,
      ry: 1,
      xAxisRotationDeg: 15,
      largeArc: false,
      sweep: true,
      to: { x: 20, y: 0 },
    };
    expect(curveLength(curveOf(arc))).toBeCloseTo(Math.PI * 10, 6);
    expect(curveBox(curveOf(arc)).minY).toBeCloseTo(-10, 6);
  });

  it('when a radius is nothing it is a line, when the ends are one point it is nothing, and signs of radii do not count', () => {
    const arc = {
      start: { x: 0, y: 0 },
      rx: 0,
      ry: 5,
      xAxisRotationDeg: 0,
      largeArc: false,
      sweep: true,
      to: { x: 8, y: 0 },
    };
    expect(ellipticalArcToSegments(arc)).toEqual([{ kind: 'line', to: arc.to }]);
    expect(ellipticalArcToCubics({ ...arc, rx: 3, to: arc.start })).toEqual([]);
    expect(ellipticalArcToCubics({ ...arc, rx: -6, ry: 5 })).toEqual(
      ellipticalArcToCubics({ ...arc, rx: 6, ry: 5 }),
    );
  });
});
