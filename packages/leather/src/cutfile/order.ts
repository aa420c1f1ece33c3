import {
  boxesTouch,
  curveEndPoints,
  distanceSq,
  pointInRing,
  reverseCurve,
  ringBox,
} from '@hidebound/geometry';
import type { Box, Curve, Point, Ring } from '@hidebound/geometry';
import type { Contour } from './contour.js';
import { chooseStart } from './lead-in.js';
import type { LeadInWish } from './lead-in.js';
import type { Obstacles } from './obstacles.js';
import { nearestStarts, startsOf } from './starts.js';
import type { Start } from './starts.js';
import { closedStrokes, openStrokes } from './strokes.js';
import type { CutFileOptions } from './types.js';

/** A contour with the tool's way along it. */
export interface OrderedCut {
  readonly contour: Contour;
  readonly strokes: readonly Curve[];
  readonly hasLeadIn: boolean;
}

/** One contour that waits for its turn. */
interface Waiting {
  readonly contour: Contour;
  readonly starts: readonly Start[];
  /** Still to be cut before it. */
  before: number;
  isDone: boolean;
  /** Wait for this one. */
  readonly after: Waiting[];
}

/**
 * The contours of one kind of work in the order of cutting: what lies within a line before that line, the ends of a
 * lane's straps before its long lines and a lane in one go, and of all that may come next the nearest; the first given
 * one where two are as near. The tool comes from `from`.
 */
export function orderCuts(
  contours: readonly Contour[],
  from: Point,
  options: CutFileOptions,
  obstacles: Obstacles,
): OrderedCut[] {
  const waiting = contours.map((contour): Waiting => {
    const [curve] = contour.curves as [Curve];
    return { contour, starts: curve.closed ? startsOf(curve) : [], before: 0, isDone: false, after: [] };
  });
  linkInsideFirst(waiting);
  linkLanes(waiting);
  const ordered: OrderedCut[] = [];
  let at = from;
  let lane: string | undefined;
  for (let left = waiting.length; left > 0; left--) {
    const next = nearest(waiting, at, lane) ?? nearest(waiting, at, undefined)!;
    const cut = cutOf(next, at, options, obstacles);
    next.isDone = true;
    for (const one of next.after) one.before -= 1;
    ordered.push(cut);
    at = curveEndPoints(cut.strokes[cut.strokes.length - 1]!).end;
    lane = next.contour.lane;
  }
  return ordered;
}

function linkInsideFirst(waiting: readonly Waiting[]): void {
  const boxes = waiting.map(({ contour }) => boxOfContour(contour));
  waiting.forEach((outer, i) => {
    const { ring } = outer.contour;
    if (ring === undefined) return;
    waiting.forEach((inner, j) => {
      if (i === j || inner.contour.ring === ring || !boxesTouch(boxes[i]!, boxes[j]!)) return;
      if (!liesWithin(inner.contour, ring)) return;
      inner.after.push(outer);
      outer.before += 1;
    });
  });
}

function boxOfContour({ curves, ring }: Contour): Box {
  return ringBox(ring ?? curves.flatMap(({ start, segments }) => [start, ...segments.map(({ to }) => to)]));
}

/** Two parts of what two contours share a line of may each touch the other one's edge: all corners are asked. */
function liesWithin({ curves, ring }: Contour, outer: Ring): boolean {
  const corners = ring ?? curves.flatMap(({ start, segments }) => [start, ...segments.map(({ to }) => to)]);
  const places = corners.map((p) => pointInRing(p, outer));
  return !places.includes('outside') && places.includes('inside');
}

/** The long lines of a lane wait for the ends of its straps. */
function linkLanes(waiting: readonly Waiting[]): void {
  for (const line of waiting) {
    if (line.contour.of.kind !== 'lane') continue;
    for (const end of waiting) {
      if (end.contour.lane !== line.contour.lane || end.contour.of.kind === 'lane') continue;
      end.after.push(line);
      line.before += 1;
    }
  }
}

function nearest(waiting: readonly Waiting[], at: Point, lane: string | undefined): Waiting | undefined {
  let best: Waiting | undefined;
  let bestSq = Infinity;
  for (const one of waiting) {
    if (one.isDone || one.before > 0 || (lane !== undefined && one.contour.lane !== lane)) continue;
    const sq = nearestSq(one, at);
    if (sq < bestSq) {
      best = one;
      bestSq = sq;
    }
  }
  return best;
}

function nearestSq({ contour, starts }: Waiting, at: Point): number {
  if (starts.length > 0) return Math.min(...starts.map((start) => distanceSq(start.at, at)));
  const { start, end } = curveEndPoints(contour.curves[0]!);
  return Math.min(distanceSq(start, at), distanceSq(end, at));
}

function cutOf(
  { contour, starts }: Waiting,
  at: Point,
  options: CutFileOptions,
  obstacles: Obstacles,
): OrderedCut {
  if (starts.length === 0) return openCut(contour, at, options);
  const wish: LeadInWish | undefined = options.leadIn;
  const chosen = chooseStart(contour, nearestStarts(starts, at), wish, obstacles);
  return {
    contour,
    strokes: closedStrokes(contour, chosen, options),
    hasLeadIn: chosen.leadIn !== undefined,
  };
}

function openCut(contour: Contour, at: Point, options: CutFileOptions): OrderedCut {
  const [curve] = contour.curves as [Curve];
  const strokes = openStrokes(contour, curve, options);
  const { start, end } = curveEndPoints(curve);
  if (distanceSq(start, at) <= distanceSq(end, at)) return { contour, strokes, hasLeadIn: false };
  return { contour, strokes: [...strokes].reverse().map(reverseCurve), hasLeadIn: false };
}
