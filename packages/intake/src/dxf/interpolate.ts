import { distanceBetween } from '@hidebound/geometry';
import type { Curve, CurveSegment, Point } from '@hidebound/geometry';

/** Points gone on with beyond both ends of a closed curve: each lets what its end does fall to about a quarter. */
const WRAP = 16;

/**
 * A smooth curve through points: the cubic spline whose bend goes on evenly, with steps as long as the chords, ends
 * without bend (a natural spline; C. de Boor, "A Practical Guide to Splines", chapter 4, from memory). A closed one
 * goes round as if it had no ends. Directions at the ends count where they are given. Nothing of fewer than two points.
 */
export function curveThrough(
  given: readonly Point[],
  isClosed: boolean,
  startWay?: Point,
  endWay?: Point,
): Curve | undefined {
  const points = given.filter((p, i) => i === 0 || distanceBetween(p, given[i - 1]!) > 0);
  if (isClosed && points.length > 1 && distanceBetween(points[0]!, points.at(-1)!) === 0) points.pop();
  const count = points.length;
  if (count < 2) return undefined;
  if (!isClosed || count < 3) return through(points, 0, count - 1, false, startWay, endWay);
  const around = Array.from(
    { length: count + 1 + 2 * WRAP },
    (_, i) => points[(((i - WRAP) % count) + count) % count]!,
  );
  return through(around, WRAP, WRAP + count, true);
}

/** The pieces from one point to another of the spline through all. */
function through(
  points: readonly Point[],
  from: number,
  to: number,
  closed: boolean,
  startWay?: Point,
  endWay?: Point,
): Curve {
  const steps = points.slice(1).map((p, i) => distanceBetween(points[i]!, p));
  const xs = slopes(
    points.map(({ x }) => x),
    steps,
    startWay?.x,
    endWay?.x,
  );
  const ys = slopes(
    points.map(({ y }) => y),
    steps,
    startWay?.y,
    endWay?.y,
  );
  const segments: CurveSegment[] = [];
  for (let i = from; i < to; i++) {
    const third = steps[i]! / 3;
    const [a, b] = [points[i]!, points[i + 1]!];
    segments.push({
      kind: 'cubic',
      handle1: { x: a.x + third * xs[i]!, y: a.y + third * ys[i]! },
      handle2: { x: b.x - third * xs[i + 1]!, y: b.y - third * ys[i + 1]! },
      to: { x: b.x, y: b.y },
    });
  }
  const { x, y } = points[from]!;
  return { start: { x, y }, segments, closed };
}

/** Slopes at all points: one row of a tridiagonal system each, solved from the first to the last and back. */
function slopes(
  values: readonly number[],
  steps: readonly number[],
  first: number | undefined,
  last: number | undefined,
): number[] {
  const n = values.length;
  const factor: number[] = [];
  const right: number[] = [];
  for (let i = 0; i < n; i++) {
    const { below, middle, above, value } = rowAt(i, values, steps, first, last);
    const scale = middle - below * (factor[i - 1] ?? 0);
    factor.push(above / scale);
    right.push((value - below * (right[i - 1] ?? 0)) / scale);
  }
  for (let i = n - 2; i >= 0; i--) right[i]! -= factor[i]! * right[i + 1]!;
  return right;
}

function rowAt(
  i: number,
  values: readonly number[],
  steps: readonly number[],
  first: number | undefined,
  last: number | undefined,
): { below: number; middle: number; above: number; value: number } {
  const n = values.length;
  const rise = (k: number) => (values[k + 1]! - values[k]!) / steps[k]!;
  if (i === 0) {
    return first !== undefined
      ? { below: 0, middle: 1, above: 0, value: first }
      : { below: 0, middle: 2, above: 1, value: 3 * rise(0) };
  }
  if (i === n - 1) {
    return last !== undefined
      ? { below: 0, middle: 1, above: 0, value: last }
      : { below: 1, middle: 2, above: 0, value: 3 * rise(n - 2) };
  }
  const [before, after] = [steps[i - 1]!, steps[i]!];
  return {
    below: after,
    middle: 2 * (before + after),
    above: before,
    value: 3 * (after * rise(i - 1) + before * rise(i)),
  };
}
