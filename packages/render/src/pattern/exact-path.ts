import { arcCentre, curveSteps } from '@hidebound/geometry';
import type { Curve, Point } from '@hidebound/geometry';
import { formatNumber } from '../drawing/format-number.js';

/** A curve as SVG holds it, and the points that its arcs pass through. */
export interface ExactPath {
  readonly data: string;
  /** "x y" of every arc in turn; empty without arcs. */
  readonly via: string;
}

/** An arc near a half circle moves by the square root of its radius' rounding: at 1e-9 mm by less than 1 µm. */
const RADIUS_STEPS_PER_MM = 1e9;

/**
 * The curve as path data: lines as `L`, circles' arcs as `A`, cubics as `C`, all absolute, closed by `Z`. An arc of
 * path data has ends and a radius, so the point that a stored arc passes through stands beside it, to be read back
 * exactly. Three decimals hold the 1 µm grid.
 */
export function exactPath(curve: Curve): ExactPath {
  let data = `M${pair(curve.start)}`;
  const via: string[] = [];
  for (const { from, segment } of curveSteps(curve)) {
    if (segment.kind === 'line') data += `L${pair(segment.to)}`;
    else if (segment.kind === 'cubic') {
      data += `C${pair(segment.handle1)} ${pair(segment.handle2)} ${pair(segment.to)}`;
    } else {
      data += arcCommand(from, segment.via, segment.to);
      via.push(pair(segment.via));
    }
  }
  return { data: curve.closed ? `${data}Z` : data, via: via.join(' ') };
}

/** An arc without a bow has radius 0, which SVG draws as a straight line (SVG 2, section 9.5.1). */
function arcCommand(from: Point, via: Point, to: Point): string {
  const circle = arcCentre(from, via, to);
  if (circle === 'straight') return `A0 0 0 0 0 ${pair(to)}`;
  const radius = String(Math.round(circle.radius * RADIUS_STEPS_PER_MM) / RADIUS_STEPS_PER_MM);
  const isLarge = Math.abs(circle.sweepDeg) > 180 ? 1 : 0;
  return `A${radius} ${radius} 0 ${isLarge} ${circle.sweepDeg > 0 ? 1 : 0} ${pair(to)}`;
}

export function pair({ x, y }: Point): string {
  return `${formatNumber(x)} ${formatNumber(y)}`;
}
