import { curveSteps, flattenSegment, pointToSegment, roundCurve, simpleLine } from '@hidebound/geometry';
import type { Curve, CurveSegment, Point } from '@hidebound/geometry';

/**
 * An edge while it is being pushed: its parts, of which the pushed ones are chains of short straight ones. The first part
 * starts where the last one ends.
 */
export interface PushedEdge {
  readonly parts: readonly PushedPart[];
}

interface PushedPart {
  readonly segment: CurveSegment;
  /** Drawn by pushing: may be made of fewer corners again. */
  readonly isPushed: boolean;
}

/** A pushed edge has corners so close together, as a share of the round. */
const CORNERS_PER_ROUND = 8;
/**
 * A step of at most so much of the round's radius moves no two places onto each other: places p go to p + δ·w(p), and that
 * folds nothing while |δ|·|∇w| < 1; with w = (1 - (d/r)²)² the slope is 8/(3√3)/r ≈ 1.54/r at most.
 */
const STEP_SHARE = 0.25;
const CHORD_MM = 0.05;

export function startPush({ segments }: Curve): PushedEdge {
  return { parts: segments.map((segment) => ({ segment, isPushed: false })) };
}

/**
 * The edge after a round of this radius (mm) went from one place to another: what lies at its middle goes all of the way,
 * less and less towards its rim (Tukey's biweight), so that the edge stays smooth and never crosses itself.
 */
export function pushEdge(edge: PushedEdge, from: Point, to: Point, radiusMm: number): PushedEdge {
  const way = Math.hypot(to.x - from.x, to.y - from.y);
  const steps = Math.ceil(way / (radiusMm * STEP_SHARE));
  let pushed = edge;
  for (let i = 0; i < steps; i++) {
    const by = { x: (to.x - from.x) / steps, y: (to.y - from.y) / steps };
    const middle = { x: from.x + by.x * i, y: from.y + by.y * i };
    pushed = pushOnce(pushed, middle, by, radiusMm);
  }
  return pushed;
}

function pushOnce({ parts }: PushedEdge, middle: Point, by: Point, radiusMm: number): PushedEdge {
  const start = parts.at(-1)!.segment.to;
  let from = start;
  const opened = parts.flatMap((part): readonly PushedPart[] => {
    const begin = from;
    from = part.segment.to;
    return isReached(begin, part.segment, middle, radiusMm) ? finer(begin, part, radiusMm) : [part];
  });
  const moved = opened.map((part) => movedPart(part, middle, by, radiusMm));
  return { parts: moved };
}

/** Whether any of a part can lie within the round: judged by the polygon of its points. */
function isReached(from: Point, segment: CurveSegment, middle: Point, radiusMm: number): boolean {
  if (segment.kind === 'line') return pointToSegment(middle, from, segment.to) < radiusMm;
  const chords = [from, ...flattenSegment(from, segment, CHORD_MM)];
  return chords.some((to, i) => i > 0 && pointToSegment(middle, chords[i - 1]!, to) < radiusMm);
}

/** A part as straight ones, none longer than the round asks for. */
function finer(from: Point, part: PushedPart, radiusMm: number): readonly PushedPart[] {
  const longest = radiusMm / CORNERS_PER_ROUND;
  let begin = from;
  return flattenSegment(from, part.segment, CHORD_MM).flatMap((to) => {
    const start = begin;
    begin = to;
    const count = Math.max(1, Math.ceil(Math.hypot(to.x - start.x, to.y - start.y) / longest));
    return Array.from({ length: count }, (_, i): PushedPart => {
      const share = (i + 1) / count;
      const place = { x: start.x + (to.x - start.x) * share, y: start.y + (to.y - start.y) * share };
      return { isPushed: true, segment: { kind: 'line', to: i + 1 === count ? to : place } };
    });
  });
}

/** Its end moved. A curve that the round does not reach has its end beyond the rim, too, and stays. */
function movedPart(part: PushedPart, middle: Point, by: Point, radiusMm: number): PushedPart {
  const { to } = part.segment;
  const share = Math.hypot(to.x - middle.x, to.y - middle.y) / radiusMm;
  if (share >= 1) return part;
  const weight = (1 - share * share) ** 2;
  return { ...part, segment: { ...part.segment, to: { x: to.x + by.x * weight, y: to.y + by.y * weight } } };
}

/** The edge as a file holds it: pushed stretches with as few corners as the tolerance (mm) allows, the rest as it was. */
export function endPush({ parts }: PushedEdge, toleranceMm: number): Curve {
  const start = parts.at(-1)!.segment.to;
  const segments: CurveSegment[] = [];
  let run: Point[] = [];
  let from = start;
  const closeRun = (): void => {
    if (run.length > 1)
      segments.push(
        ...simpleLine(run, toleranceMm)
          .slice(1)
          .map((to): CurveSegment => ({ kind: 'line', to })),
      );
    run = [];
  };
  for (const { segment, isPushed } of parts) {
    if (isPushed) {
      if (run.length === 0) run.push(from);
      run.push(segment.to);
    } else {
      closeRun();
      segments.push(segment);
    }
    from = segment.to;
  }
  closeRun();
  return roundCurve({ start, segments, closed: true });
}

/** As it looks while it is pushed. */
export function pushedCurve({ parts }: PushedEdge): Curve {
  return { start: parts.at(-1)!.segment.to, segments: parts.map(({ segment }) => segment), closed: true };
}

/** True where the push moved nothing. */
export function isUntouched(edge: PushedEdge, curve: Curve): boolean {
  return (
    edge.parts.length === curve.segments.length &&
    curveSteps(curve).every(({ segment }, i) => edge.parts[i]!.segment === segment)
  );
}
