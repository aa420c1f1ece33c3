import type { Curve, CurveSegment, Point } from '../types/shape.js';
import { arcCentre, pointOnArc } from './arc.js';
import { splitCubic } from './cubic.js';
import type { Cubic } from './cubic.js';
import { curveLength, toCubic } from './measure.js';
import { curveSteps } from './path.js';

/** Halvings of the search for a place on a cubic: of 10 m, less than 1e-8 mm is left. */
const HALVINGS = 40;

/** The open part of a curve between two lengths along it, in mm from its start; lines, arcs and cubics stay what they are. */
export function curveStretch(curve: Curve, fromMm: number, toMm: number): Curve {
  const segments: CurveSegment[] = [];
  let start: Point | undefined;
  let passed = 0;
  for (const { from, segment } of curveSteps(curve)) {
    const length = segmentLength(from, segment);
    const first = Math.max(fromMm - passed, 0);
    const last = Math.min(toMm - passed, length);
    passed += length;
    if (!(last > first)) continue;
    const part = partOf(from, segment, first / length, last / length);
    start ??= part.from;
    segments.push(part.segment);
  }
  return { start: start ?? curve.start, segments, closed: false };
}

/** The same closed curve, started so many mm further along. */
export function startedAt(curve: Curve, alongMm: number): Curve {
  if (alongMm <= 0) return curve;
  const head = curveStretch(curve, alongMm, Infinity);
  const tail = curveStretch(curve, 0, alongMm);
  const segments = [...head.segments, ...tail.segments];
  const last = segments.pop();
  if (last === undefined) return curve;
  return { start: head.start, segments: [...segments, { ...last, to: head.start }], closed: curve.closed };
}

function segmentLength(from: Point, segment: CurveSegment): number {
  return curveLength({ start: from, segments: [segment], closed: false });
}

interface Part {
  readonly from: Point;
  readonly segment: CurveSegment;
}

/** The part between two shares (0 to 1) of the segment's length; whole ends are kept to the bit. */
function partOf(from: Point, segment: CurveSegment, first: number, last: number): Part {
  if (first <= 0 && last >= 1) return { from, segment };
  if (segment.kind === 'cubic') return partOfCubic(toCubic(from, segment), first, last);
  const circle = segment.kind === 'arc' ? arcCentre(from, segment.via, segment.to) : 'straight';
  const at = (share: number): Point => {
    if (share <= 0) return from;
    if (share >= 1) return segment.to;
    if (circle !== 'straight') return pointOnArc(circle, share);
    return { x: from.x + (segment.to.x - from.x) * share, y: from.y + (segment.to.y - from.y) * share };
  };
  if (circle === 'straight') return { from: at(first), segment: { kind: 'line', to: at(last) } };
  return { from: at(first), segment: { kind: 'arc', via: at((first + last) / 2), to: at(last) } };
}

function partOfCubic(cubic: Cubic, first: number, last: number): Part {
  const from = parameterAt(cubic, first);
  const to = parameterAt(cubic, last);
  const [head] = to >= 1 ? [cubic] : splitCubic(cubic, to);
  const [, part] = from <= 0 ? [undefined, head] : splitCubic(head, from / to);
  const { p0, p1, p2, p3 } = part;
  return { from: p0, segment: { kind: 'cubic', handle1: p1, handle2: p2, to: p3 } };
}

/** The parameter at a share of the cubic's length. */
function parameterAt(cubic: Cubic, share: number): number {
  if (share <= 0) return 0;
  if (share >= 1) return 1;
  const wanted = share * cubicLength(cubic);
  let low = 0;
  let high = 1;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (cubicLength(splitCubic(cubic, middle)[0]) < wanted) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function cubicLength({ p0, p1, p2, p3 }: Cubic): number {
  return segmentLength(p0, { kind: 'cubic', handle1: p1, handle2: p2, to: p3 });
}
