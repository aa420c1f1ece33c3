import type { CurveSegment, Point } from '../types/shape.js';
import { arcCentre, pointOnArc } from './arc.js';
import type { ArcCircle } from './arc.js';
import { cubicEndTangent, cubicStartTangent } from './cubic.js';
import { toCubic } from './measure.js';

/** Unit vector in which the segment leaves its start; zero for a segment without length. */
export function startDirection(from: Point, segment: CurveSegment): Point {
  switch (segment.kind) {
    case 'line':
      return unit(segment.to.x - from.x, segment.to.y - from.y);
    case 'cubic': {
      const { x, y } = cubicStartTangent(toCubic(from, segment));
      return unit(x, y);
    }
    case 'arc': {
      const circle = arcCentre(from, segment.via, segment.to);
      return circle === 'straight'
        ? unit(segment.via.x - from.x, segment.via.y - from.y)
        : alongCircle(circle, from);
    }
  }
}

/** Unit vector in which the segment reaches its end; zero for a segment without length. */
export function endDirection(from: Point, segment: CurveSegment): Point {
  const { to } = segment;
  switch (segment.kind) {
    case 'line':
      return unit(to.x - from.x, to.y - from.y);
    case 'cubic': {
      const { x, y } = cubicEndTangent(toCubic(from, segment));
      return unit(x, y);
    }
    case 'arc': {
      const circle = arcCentre(from, segment.via, to);
      if (circle === 'straight') return unit(to.x - segment.via.x, to.y - segment.via.y);
      return alongCircle(circle, pointOnArc(circle, 1));
    }
  }
}

function alongCircle({ center, sweepDeg }: ArcCircle, p: Point): Point {
  const turn = sweepDeg > 0 ? 1 : -1;
  return unit(turn * (center.y - p.y), turn * (p.x - center.x));
}

function unit(x: number, y: number): Point {
  const length = Math.sqrt(x * x + y * y);
  return length === 0 ? { x: 0, y: 0 } : { x: x / length, y: y / length };
}
