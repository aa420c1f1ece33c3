import { curveEndPoints, distanceBetween, reverseCurve, roundPoint } from '@hidebound/geometry';
import { chainFrom } from '../lines/chains.js';
import type { Chain } from '../lines/chains.js';
import type { Curve, CurveSegment, Point } from '@hidebound/geometry';
import type { DrawnLine } from '../drawing/drawn-line.js';
import type { PagePart } from './cut-to-cells.js';
import { GOES_ON_COS, MAX_BRIDGE_MM, MAX_TIP_CHORD_MM, SNAP_MM, STRAIGHT_MM } from './limits.js';
import { lookOf } from './look.js';
import { bridgeOf, goesOnOverStrip, tipReach } from './lost-strip.js';
import { lineEnds } from './page-lines.js';
import type { LineEnd } from './page-lines.js';
import { dot, middleOf, minus } from './vectors.js';

/** A gap that was bridged. */
export interface BridgedGap {
  readonly element: string;
  readonly at: Point;
  readonly sizeMm: number;
}

export interface JoinedParts {
  readonly lines: readonly DrawnLine[];
  readonly gaps: readonly BridgedGap[];
  /** Seams over which lines were joined. */
  readonly joints: number;
  /** Cut ends that found no other half. */
  readonly looseEnds: readonly { readonly page: number; readonly at: Point }[];
  /** Ends that were cut off by the edge of what a page shows, joined or not. */
  readonly cutEnds: number;
  /** For each line: it was put together of parts. */
  readonly isJoined: readonly boolean[];
}

/** End 2k is the start of part k, end 2k + 1 its end. */
interface Meeting {
  readonly p: number;
  readonly q: number;
  readonly cost: number;
}

/** A turn of 10° at a joint is as bad as this much of a gap, mm. */
const TURN_COST = 20;

/** A tip is drawn anew only where no other page shows how the line goes on. */
const TIP_COST = 1000;

/**
 * Ends at one place belong together whatever their directions, mm: a corner may lie on the seam, and of a line that
 * touches it the part between is too short to have a direction.
 */
const ONE_PLACE_MM = SNAP_MM;

/** Joins the parts of lines where their cut ends meet: same look, going on in the same direction, nearest first. */
export function joinParts(parts: readonly PagePart[]): JoinedParts {
  const ends = parts.flatMap(({ line }) =>
    line.curve.closed ? [undefined, undefined] : lineEnds(line.curve),
  );
  const isCut = parts.flatMap((part) => part.isCut);
  const partner = partnersOf(parts, ends, isCut);
  const lines: DrawnLine[] = [];
  const isJoined: boolean[] = [];
  const gaps: BridgedGap[] = [];
  const done = new Set<number>();
  parts.forEach(({ line }, k) => {
    if (done.has(k)) return;
    const chain = chainFrom(k, partner);
    for (const end of chain.ends) done.add(end >> 1);
    isJoined.push(chain.ends.length > 1 || chain.isClosed);
    if (chain.ends.length === 1 && !chain.isClosed) lines.push(line);
    else lines.push({ ...line, curve: linkChain(parts, chain, gaps) });
  });
  const joints = partner.filter((other, end) => other !== undefined && other > end).length;
  const looseEnds = ends.flatMap((end, i) =>
    end !== undefined && isCut[i] && partner[i] === undefined
      ? [{ page: parts[i >> 1]!.page, at: end.at }]
      : [],
  );
  const cutEnds = ends.filter((end, i) => end !== undefined && isCut[i]).length;
  return { lines, gaps, joints, looseEnds, cutEnds, isJoined };
}

function partnersOf(
  parts: readonly PagePart[],
  ends: readonly (LineEnd | undefined)[],
  isCut: readonly boolean[],
): (number | undefined)[] {
  const looks = parts.map(({ line }) => lookOf(line));
  const meetings: Meeting[] = [];
  const cells = new Map<string, number[]>();
  const cell = (n: number) => Math.floor(n / MAX_TIP_CHORD_MM);
  ends.forEach((end, i) => {
    if (end === undefined || !isCut[i]) return;
    for (let dx = -1; dx <= 1; dx++) {
      for (let dy = -1; dy <= 1; dy++) {
        for (const j of cells.get(`${cell(end.at.x) + dx},${cell(end.at.y) + dy}`) ?? []) {
          if (looks[i >> 1] !== looks[j >> 1]) continue;
          const cost = costOf(end, ends[j]!, i >> 1 === j >> 1, parts[i >> 1]!.page === parts[j >> 1]!.page);
          if (cost !== undefined) meetings.push({ p: j, q: i, cost });
        }
      }
    }
    const key = `${cell(end.at.x)},${cell(end.at.y)}`;
    const list = cells.get(key);
    if (list === undefined) cells.set(key, [i]);
    else list.push(i);
  });
  meetings.sort((a, b) => a.cost - b.cost || a.p - b.p || a.q - b.q);
  const partner = new Array<number | undefined>(ends.length).fill(undefined);
  for (const { p, q } of meetings) {
    if (partner[p] !== undefined || partner[q] !== undefined) continue;
    partner[p] = q;
    partner[q] = p;
  }
  return partner;
}

/** How badly two ends meet; nothing if they don't. */
function costOf(a: LineEnd, b: LineEnd, isOneLine: boolean, isOnePage: boolean): number | undefined {
  const gap = distanceBetween(a.at, b.at);
  const straight = -dot(a.out, b.out);
  if (isOnePage && tipReach(a, b) !== undefined) return TIP_COST + gap;
  if (gap > MAX_BRIDGE_MM)
    return !isOnePage && goesOnOverStrip(a, b) ? gap + TURN_COST * (1 - straight) : undefined;
  if (straight >= GOES_ON_COS) return gap + TURN_COST * (1 - straight);
  // What doesn't go on is a corner on the seam; of a single line that would fold it on itself.
  return gap <= ONE_PLACE_MM && !isOneLine ? MAX_BRIDGE_MM + gap + (1 - straight) : undefined;
}

/** One curve of all parts. */
function linkChain(parts: readonly PagePart[], chain: Chain, gaps: BridgedGap[]): Curve {
  const curves = chain.ends.map((end) => {
    const { curve } = parts[end >> 1]!.line;
    return (end & 1) === 0 ? curve : reverseCurve(curve);
  });
  const start = curves[0]!.start;
  let linked: Curve = curves[0]!;
  const element = (i: number) => parts[chain.ends[i]! >> 1]!.line.source.name;
  for (let i = 1; i < curves.length; i++) linked = linkTwo(linked, curves[i]!, element(i), gaps);
  if (!chain.isClosed) return linked;
  return closeCurve(linked, start, element(0), gaps);
}

function linkTwo(a: Curve, b: Curve, element: string, gaps: BridgedGap[]): Curve {
  const from = curveEndPoints(a).end;
  const gap = distanceBetween(from, b.start);
  if (gap > SNAP_MM) {
    gaps.push({ element, at: roundPoint(middleOf(from, b.start)), sizeMm: gap });
    const bridge: Curve = { start: from, segments: [bridgeOf(a, b)], closed: false };
    return { ...a, segments: overSeam({ ...a, segments: overSeam(a, bridge) }, b) };
  }
  const at = roundPoint(middleOf(from, b.start));
  const head = withEnd(a, at);
  const tail = withStart(b, at);
  return { ...head, segments: overSeam(head, tail) };
}

/** The segments of both; where a straight one goes on in a straight one, they are one again. */
function overSeam(head: Curve, tail: Curve): CurveSegment[] {
  const last = head.segments.at(-1)!;
  const first = tail.segments[0]!;
  if (last.kind === 'line' && first.kind === 'line') {
    const from = head.segments.at(-2)?.to ?? head.start;
    if (isStraightOver(from, last.to, first.to))
      return [...head.segments.slice(0, -1), first, ...tail.segments.slice(1)];
  }
  return [...head.segments, ...tail.segments];
}

/** The joint lies on the straight way between its neighbours, and between them. */
function isStraightOver(from: Point, joint: Point, to: Point): boolean {
  const way = minus(to, from);
  const length = Math.sqrt(dot(way, way));
  if (length === 0) return false;
  const off = minus(joint, from);
  const across = Math.abs(way.x * off.y - way.y * off.x) / length;
  const share = dot(way, off) / (length * length);
  return across <= STRAIGHT_MM && share > 0 && share < 1;
}

/** The chain's end joined to its start; a straight line that was cut there starts where its other half did. */
function closeCurve(curve: Curve, start: Point, element: string, gaps: BridgedGap[]): Curve {
  const end = curveEndPoints(curve).end;
  const gap = distanceBetween(end, start);
  if (gap > SNAP_MM) {
    gaps.push({ element, at: roundPoint(middleOf(end, start)), sizeMm: gap });
    const bridge: Curve = { start: end, segments: [bridgeOf(curve, curve)], closed: false };
    const segments = overSeam(curve, bridge);
    return startedAtCorner({ start, segments, closed: true });
  }
  const at = roundPoint(middleOf(end, start));
  const { segments } = withEnd(withStart(curve, at), at);
  return startedAtCorner({ start: at, segments, closed: true });
}

/** A closed curve that starts within a straight line starts at the end of that line instead. */
function startedAtCorner(curve: Curve): Curve {
  const { start, segments } = curve;
  const last = segments.at(-1)!;
  const first = segments[0]!;
  const before = segments.at(-2)?.to;
  if (before === undefined || segments.length < 3 || last.kind !== 'line' || first.kind !== 'line')
    return curve;
  if (!isStraightOver(before, start, first.to)) return curve;
  return { start: first.to, segments: [...segments.slice(1, -1), first], closed: true };
}

/** The curve with its end moved; the handle there goes along, so that the direction stays. */
function withEnd(curve: Curve, to: Point): Curve {
  const last = curve.segments.at(-1)!;
  const by = minus(to, last.to);
  const moved: CurveSegment =
    last.kind === 'cubic'
      ? { ...last, handle2: { x: last.handle2.x + by.x, y: last.handle2.y + by.y }, to }
      : { ...last, to };
  return { ...curve, segments: [...curve.segments.slice(0, -1), moved] };
}

function withStart(curve: Curve, start: Point): Curve {
  const first = curve.segments[0]!;
  if (first.kind !== 'cubic') return { ...curve, start };
  const by = minus(start, curve.start);
  const handle1 = { x: first.handle1.x + by.x, y: first.handle1.y + by.y };
  return { ...curve, start, segments: [{ ...first, handle1 }, ...curve.segments.slice(1)] };
}
