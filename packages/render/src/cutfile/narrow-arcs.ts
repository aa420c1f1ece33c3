import { arcCentre, curveSteps, pointOnArc } from '@hidebound/geometry';
import type { ArcCircle, Curve, CurveSegment } from '@hidebound/geometry';

/**
 * The curve with arcs that turn further than so many degrees in equal parts. An arc written by its ends and radius
 * moves with the rounding of its numbers, and the more so the nearer it is to a half circle.
 */
export function narrowArcs(curve: Curve, mostDeg: number): Curve {
  const segments = curveSteps(curve).flatMap(({ from, segment }): CurveSegment[] => {
    if (segment.kind !== 'arc') return [segment];
    const circle = arcCentre(from, segment.via, segment.to);
    return circle === 'straight' ? [{ kind: 'line', to: segment.to }] : partsOf(circle, segment, mostDeg);
  });
  return { start: curve.start, segments, closed: curve.closed };
}

function partsOf(circle: ArcCircle, segment: CurveSegment, mostDeg: number): CurveSegment[] {
  const count = Math.ceil(Math.abs(circle.sweepDeg) / mostDeg - 1e-9);
  if (count <= 1) return [segment];
  return Array.from({ length: count }, (_, i): CurveSegment => ({
    kind: 'arc',
    via: pointOnArc(circle, (i + 0.5) / count),
    to: i + 1 === count ? segment.to : pointOnArc(circle, (i + 1) / count),
  }));
}
