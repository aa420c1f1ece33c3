import { arcCentre, cubicPoint, curveSteps, distanceBetween, roundPoint } from '@hidebound/geometry';
import type { ArcCircle, Curve, CurveSegment, Point } from '@hidebound/geometry';
import {
  ARC_CHORD_MAX_MM,
  ARC_CHORD_MAX_TURN_SINE,
  ARC_CHORDS_AT_LEAST,
  ARC_CHORDS_FIT_MM,
  ARC_CUBIC_FIT_MAX_MM,
  ARC_CUBIC_FIT_MM,
  ARC_CUBIC_FIT_SHARE,
  ARC_MAX_SAGITTA_MM,
  ARC_MIN_SWEEP_DEG,
} from '../limits.js';

/** One place where arcs took the place of what was drawn. */
export interface FittedArc {
  readonly at: Point;
  /** How far the arc lies from what was drawn, at the most, mm. */
  readonly offMm: number;
}

export interface FittedCurve {
  readonly curve: Curve;
  readonly fitted: readonly FittedArc[];
}

/**
 * Arcs where a curve was drawn as one and written as something else: runs of short chords, and cubics, that lie on one
 * circle. Corners of such a run lie within 0.02 mm of the arc, its ends stay. Polygons with corners that one can see
 * stay polygons.
 */
export function fitArcs(curve: Curve): FittedCurve {
  const steps = curveSteps(curve);
  const segments: CurveSegment[] = [];
  const fitted: FittedArc[] = [];
  for (let i = 0; i < steps.length;) {
    const run = runFrom(steps, i);
    if (run?.arcs === undefined) {
      const next = run?.end ?? i + 1;
      for (; i < next; i++) segments.push(steps[i]!.segment);
      continue;
    }
    segments.push(...run.arcs.segments);
    fitted.push({ at: steps[i]!.from, offMm: run.arcs.offMm });
    i = run.end;
  }
  return fitted.length === 0 ? { curve, fitted } : { curve: { ...curve, segments }, fitted };
}

type Step = ReturnType<typeof curveSteps>[number];

interface Run {
  /** Number of the first step after it. */
  readonly end: number;
  /** Nothing if arcs don't fit after all. */
  readonly arcs?: { readonly segments: CurveSegment[]; readonly offMm: number } | undefined;
}

function runFrom(steps: readonly Step[], i: number): Run | undefined {
  const { kind } = steps[i]!.segment;
  if (kind === 'arc') return undefined;
  return kind === 'line' ? chordRun(steps, i) : cubicRun(steps, i);
}

/** The longest run of chords from step i that lies on one circle and turns evenly. */
function chordRun(steps: readonly Step[], i: number): Run | undefined {
  const corner = (k: number): Point => (k < steps.length ? steps[k]!.from : steps[k - 1]!.segment.to);
  const isChord = (k: number) => {
    const step = steps[k];
    return step?.segment.kind === 'line' && distanceBetween(step.from, step.segment.to) <= ARC_CHORD_MAX_MM;
  };
  const fits = (circle: ArcCircle, from: number, to: number): boolean => {
    for (let k = from; k < to; k++) if (!isChord(k) || !chordFits(circle, k, i, corner)) return false;
    return true;
  };
  let end = i + ARC_CHORDS_AT_LEAST;
  if (end > steps.length) return undefined;
  for (let k = i; k < end; k++) if (!isChord(k)) return undefined;
  let circle = circleOver(i, end, corner);
  if (circle === undefined || !fits(circle, i, end)) return undefined;
  // The circle is drawn anew through more of the run each time that it has grown by half, so that it gets no less exact.
  let known = end;
  while (end < steps.length && isChord(end)) {
    if (end - i >= (known - i) * 1.5) {
      const better = circleOver(i, end, corner);
      if (better !== undefined && fits(better, i, end)) circle = better;
      known = end;
    }
    if (!fits(circle, end, end + 1)) break;
    end++;
  }
  const last = circleOver(i, end, corner) ?? circle;
  return { end, arcs: arcsOver(steps.slice(i, end), fits(last, i, end) ? last : circle, ARC_CHORDS_FIT_MM) };
}

/** The circle through the start, the middle and the end of the run, or through its thirds if it comes round to its start. */
function circleOver(from: number, to: number, corner: (k: number) => Point): ArcCircle | undefined {
  const n = to - from;
  const [a, b, c] = [corner(from), corner(from + (n >> 1)), corner(to)];
  const comesRound = distanceBetween(a, c) < distanceBetween(a, b);
  const circle = comesRound
    ? arcCentre(a, corner(from + Math.floor(n / 3)), corner(from + Math.floor((2 * n) / 3)))
    : arcCentre(a, b, c);
  return circle === 'straight' ? undefined : circle;
}

/** Chord k ends on the circle, is not seen as a straight line, and turns from the chord before it as the circle does. */
function chordFits(circle: ArcCircle, k: number, first: number, corner: (k: number) => Point): boolean {
  const { center, radius, sweepDeg } = circle;
  const [a, b] = [corner(k), corner(k + 1)];
  const length = distanceBetween(a, b);
  if (Math.abs(distanceBetween(b, center) - radius) > ARC_CHORDS_FIT_MM) return false;
  if ((length * length) / (8 * radius) > ARC_MAX_SAGITTA_MM) return false;
  if (k === first) return Math.abs(distanceBetween(a, center) - radius) <= ARC_CHORDS_FIT_MM;
  const before = corner(k - 1);
  const lengthBefore = distanceBetween(before, a);
  const cross = (a.x - before.x) * (b.y - a.y) - (a.y - before.y) * (b.x - a.x);
  const sine = (Math.sign(sweepDeg) * cross) / (length * lengthBefore);
  if (sine > ARC_CHORD_MAX_TURN_SINE) return false;
  // A corner of chords c and d on a circle turns by asin(c / 2r) + asin(d / 2r); corners are rounded to 1 µm.
  const expected = (length + lengthBefore) / (2 * radius);
  const rounding = (2 * ROUNDING_MM) / Math.min(length, lengthBefore);
  return Math.abs(sine - expected) <= UNEVEN_SHARE * expected + rounding;
}

/** How far rounding to 1 µm moves a corner across a chord, both of its ends together. */
const ROUNDING_MM = 0.0015;

/** Of an even run, a turn differs from what the circle asks for by no more than this share. */
const UNEVEN_SHARE = 0.2;

/** Places at which a cubic is held against a circle. */
const PROBES = [0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875, 1];

/** The cubic of step i and those after it that lie on the same circle. */
function cubicRun(steps: readonly Step[], i: number): Run | undefined {
  const { from, segment } = steps[i]!;
  const circle = arcCentre(from, cubicAt(steps[i]!, 0.5), segment.to);
  if (circle === 'straight' || Math.abs(circle.sweepDeg) < ARC_MIN_SWEEP_DEG) return undefined;
  const tolerance = cubicTolerance(circle.radius);
  let end = i;
  while (end < steps.length && steps[end]!.segment.kind === 'cubic' && liesOn(steps[end]!, circle, tolerance))
    end++;
  return end === i ? undefined : { end, arcs: arcsOver(steps.slice(i, end), circle, tolerance) };
}

/**
 * Formats without arcs hold circles as cubics that are off by up to 0.027 % of the radius (the usual four to a circle:
 * T. Goldapp, Computer Aided Geometric Design 8, 1991; from memory).
 */
function cubicTolerance(radius: number): number {
  return Math.min(Math.max(ARC_CUBIC_FIT_MM, ARC_CUBIC_FIT_SHARE * radius), ARC_CUBIC_FIT_MAX_MM);
}

/** All of the cubic lies on the circle and goes on around it the same way. */
function liesOn(step: Step, { center, radius, sweepDeg }: ArcCircle, tolerance: number): boolean {
  let before = step.from;
  return PROBES.every((t) => {
    const p = cubicAt(step, t);
    const turn = (before.x - center.x) * (p.y - center.y) - (before.y - center.y) * (p.x - center.x);
    before = p;
    return Math.abs(distanceBetween(p, center) - radius) <= tolerance && turn * sweepDeg > 0;
  });
}

function cubicAt({ from, segment }: Step, t: number): Point {
  if (segment.kind !== 'cubic') return segment.to;
  return cubicPoint({ p0: from, p1: segment.handle1, p2: segment.handle2, p3: segment.to }, t);
}

/** No arc turns farther: its ends stay well apart. */
const MAX_ARC_DEG = 181;

/** The run as arcs of half a turn at most, from corner to corner; nothing if one of them lies off what was drawn. */
function arcsOver(run: readonly Step[], circle: ArcCircle, tolerance: number): Run['arcs'] {
  const segments: CurveSegment[] = [];
  let offMm = 0;
  let total = 0;
  for (let from = 0; from < run.length;) {
    let to = from;
    let sweep = 0;
    for (; to < run.length; to++) {
      const next = sweepOf(run[to]!, circle);
      if (to > from && sweep + next > MAX_ARC_DEG) break;
      sweep += next;
    }
    const part = run.slice(from, to);
    const arc = arcOver(part, circle, sweep);
    const off = arc === undefined ? Infinity : offOf(part, arc, tolerance);
    if (arc === undefined || off === Infinity) return undefined;
    segments.push(arc.segment);
    offMm = Math.max(offMm, off);
    total += sweep;
    from = to;
  }
  return total < ARC_MIN_SWEEP_DEG ? undefined : { segments, offMm };
}

/** Degrees, without sign. */
function sweepOf({ from, segment }: Step, { center }: ArcCircle): number {
  const [ax, ay] = [from.x - center.x, from.y - center.y];
  const [bx, by] = [segment.to.x - center.x, segment.to.y - center.y];
  return (Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) * 180) / Math.PI;
}

interface DrawnArc {
  readonly segment: CurveSegment;
  readonly circle: ArcCircle;
}

function arcOver(
  part: readonly Step[],
  { center, radius, sweepDeg }: ArcCircle,
  sweep: number,
): DrawnArc | undefined {
  const { from } = part[0]!;
  const { to } = part.at(-1)!.segment;
  const half = (Math.sign(sweepDeg) * sweep * Math.PI) / 360;
  const [x, y] = [from.x - center.x, from.y - center.y];
  const stretch = radius / Math.hypot(x, y);
  const [cos, sin] = [stretch * Math.cos(half), stretch * Math.sin(half)];
  const via = roundPoint({ x: center.x + x * cos - y * sin, y: center.y + x * sin + y * cos });
  const circle = arcCentre(from, via, to);
  return circle === 'straight' ? undefined : { segment: { kind: 'arc', via, to }, circle };
}

/** How far what was drawn lies from the arc; infinite if a corner, or any of a cubic, is farther off than allowed. */
function offOf(part: readonly Step[], { circle }: DrawnArc, tolerance: number): number {
  let most = 0;
  for (const step of part) {
    const isLine = step.segment.kind === 'line';
    const off = (p: Point) => Math.abs(distanceBetween(p, circle.center) - circle.radius);
    const onCurve = isLine ? [step.segment.to] : PROBES.map((t) => cubicAt(step, t));
    const worst = Math.max(...onCurve.map(off));
    if (worst > tolerance) return Infinity;
    const { from, segment } = step;
    const middle = { x: (from.x + segment.to.x) / 2, y: (from.y + segment.to.y) / 2 };
    most = Math.max(most, worst, isLine ? off(middle) : 0);
  }
  return most;
}
