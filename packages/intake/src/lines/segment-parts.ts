import { arcCentre, cubicPoint, normalizeDeg, atan2Deg, pointOnArc, splitCubic } from '@hidebound/geometry';
import type { ArcCircle, Box, Cubic, CurveSegment, Point } from '@hidebound/geometry';

/** Halvings of the search for a crossing: doubles have no more digits. */
const HALVINGS = 60;

/** Crossings this near to an end of the parameter are the end. */
const AT_END = 1e-12;

/** Parameters in (0, 1), ascending, at which a segment crosses or touches one of the lines that bear the box's edges. */
export function crossingsOf(from: Point, segment: CurveSegment, box: Box): number[] {
  const found: number[] = [];
  for (const x of [box.minX, box.maxX]) found.push(...crossings(from, segment, 'x', x));
  for (const y of [box.minY, box.maxY]) found.push(...crossings(from, segment, 'y', y));
  return found.filter((t) => t > AT_END && t < 1 - AT_END).sort((a, b) => a - b);
}

type Axis = 'x' | 'y';

/** Parameters in [0, 1], in no order, at which one coordinate of a segment is `at`. */
export function crossings(from: Point, segment: CurveSegment, axis: Axis, at: number): number[] {
  switch (segment.kind) {
    case 'line':
      return lineCrossings(from[axis], segment.to[axis], at);
    case 'cubic':
      return cubicCrossings([from[axis], segment.handle1[axis], segment.handle2[axis], segment.to[axis]], at);
    case 'arc': {
      const circle = arcCentre(from, segment.via, segment.to);
      return circle === 'straight'
        ? lineCrossings(from[axis], segment.to[axis], at)
        : arcCrossings(circle, axis, at);
    }
  }
}

function lineCrossings(a: number, b: number, at: number): number[] {
  if (a === b) return [];
  const t = (at - a) / (b - a);
  return t >= 0 && t <= 1 ? [t] : [];
}

function arcCrossings(circle: ArcCircle, axis: Axis, at: number): number[] {
  const { center, radius, startDeg, sweepDeg } = circle;
  const off = at - center[axis];
  if (Math.abs(off) > radius) return [];
  const across = Math.sqrt((radius - off) * (radius + off));
  return [across, -across].flatMap((other) => {
    const deg = axis === 'x' ? atan2Deg(other, off) : atan2Deg(off, other);
    const turned = sweepDeg > 0 ? normalizeDeg(deg - startDeg) : normalizeDeg(startDeg - deg);
    const share = turned / Math.abs(sweepDeg);
    return share <= 1 ? [share] : [];
  });
}

/** Between its turns a coordinate only rises or only falls, so halving finds each crossing. */
function cubicCrossings([p0, p1, p2, p3]: readonly [number, number, number, number], at: number): number[] {
  const value = (t: number) => {
    const s = 1 - t;
    return s * s * s * p0 + 3 * s * s * t * p1 + 3 * s * t * t * p2 + t * t * t * p3 - at;
  };
  const stops = [0, ...turnsOf(p0, p1, p2, p3), 1];
  const found: number[] = [];
  for (let i = 1; i < stops.length; i++) {
    let low = stops[i - 1]!;
    let high = stops[i]!;
    const atLow = value(low);
    const atHigh = value(high);
    if (atLow === 0) found.push(low);
    if (atLow * atHigh >= 0) continue;
    for (let k = 0; k < HALVINGS; k++) {
      const middle = (low + high) / 2;
      if (value(middle) > 0 === atLow > 0) low = middle;
      else high = middle;
    }
    found.push((low + high) / 2);
  }
  if (value(1) === 0) found.push(1);
  return found;
}

/** Parameters in (0, 1), ascending, at which one coordinate turns back: roots of its derivative. */
function turnsOf(p0: number, p1: number, p2: number, p3: number): number[] {
  const a = p3 - 3 * p2 + 3 * p1 - p0;
  const b = 2 * (p2 - 2 * p1 + p0);
  const c = p1 - p0;
  const discriminant = b * b - 4 * a * c;
  if (discriminant <= 0) return [];
  const q = -0.5 * (b + (b < 0 ? -1 : 1) * Math.sqrt(discriminant));
  return [q / a, c / q].filter((t) => t > 0 && t < 1).sort((x, y) => x - y);
}

/** The point at a parameter: of a line and an arc a share of the length, of a cubic its own parameter. */
export function pointOfSegment(from: Point, segment: CurveSegment, t: number): Point {
  if (segment.kind === 'cubic') return cubicPoint(toCubic(from, segment), t);
  if (segment.kind === 'arc') {
    const circle = arcCentre(from, segment.via, segment.to);
    if (circle !== 'straight') return pointOnArc(circle, t);
  }
  return { x: from.x + (segment.to.x - from.x) * t, y: from.y + (segment.to.y - from.y) * t };
}

/** The part of a segment between two parameters; whole ends are kept to the bit. */
export function partOfSegment(
  from: Point,
  segment: CurveSegment,
  first: number,
  last: number,
): { readonly from: Point; readonly segment: CurveSegment } {
  if (first <= 0 && last >= 1) return { from, segment };
  if (segment.kind === 'cubic') return partOfCubic(from, segment, first, last);
  const start = first <= 0 ? from : pointOfSegment(from, segment, first);
  const to = last >= 1 ? segment.to : pointOfSegment(from, segment, last);
  if (segment.kind === 'line') return { from: start, segment: { kind: 'line', to } };
  const via = pointOfSegment(from, segment, (Math.max(first, 0) + Math.min(last, 1)) / 2);
  return { from: start, segment: { kind: 'arc', via, to } };
}

function partOfCubic(from: Point, segment: CurveSegment & { kind: 'cubic' }, first: number, last: number) {
  const whole = toCubic(from, segment);
  const upTo = last >= 1 ? whole : splitCubic(whole, last)[0];
  const part = first <= 0 ? upTo : splitCubic(upTo, first / Math.min(last, 1))[1];
  const { p0, p1, p2, p3 } = part;
  const cubic: CurveSegment = { kind: 'cubic', handle1: p1, handle2: p2, to: p3 };
  return { from: p0, segment: cubic };
}

function toCubic(from: Point, segment: CurveSegment & { kind: 'cubic' }): Cubic {
  return { p0: from, p1: segment.handle1, p2: segment.handle2, p3: segment.to };
}
