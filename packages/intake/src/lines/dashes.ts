import { curveEndPoints, curveLength, distanceBetween, lineMeeting } from '@hidebound/geometry';
import type { Curve, CurveSegment, Point } from '@hidebound/geometry';
import {
  DASH_GAP_SLACK,
  DASH_MAX_GAP_MM,
  DASH_MAX_LENGTH_MM,
  DASH_CORNER_COS,
  DASH_MAX_TURN_COS,
  DASH_STRAIGHT_COS,
  DASHES_AT_LEAST,
  JOIN_MM,
} from '../limits.js';
import { isFinished } from './finished.js';
import type { RoleLine } from './role-line.js';

/**
 * Some programs write every dash of a dashed line as a line of its own. Runs of short open lines of one group, drawn
 * one after the other, each going on where the last one points to, become one dashed line again; where a gap falls on
 * a corner, the corner is put back.
 */
export function gatherDashes(lines: readonly RoleLine[]): RoleLine[] {
  const result: RoleLine[] = [];
  for (let from = 0; from < lines.length;) {
    const to = endOfRun(lines, from);
    if (to - from >= DASHES_AT_LEAST) result.push(asOneLine(lines.slice(from, to)));
    else for (let i = from; i < to; i++) result.push(lines[i]!);
    from = to;
  }
  return result;
}

/** The number after the last line that goes on from `from`; at least `from + 1`. */
function endOfRun(lines: readonly RoleLine[], from: number): number {
  let to = from + 1;
  if (!isDash(lines[from]!)) return to;
  let widest = 0;
  while (to < lines.length) {
    const gap = gapBetween(lines[to - 1]!, lines[to]!);
    if (gap === undefined || (widest > 0 && gap > widest * DASH_GAP_SLACK)) break;
    widest = Math.max(widest, gap);
    to++;
  }
  return to;
}

function isDash(line: RoleLine): boolean {
  const { curve, isDashed } = line;
  return !curve.closed && !isDashed && !isFinished(line) && curveLength(curve) <= DASH_MAX_LENGTH_MM;
}

/** The gap from one dash to the next in mm, or nothing if the second does not go on where the first points to. */
function gapBetween(a: RoleLine, b: RoleLine): number | undefined {
  if (!isDash(b) || a.role !== b.role || a.stroke !== b.stroke) return undefined;
  if (a.source.groups[0]?.key !== b.source.groups[0]?.key) return undefined;
  const from = curveEndPoints(a.curve).end;
  const to = b.curve.start;
  const gap = distanceBetween(from, to);
  if (gap <= JOIN_MM || gap > DASH_MAX_GAP_MM) return undefined;
  const way = { x: (to.x - from.x) / gap, y: (to.y - from.y) / gap };
  const [out, into] = [endDirection(a.curve), startDirection(b.curve)].map((d) => d.x * way.x + d.y * way.y);
  const [less, more] = [Math.min(out!, into!), Math.max(out!, into!)];
  const goesOn = less >= DASH_MAX_TURN_COS || (more >= DASH_STRAIGHT_COS && less >= DASH_CORNER_COS);
  return goesOn ? gap : undefined;
}

function startDirection({ start, segments }: Curve): Point {
  const first = segments[0]!;
  const next = first.kind === 'cubic' ? first.handle1 : first.kind === 'arc' ? first.via : first.to;
  return unit(start, samePlace(start, next) ? first.to : next);
}

function endDirection({ start, segments }: Curve): Point {
  const last = segments.at(-1)!;
  const before = segments.at(-2)?.to ?? start;
  const from = last.kind === 'cubic' ? last.handle2 : last.kind === 'arc' ? last.via : before;
  return unit(samePlace(from, last.to) ? before : from, last.to);
}

function unit(from: Point, to: Point): Point {
  const length = distanceBetween(from, to) || 1;
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}

function samePlace(a: Point, b: Point): boolean {
  return a.x === b.x && a.y === b.y;
}

function asOneLine(dashes: readonly RoleLine[]): RoleLine {
  const first = dashes[0]!;
  const segments: CurveSegment[] = [...first.curve.segments];
  for (let i = 1; i < dashes.length; i++) {
    segments.push(...bridge(dashes[i - 1]!.curve, dashes[i]!.curve), ...dashes[i]!.curve.segments);
  }
  const last = dashes.at(-1)!;
  const gap = distanceBetween(curveEndPoints(first.curve).end, dashes[1]!.curve.start);
  const backGap = distanceBetween(curveEndPoints(last.curve).end, first.curve.start);
  const closed = backGap <= gap * DASH_GAP_SLACK;
  if (closed && backGap > 0) segments.push(...bridge(last.curve, first.curve));
  return { ...first, isDashed: true, curve: { start: first.curve.start, segments, closed } };
}

/** Straight over the gap, or round the corner that lies in it. */
function bridge(a: Curve, b: Curve): CurveSegment[] {
  const from = curveEndPoints(a).end;
  const to = b.start;
  const out = endDirection(a);
  const into = startDirection(b);
  const corner = lineMeeting(from, ahead(from, out, 1), ahead(to, into, -1), to);
  const gap = distanceBetween(from, to);
  const isCorner = corner !== undefined && Math.abs(out.x * into.y - out.y * into.x) > 0.1;
  if (!isCorner || distanceBetween(corner, from) > gap || distanceBetween(corner, to) > gap) {
    return [{ kind: 'line', to }];
  }
  const rounded = { x: Math.round(corner.x * 1000) / 1000, y: Math.round(corner.y * 1000) / 1000 };
  return samePlace(rounded, from) || samePlace(rounded, to)
    ? [{ kind: 'line', to }]
    : [
        { kind: 'line', to: rounded },
        { kind: 'line', to },
      ];
}

function ahead(p: Point, direction: Point, by: number): Point {
  return { x: p.x + direction.x * by, y: p.y + direction.y * by };
}
