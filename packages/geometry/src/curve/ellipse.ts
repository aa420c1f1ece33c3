import { atan2Deg, sinCosDeg } from '../number/trigonometry.js';
import { ELLIPSE_CUBIC_TOLERANCE_MM } from '../tolerance.js';
import { applyAffine } from '../shape/affine.js';
import type { Affine, CurveSegment, Point } from '../types/shape.js';

/** An elliptical arc as path data gives it (SVG 2, 9.3.8). */
export interface EllipticalArc {
  readonly start: Point;
  readonly rx: number;
  readonly ry: number;
  /** Of the ellipse's x axis, clockwise as seen. */
  readonly xAxisRotationDeg: number;
  readonly largeArc: boolean;
  /** True if the angle grows: clockwise as seen. */
  readonly sweep: boolean;
  readonly to: Point;
}

/** Radii that differ by less than this share make a circle: at 1 m it is 1 nm. */
const ROUND_SHARE = 1e-9;

/** Error of one cubic for a quarter of the unit circle; it falls with the sixth power of the angle. */
const QUARTER_ERROR = 2.73e-4;

/**
 * The arc as circular arcs if it is a circle's, as cubics (within 0.5 µm) if not, as a line if a radius is 0, as
 * nothing if it ends where it starts. Radii too small to reach are scaled up. Formulas: SVG 2, appendix B.2.
 */
export function ellipticalArcToSegments(arc: EllipticalArc): CurveSegment[] {
  const centre = centreForm(arc);
  if (typeof centre === 'string') return centre === 'nothing' ? [] : [{ kind: 'line', to: arc.to }];
  if (Math.abs(centre.rx - centre.ry) > ROUND_SHARE * centre.rx) return cubicsOf(centre, arc.to);
  // Two halves where it turns by more than half a circle, so that ends that nearly meet cost no digits.
  const parts = Math.abs(centre.sweepDeg) > 180 ? 2 : 1;
  return Array.from({ length: parts }, (_, i) => ({
    kind: 'arc',
    via: pointAt(centre, (i + 0.5) / parts),
    to: i === parts - 1 ? arc.to : pointAt(centre, (i + 1) / parts),
  }));
}

/** The arc as cubics within 0.5 µm, also if it is a circle's; else as `ellipticalArcToSegments`. */
export function ellipticalArcToCubics(arc: EllipticalArc): CurveSegment[] {
  const centre = centreForm(arc);
  if (typeof centre === 'string') return centre === 'nothing' ? [] : [{ kind: 'line', to: arc.to }];
  return cubicsOf(centre, arc.to);
}

interface CentreForm {
  readonly rx: number;
  readonly ry: number;
  readonly startDeg: number;
  readonly sweepDeg: number;
  /** Takes the unit circle to the ellipse. */
  readonly frame: Affine;
}

/** From the two ends to the centre: SVG 2, B.2.4, after B.2.5 has mended the radii. */
function centreForm(arc: EllipticalArc): CentreForm | 'nothing' | 'line' {
  const { start, to } = arc;
  if (start.x === to.x && start.y === to.y) return 'nothing';
  let rx = Math.abs(arc.rx);
  let ry = Math.abs(arc.ry);
  if (rx === 0 || ry === 0) return 'line';
  const { sin, cos } = sinCosDeg(arc.xAxisRotationDeg);
  const hx = (start.x - to.x) / 2;
  const hy = (start.y - to.y) / 2;
  const ux = (cos * hx + sin * hy) / rx;
  const uy = (cos * hy - sin * hx) / ry;
  const reach = ux * ux + uy * uy;
  const grow = reach > 1 ? Math.sqrt(reach) : 1;
  rx *= grow;
  ry *= grow;
  // In the frame in which the ellipse is the unit circle, the ends are at +-(ux, uy) from their middle.
  const away = reach >= 1 ? 0 : Math.sqrt((1 - reach) / reach);
  const side = arc.largeArc === arc.sweep ? -away : away;
  const cx = side * (uy / grow);
  const cy = -side * (ux / grow);
  const startDeg = atan2Deg(uy / grow - cy, ux / grow - cx);
  let sweepDeg = atan2Deg(-uy / grow - cy, -ux / grow - cx) - startDeg;
  if (arc.sweep && sweepDeg < 0) sweepDeg += 360;
  if (!arc.sweep && sweepDeg > 0) sweepDeg -= 360;
  const frame: Affine = { a: rx * cos, b: rx * sin, c: -ry * sin, d: ry * cos, e: 0, f: 0 };
  const offset = applyAffine(frame, { x: cx, y: cy });
  const e = offset.x + (start.x + to.x) / 2;
  const f = offset.y + (start.y + to.y) / 2;
  return { rx, ry, startDeg, sweepDeg, frame: { ...frame, e, f } };
}

function pointAt(centre: CentreForm, share: number): Point {
  const { sin, cos } = sinCosDeg(centre.startDeg + centre.sweepDeg * share);
  return applyAffine(centre.frame, { x: cos, y: sin });
}

function cubicsOf(centre: CentreForm, to: Point): CurveSegment[] {
  const count = cubicsNeeded(Math.max(centre.rx, centre.ry), centre.sweepDeg);
  const stepDeg = centre.sweepDeg / count;
  const quarter = sinCosDeg(stepDeg / 4);
  const reach = ((4 / 3) * quarter.sin) / quarter.cos;
  return Array.from({ length: count }, (_, i) => {
    const a = sinCosDeg(centre.startDeg + stepDeg * i);
    const b = sinCosDeg(centre.startDeg + stepDeg * (i + 1));
    const at = (x: number, y: number) => applyAffine(centre.frame, { x, y });
    return {
      kind: 'cubic',
      handle1: at(a.cos - reach * a.sin, a.sin + reach * a.cos),
      handle2: at(b.cos + reach * b.sin, b.sin - reach * b.cos),
      to: i === count - 1 ? to : at(b.cos, b.sin),
    };
  });
}

function cubicsNeeded(radius: number, sweepDeg: number): number {
  let count = Math.max(1, Math.ceil(Math.abs(sweepDeg) / 90 - 1e-9));
  for (;;) {
    const quarters = Math.abs(sweepDeg) / count / 90;
    const cubed = quarters * quarters * quarters;
    if (radius * QUARTER_ERROR * cubed * cubed <= ELLIPSE_CUBIC_TOLERANCE_MM) return count;
    count++;
  }
}
