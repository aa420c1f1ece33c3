import { curveEndPoints, curveLength, reverseCurve } from '@hidebound/geometry';
import type { Curve, CurveSegment, Point } from '@hidebound/geometry';
import type { LineRole } from '@hidebound/leather';
import { JOIN_MM } from '../limits.js';
import { isFinished } from './finished.js';
import { partnersOf } from './near-ends.js';
import type { RoleLine } from './role-line.js';
import { chainFrom } from './chains.js';

/** Each of these is a mark of its own, whatever its ends touch. */
const NEVER_JOINED = new Set<LineRole>(['direction', 'notch', 'mirror', 'text', 'ignore']);

/**
 * Open lines whose ends meet within 0.1 mm as one line, closed if it comes back to its start. First among lines that
 * look alike (same role, layer, colour, dash), then among those of one role and dash. Where more than two ends meet,
 * nobody can know which belong together, and none is joined. A gap is bridged by a short straight line, so that
 * nothing moves.
 */
export function joinLines(lines: readonly RoleLine[], tellGap: TellGap = () => undefined): RoleLine[] {
  const alike = joinWithin(lines, tellGap, (line) =>
    [line.role ?? '', line.isDashed, line.stroke ?? '', line.source.groups[0]?.key ?? -1].join('|'),
  );
  return joinWithin(alike, tellGap, (line) => `${line.role ?? ''}|${line.isDashed}`);
}

/** Told of every gap that was bridged: the line that it became part of, and the two ends. */
export type TellGap = (line: RoleLine, from: Point, to: Point) => void;

function joinWithin(
  lines: readonly RoleLine[],
  tellGap: TellGap,
  keyOf: (line: RoleLine) => string,
): RoleLine[] {
  const groups = new Map<string, number[]>();
  lines.forEach((line, i) => {
    if (!canJoin(line)) return;
    const key = keyOf(line);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [i]);
    else group.push(i);
  });
  const result: (RoleLine | undefined)[] = [...lines];
  for (const members of groups.values()) joinGroup(lines, members, result, tellGap);
  return result.filter((line): line is RoleLine => line !== undefined);
}

function canJoin(line: RoleLine): boolean {
  if (line.curve.closed || isFinished(line)) return false;
  if (line.role !== undefined && NEVER_JOINED.has(line.role)) return false;
  return curveLength(line.curve) > JOIN_MM;
}

/** End 2k is the start of the k-th member, end 2k + 1 its end. */
function joinGroup(
  lines: readonly RoleLine[],
  members: readonly number[],
  result: (RoleLine | undefined)[],
  tellGap: TellGap,
): void {
  const points = members.flatMap((i) => {
    const { start, end } = curveEndPoints(lines[i]!.curve);
    return [start, end];
  });
  const partner = partnersOf(points);
  const done = new Set<number>();
  for (let k = 0; k < members.length; k++) {
    if (done.has(k)) continue;
    const chain = chainFrom(k, partner);
    for (const end of chain.ends) done.add(end >> 1);
    if (chain.ends.length === 1 && !chain.isClosed) continue;
    const numbers = chain.ends.map((end) => members[end >> 1]!);
    const first = numbers.reduce((a, b) => Math.min(a, b));
    const curves = chain.ends.map((end) => {
      const { curve } = lines[members[end >> 1]!]!;
      return (end & 1) === 0 ? curve : reverseCurve(curve);
    });
    for (const i of numbers) result[i] = undefined;
    const noteGap = (from: Point, to: Point) => tellGap(lines[first]!, from, to);
    result[first] = { ...lines[first]!, curve: linkCurves(curves, chain.isClosed, noteGap) };
  }
}

function linkCurves(
  curves: readonly Curve[],
  isClosed: boolean,
  noteGap: (from: Point, to: Point) => void,
): Curve {
  const start = curves[0]!.start;
  const segments: CurveSegment[] = [];
  let at = start;
  const bridge = (to: Point) => {
    if (at.x !== to.x || at.y !== to.y) {
      segments.push({ kind: 'line', to });
      noteGap(at, to);
    }
    at = to;
  };
  for (const curve of curves) {
    bridge(curve.start);
    for (const segment of curve.segments) segments.push(segment);
    at = curveEndPoints(curve).end;
  }
  if (isClosed) bridge(start);
  return { start, segments, closed: isClosed };
}
