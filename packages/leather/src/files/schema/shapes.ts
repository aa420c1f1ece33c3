import type { Curve, CurveSegment, Point } from '@hidebound/geometry';
import { roundCoordinate } from '@hidebound/geometry';
import * as v from 'valibot';
import { group, stored } from './group.js';
import { coordinate, flag, unitShare } from './leaves.js';
import { MOST_SEGMENTS } from './limits.js';
import { problemMessage } from './problem.js';

const POINT_WORDS = 'a point as [x, y] in mm';

/** `[x, y]` in a file, `{ x, y }` in memory. */
export const point = stored(
  v.pipe(
    v.strictTuple([coordinate, coordinate], POINT_WORDS),
    v.transform(([x, y]): Point => ({ x, y })),
  ),
  encodePoint,
);

function encodePoint(p: Point): readonly [number, number] {
  return [roundCoordinate(p.x), roundCoordinate(p.y)];
}

/** A unit vector, finer than a place so that its length stays one. */
export const unitVector = stored(
  v.pipe(
    v.strictTuple([unitShare, unitShare], 'a unit vector as [x, y]'),
    v.transform(([x, y]): Point => ({ x, y })),
  ),
  (p) => [unitShare.encode(p.x), unitShare.encode(p.y)],
);

const LINE_WORDS = 'a line as a list of at least two points [x, y]';
export const polyline = v.pipe(v.array(point, LINE_WORDS), v.minLength(2, LINE_WORDS));

const RING_WORDS = 'a ring as a list of at least three points [x, y]';
export const ring = v.pipe(v.array(point, RING_WORDS), v.minLength(3, RING_WORDS));

const lineSegment = group({ to: [point, 'Where the straight run ends.'] });
const arcSegment = group({
  via: [point, 'A point that the circular arc passes through.'],
  to: [point, 'Where the arc ends.'],
});
const HANDLES_WORDS = 'two handles as [[x, y], [x, y]]';
const cubicSegment = group({
  handles: [v.strictTuple([point, point], HANDLES_WORDS), 'The two handles of a cubic Bézier curve.'],
  to: [point, 'Where the curve ends.'],
});
const segment = v.union(
  [lineSegment, arcSegment, cubicSegment],
  'a segment: { to }, { via, to } or { handles, to }',
);
type WrittenSegment = v.InferOutput<typeof segment>;

/** A line of straight runs, arcs and cubic Béziers. */
export const curve = stored(
  v.pipe(
    group({
      start: [point, 'Where the line starts.'],
      segments: [
        v.pipe(
          v.array(segment, 'a list of segments'),
          v.minLength(1, 'at least one segment'),
          v.maxLength(MOST_SEGMENTS, `at most ${MOST_SEGMENTS} segments`),
        ),
        'Runs of the line: { to } straight, { via, to } a circular arc, { handles, to } a cubic Bézier curve.',
      ],
      closed: [flag, 'True for an area’s edge; its last segment then ends where the line starts.'],
    }),
    v.transform((written): Curve => ({
      start: written.start,
      segments: written.segments.map(readSegment),
      closed: written.closed,
    })),
    v.check(endsWhereItStarts, problemMessage('curve-not-closed', {})),
  ),
  encodeCurve,
);

function readSegment(written: WrittenSegment): CurveSegment {
  if ('via' in written) return { kind: 'arc', via: written.via, to: written.to };
  if ('handles' in written) {
    const [handle1, handle2] = written.handles;
    return { kind: 'cubic', handle1, handle2, to: written.to };
  }
  return { kind: 'line', to: written.to };
}

function endsWhereItStarts(value: Curve): boolean {
  const end = value.segments[value.segments.length - 1]?.to;
  return !value.closed || (end?.x === value.start.x && end.y === value.start.y);
}

function encodeCurve(value: Curve): unknown {
  return {
    start: encodePoint(value.start),
    segments: value.segments.map(encodeSegment),
    closed: value.closed,
  };
}

function encodeSegment(value: CurveSegment): unknown {
  const to = encodePoint(value.to);
  if (value.kind === 'arc') return { via: encodePoint(value.via), to };
  if (value.kind === 'cubic') {
    return { handles: [encodePoint(value.handle1), encodePoint(value.handle2)], to };
  }
  return { to };
}

/** An area with openings, as rings. */
export const region = group({
  outer: [ring, 'The outer ring; its signed area is positive (y down).'],
  openings: [v.array(ring, 'a list of rings'), 'Rings of the openings; their signed areas are negative.'],
});
