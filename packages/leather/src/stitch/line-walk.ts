import {
  angleBetweenDeg,
  arcCentre,
  atan2Deg,
  cubicDerivative,
  cubicPoint,
  curveLength,
  curveSteps,
  distanceBetween,
  normalizeDeg,
  pointOnArc,
  splitCubic,
} from '@hidebound/geometry';
import type { ArcCircle, Cubic, Curve, CurveSegment, Point } from '@hidebound/geometry';

/** A stitch line made ready to be walked along by its true length. */
export interface LineWalk {
  readonly isClosed: boolean;
  /** mm, to within about 1e-6 mm a segment. */
  readonly lengthMm: number;
  readonly steps: readonly WalkStep[];
}

/** One segment: where along the line it starts, and how to get on along it. */
interface WalkStep {
  readonly fromMm: number;
  readonly lengthMm: number;
  /** At so many mm from the segment's start. */
  readonly at: (alongMm: number) => PlaceOnLine;
}

/** A place on a line, and the direction in which the line runs there. */
export interface PlaceOnLine {
  readonly at: Point;
  /** Clockwise from the x axis, 0 to 360. */
  readonly angleDeg: number;
}

/** Shorter segments are slips of a drawing hand: they have no direction that could be trusted. In mm. */
const SHORTEST_SEGMENT_MM = 1e-6;

export function walkLine(curve: Curve): LineWalk {
  const steps: WalkStep[] = [];
  let fromMm = 0;
  for (const { from, segment } of curveSteps(curve)) {
    const lengthMm = curveLength({ start: from, segments: [segment], closed: false });
    if (lengthMm < SHORTEST_SEGMENT_MM) continue;
    steps.push({ fromMm, lengthMm, at: walkerOf(from, segment, lengthMm) });
    fromMm += lengthMm;
  }
  return { isClosed: curve.closed, lengthMm: fromMm, steps };
}

/**
 * The place so many mm along the line from its start. Before the start and behind the end of an open line it goes
 * straight on; a closed one is gone around again.
 */
export function placeAlong(walk: LineWalk, alongMm: number): PlaceOnLine {
  const { steps, lengthMm } = walk;
  const mm = walk.isClosed ? alongMm - Math.floor(alongMm / lengthMm) * lengthMm : alongMm;
  if (mm < 0) return goOn(steps[0]!.at(0), mm);
  if (mm > lengthMm) {
    const last = steps[steps.length - 1]!;
    return goOn(last.at(last.lengthMm), mm - lengthMm);
  }
  const step = stepAt(steps, mm);
  return step.at(Math.min(mm - step.fromMm, step.lengthMm));
}

/** The last step that starts at or before this. */
function stepAt(steps: readonly WalkStep[], mm: number): WalkStep {
  let [low, high] = [0, steps.length - 1];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (steps[middle]!.fromMm <= mm) low = middle;
    else high = middle - 1;
  }
  return steps[low]!;
}

function goOn({ at, angleDeg }: PlaceOnLine, byMm: number): PlaceOnLine {
  return { at: pointOnArc({ center: at, radius: byMm, startDeg: angleDeg, sweepDeg: 0 }, 0), angleDeg };
}

/** A corner of a line: how far along it lies, how far the line turns there, and the direction midway through the turn. */
export interface Corner {
  readonly alongMm: number;
  readonly turnDeg: number;
  readonly angleDeg: number;
}

/** Where the line turns by more than `cornerDeg` between two segments; of a closed line also at its start. */
export function cornersOf(walk: LineWalk, cornerDeg: number): readonly Corner[] {
  const { steps } = walk;
  return steps.flatMap((step, i) => {
    const before = i > 0 ? steps[i - 1] : walk.isClosed ? steps[steps.length - 1] : undefined;
    if (before === undefined) return [];
    const inDeg = before.at(before.lengthMm).angleDeg;
    const turnDeg = angleBetweenDeg(step.at(0).angleDeg, inDeg);
    if (Math.abs(turnDeg) <= cornerDeg) return [];
    return [{ alongMm: step.fromMm, turnDeg, angleDeg: normalizeDeg(inDeg + turnDeg / 2) }];
  });
}

function walkerOf(from: Point, segment: CurveSegment, lengthMm: number): WalkStep['at'] {
  switch (segment.kind) {
    case 'line':
      return alongChords([from, segment.to]);
    case 'arc': {
      const circle = arcCentre(from, segment.via, segment.to);
      return circle === 'straight'
        ? alongChords([from, segment.via, segment.to])
        : alongArc(circle, lengthMm);
    }
    case 'cubic':
      return alongCubic({ p0: from, p1: segment.handle1, p2: segment.handle2, p3: segment.to }, lengthMm);
  }
}

/** Along two or three points; the middle one lies between the others or doubles back behind them. */
function alongChords(points: readonly Point[]): WalkStep['at'] {
  return (alongMm) => {
    let left = alongMm;
    let place: PlaceOnLine = { at: points[0]!, angleDeg: 0 };
    for (let i = 0; i + 1 < points.length; i++) {
      const [a, b] = [points[i]!, points[i + 1]!];
      const length = distanceBetween(a, b);
      if (length === 0) continue;
      const share = Math.min(left / length, 1);
      place = {
        at: { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share },
        angleDeg: normalizeDeg(atan2Deg(b.y - a.y, b.x - a.x)),
      };
      if (left <= length) return place;
      left -= length;
    }
    return place;
  };
}

function alongArc(circle: ArcCircle, lengthMm: number): WalkStep['at'] {
  const aheadDeg = circle.sweepDeg > 0 ? 90 : -90;
  return (alongMm) => {
    const share = alongMm / lengthMm;
    return {
      at: pointOnArc(circle, share),
      angleDeg: normalizeDeg(circle.startDeg + circle.sweepDeg * share + aheadDeg),
    };
  };
}

function alongCubic(cubic: Cubic, lengthMm: number): WalkStep['at'] {
  return (alongMm) => {
    const t = parameterAt(cubic, alongMm, lengthMm);
    return { at: cubicPoint(cubic, t), angleDeg: cubicAngleDeg(cubic, t) };
  };
}

/** A place on a cubic is sought to within this many mm along it: far below what a tool could follow. */
const PLACE_MM = 1e-6;
const MOST_STEPS = 60;

/** The parameter so many mm along the cubic: Newton's steps on its length, halving where one would leave the span. */
function parameterAt(cubic: Cubic, alongMm: number, lengthMm: number): number {
  if (alongMm <= 0) return 0;
  if (alongMm >= lengthMm) return 1;
  let [low, high] = [0, 1];
  let t = alongMm / lengthMm;
  for (let i = 0; i < MOST_STEPS; i++) {
    const off = lengthUpTo(cubic, t) - alongMm;
    if (Math.abs(off) <= PLACE_MM) return t;
    if (off > 0) high = t;
    else low = t;
    const { x, y } = cubicDerivative(cubic, t);
    const next = t - off / Math.sqrt(x * x + y * y);
    t = next > low && next < high ? next : (low + high) / 2;
  }
  return t;
}

function lengthUpTo(cubic: Cubic, t: number): number {
  const { p0, p1, p2, p3 } = splitCubic(cubic, t)[0];
  return curveLength({
    start: p0,
    segments: [{ kind: 'cubic', handle1: p1, handle2: p2, to: p3 }],
    closed: false,
  });
}

/** A cubic stands still where a handle lies on its end; a hair further on it has a direction again. */
const HAIR = 1e-4;

function cubicAngleDeg(cubic: Cubic, t: number): number {
  const d = cubicDerivative(cubic, t);
  if (d.x * d.x + d.y * d.y > PLACE_MM * PLACE_MM) return normalizeDeg(atan2Deg(d.y, d.x));
  const a = cubicPoint(cubic, Math.max(t - HAIR, 0));
  const b = cubicPoint(cubic, Math.min(t + HAIR, 1));
  return normalizeDeg(atan2Deg(b.y - a.y, b.x - a.x));
}
