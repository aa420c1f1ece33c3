import { cubicPoint, distanceBetween } from '@hidebound/geometry';
import type { Cubic, Curve, CurveSegment, Point } from '@hidebound/geometry';

/** A B-spline as the format has it, or one that is given by points on it. */
export interface Spline {
  readonly degree: number;
  readonly knots: readonly number[];
  /** x, y and weight. */
  readonly controls: readonly Control[];
  readonly isClosed: boolean;
}

export type Control = readonly [x: number, y: number, weight: number];

/** Of Bézier form: one more control point than its degree; x and y times the weight. */
type Bezier = readonly Control[];

/** The highest degree that is read; drawing programs stay below 10, and the work grows with its square. */
export const MAX_DEGREE = 25;

/** Halvings of one span while it is fitted; with the fourth power of the step the error falls by 1e14. */
const MAX_HALVINGS = 12;

/** A knot span shorter than this share of the whole is none. */
const NO_SPAN = 1e-12;

/** What is wrong with the numbers of a spline, if anything. */
export function isSound({ degree, knots, controls }: Spline): boolean {
  if (!(degree >= 1 && degree <= MAX_DEGREE) || controls.length < degree + 1) return false;
  if (knots.length !== controls.length + degree + 1) return false;
  if (knots.some((knot, i) => i > 0 && knot < knots[i - 1]!)) return false;
  return knots[degree]! < knots[controls.length]! && controls.every(([, , weight]) => weight > 0);
}

/**
 * The spline as lines (degree 1) or cubics: exact where it is not rational and of degree 3 at most, else nowhere more
 * than the tolerance from it, in its own units. The pieces between knots come from blossoming (L. Ramshaw, 1989, from
 * memory): control point j of the span from a to b is the blossom at (a, …, a, b, …, b) with j times b.
 */
export function splineCurve(spline: Spline, tolerance: number): Curve {
  const { degree, knots, controls } = spline;
  const least = NO_SPAN * (knots[controls.length]! - knots[degree]!);
  const segments: CurveSegment[] = [];
  let start: Point | undefined;
  for (let k = degree; k < controls.length; k++) {
    if (knots[k + 1]! - knots[k]! <= least) continue;
    const bezier = spanOf(spline, k);
    start ??= flat(bezier[0]!);
    addBezier(segments, bezier, tolerance, MAX_HALVINGS);
  }
  return closeCurve(start!, segments, spline.isClosed);
}

/** Ends that meet but for rounding are one point; a closed spline whose ends do not meet goes back straight. */
function closeCurve(start: Point, segments: CurveSegment[], isClosed: boolean): Curve {
  const last = segments[segments.length - 1]!;
  const reach = Math.max(Math.abs(start.x), Math.abs(start.y), 1);
  const comesBack = segments.length > 1 && distanceBetween(start, last.to) <= ROUNDING * reach;
  if (comesBack) segments[segments.length - 1] = { ...last, to: start };
  else if (isClosed) segments.push({ kind: 'line', to: start });
  return { start, segments, closed: comesBack || isClosed };
}

/** Share of a coordinate by which programs that write decimals are off. */
const ROUNDING = 1e-9;

function spanOf({ degree, knots, controls }: Spline, k: number): Bezier {
  const [a, b] = [knots[k]!, knots[k + 1]!];
  const near = controls.slice(k - degree, k + 1).map(([x, y, w]): Control => [x * w, y * w, w]);
  return near.map((_, j) => {
    const row = near.map((control) => [...control] as [number, number, number]);
    for (let r = 1; r <= degree; r++) {
      const at = r > degree - j ? b : a;
      for (let i = degree; i >= r; i--) {
        const low = knots[k - degree + i]!;
        const share = (at - low) / (knots[k + 1 + i - r]! - low);
        for (let axis = 0; axis < 3; axis++) {
          row[i]![axis] = (1 - share) * row[i - 1]![axis]! + share * row[i]![axis]!;
        }
      }
    }
    return row[degree]!;
  });
}

function flat([x, y, w]: Control): Point {
  return { x: x / w, y: y / w };
}

function addBezier(segments: CurveSegment[], bezier: Bezier, tolerance: number, halvings: number): void {
  const points = bezier.map(flat);
  const [p0, p1, p2, p3] = points as [Point, Point, Point, Point];
  const isPlain = bezier.every(([, , w]) => Math.abs(w - bezier[0]![2]) <= ROUNDING * bezier[0]![2]);
  if (isPlain && points.length === 2) segments.push({ kind: 'line', to: p1 });
  else if (isPlain && points.length === 3) {
    segments.push({ kind: 'cubic', handle1: towards(p0, p1), handle2: towards(p2, p1), to: p2 });
  } else if (isPlain && points.length === 4) {
    segments.push({ kind: 'cubic', handle1: p1, handle2: p2, to: p3 });
  } else fitBezier(segments, bezier, tolerance, halvings);
}

/** Two thirds of the way: how a quadratic's one handle becomes two (degree elevation). */
function towards(end: Point, handle: Point): Point {
  return { x: end.x + (2 / 3) * (handle.x - end.x), y: end.y + (2 / 3) * (handle.y - end.y) };
}

/** Where a fitted cubic is compared with what it stands for. */
const COMPARED = [0.2, 0.35, 0.5, 0.65, 0.8] as const;

/** The cubic with the same ends and the same speed there; in halves if any place is off by more than the tolerance. */
function fitBezier(segments: CurveSegment[], bezier: Bezier, tolerance: number, halvings: number): void {
  const cubic = hermite(bezier);
  const isNear = COMPARED.every(
    (t) => distanceBetween(cubicPoint(cubic, t), pointAt(bezier, t)) <= tolerance,
  );
  if (isNear || halvings === 0) {
    segments.push({ kind: 'cubic', handle1: cubic.p1, handle2: cubic.p2, to: cubic.p3 });
    return;
  }
  const { before, after } = halve(bezier);
  fitBezier(segments, before, tolerance, halvings - 1);
  fitBezier(segments, after, tolerance, halvings - 1);
}

/** The derivative of a rational Bézier at its ends: degree times the ratio of weights times the way to the next point. */
function hermite(bezier: Bezier): Cubic {
  const n = bezier.length - 1;
  const handle = (end: Control, next: Control): Point => {
    const [from, to] = [flat(end), flat(next)];
    const reach = (n / 3) * (next[2] / end[2]);
    return { x: from.x + reach * (to.x - from.x), y: from.y + reach * (to.y - from.y) };
  };
  return {
    p0: flat(bezier[0]!),
    p1: handle(bezier[0]!, bezier[1]!),
    p2: handle(bezier[n]!, bezier[n - 1]!),
    p3: flat(bezier[n]!),
  };
}

/** By Bernstein's polynomials, each from the one before it; t lies well within 0 and 1. */
function pointAt(bezier: Bezier, t: number): Point {
  const n = bezier.length - 1;
  const ratio = t / (1 - t);
  let factor = 1;
  for (let i = 0; i < n; i++) factor *= 1 - t;
  let [sumX, sumY, sumW] = [0, 0, 0];
  for (let i = 0; i <= n; i++) {
    const control = bezier[i]!;
    sumX += factor * control[0];
    sumY += factor * control[1];
    sumW += factor * control[2];
    factor *= (ratio * (n - i)) / (i + 1);
  }
  return { x: sumX / sumW, y: sumY / sumW };
}

/** Both halves, by de Casteljau's construction. */
function halve(bezier: Bezier): { readonly before: Bezier; readonly after: Bezier } {
  let row: Control[] = [...bezier];
  const before: Control[] = [row[0]!];
  const after: Control[] = [row[row.length - 1]!];
  while (row.length > 1) {
    const next: Control[] = [];
    for (let i = 1; i < row.length; i++) next.push(middle(row[i - 1]!, row[i]!));
    row = next;
    before.push(row[0]!);
    after.push(row[row.length - 1]!);
  }
  return { before, after: after.reverse() };
}

function middle(a: Control, b: Control): Control {
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];
}
