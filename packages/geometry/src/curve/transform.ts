import { roundCoordinate } from '../point.js';
import { applyAffine } from '../shape/affine.js';
import { sinCosDeg } from '../number/trigonometry.js';
import type { Affine, Curve, CurveSegment, Point } from '../types/shape.js';
import { arcCentre } from './arc.js';
import { ellipticalArcToCubics } from './ellipse.js';
import { curveSteps, mapSegment } from './path.js';

/** Columns of equal length at a right angle, to within one part in 1e9 (far below the grid on any hide). */
const SIMILARITY_TOLERANCE = 1e-9;

/**
 * The curve moved; the order of its points stays, also when mirrored. Arcs stay arcs under turning, moving,
 * mirroring and even scaling; under anything else they become cubics first (within 0.5 µm before the transform).
 */
export function transformCurve(m: Affine, curve: Curve): Curve {
  return moveCurve(m, curve, (p) => applyAffine(m, p));
}

/** The curve moved as by `transformCurve` and put on the 0.001 mm grid, in one pass: large drawings have millions of points. */
export function transformCurveToGrid(m: Affine, curve: Curve): Curve {
  return moveCurve(m, curve, ({ x, y }) => ({
    x: roundCoordinate(m.a * x + m.c * y + m.e),
    y: roundCoordinate(m.b * x + m.d * y + m.f),
  }));
}

function moveCurve(m: Affine, curve: Curve, move: (p: Point) => Point): Curve {
  const source = keepsCircles(m) ? curve : arcsToCubics(curve);
  return {
    start: move(source.start),
    segments: source.segments.map((segment) => mapSegment(segment, move)),
    closed: source.closed,
  };
}

/** Arcs replaced by cubics within 0.5 µm. */
export function arcsToCubics(curve: Curve): Curve {
  const segments = curveSteps(curve).flatMap(({ from, segment }) =>
    segment.kind === 'arc' ? arcToCubics(from, segment.via, segment.to) : [segment],
  );
  return { start: curve.start, segments, closed: curve.closed };
}

function arcToCubics(from: Point, via: Point, to: Point): CurveSegment[] {
  const circle = arcCentre(from, via, to);
  if (circle === 'straight') return [{ kind: 'line', to }];
  const { center, radius, startDeg, sweepDeg } = circle;
  const half = sinCosDeg(startDeg + sweepDeg / 2);
  const middle = { x: center.x + radius * half.cos, y: center.y + radius * half.sin };
  const part = { rx: radius, ry: radius, xAxisRotationDeg: 0, largeArc: false, sweep: sweepDeg > 0 };
  return [
    ...ellipticalArcToCubics({ ...part, start: from, to: middle }),
    ...ellipticalArcToCubics({ ...part, start: middle, to }),
  ];
}

function keepsCircles(m: Affine): boolean {
  const first = m.a * m.a + m.b * m.b;
  const second = m.c * m.c + m.d * m.d;
  const dot = m.a * m.c + m.b * m.d;
  const slack = SIMILARITY_TOLERANCE * (first + second);
  return Math.abs(first - second) <= slack && Math.abs(dot) <= slack;
}
