import { distanceBetween, roundPoint } from '@hidebound/geometry';
import type { Affine, Curve, Point } from '@hidebound/geometry';
import { FLAT_RUN_MM } from '../limits.js';

/** A straight line without ends, about which a half is unfolded. */
export interface Axis {
  readonly at: Point;
  /** Unit vector. */
  readonly along: Point;
}

/** A straight stretch from corner to corner. */
export interface Stretch {
  readonly from: Point;
  readonly to: Point;
}

/** Nothing if both points are one. */
export function axisThrough({ from, to }: Stretch): Axis | undefined {
  const length = distanceBetween(from, to);
  if (length === 0) return undefined;
  return { at: from, along: { x: (to.x - from.x) / length, y: (to.y - from.y) / length } };
}

/** How far p lies off the axis, mm: positive on one side, negative on the other. */
export function offAxis({ at, along }: Axis, p: Point): number {
  return along.x * (p.y - at.y) - along.y * (p.x - at.x);
}

/** Where p's foot lies along the axis, mm from its `at`. */
export function alongAxis({ at, along }: Axis, p: Point): number {
  return along.x * (p.x - at.x) + along.y * (p.y - at.y);
}

/** The foot of p on the axis, on the 1 µm grid. */
export function footOnAxis(axis: Axis, p: Point): Point {
  const off = offAxis(axis, p);
  return roundPoint({ x: p.x + off * axis.along.y, y: p.y - off * axis.along.x });
}

/** The reflection about the axis. */
export function mirrorAbout({ at, along }: Axis): Affine {
  const a = along.x * along.x - along.y * along.y;
  const b = 2 * along.x * along.y;
  return { a, b, c: b, d: -a, e: at.x - a * at.x - b * at.y, f: at.y - b * at.x + a * at.y };
}

/** The straight stretches of a curve: lines that go on in one direction count as one, also over a closed curve's start. */
export function straightStretches({ start, segments, closed }: Curve): Stretch[] {
  const runs: Stretch[] = [];
  let from = start;
  let grows = false;
  for (const segment of segments) {
    const last = runs.at(-1);
    if (segment.kind !== 'line') grows = false;
    else if (grows && last !== undefined && goesOn(last, segment.to)) {
      runs[runs.length - 1] = { from: last.from, to: segment.to };
    } else {
      runs.push({ from, to: segment.to });
      grows = true;
    }
    from = segment.to;
  }
  const [first, last] = [runs[0], runs.at(-1)];
  const meets = closed && segments[0]?.kind === 'line' && segments.at(-1)?.kind === 'line';
  if (!meets || runs.length < 2 || !goesOn(last!, first!.to)) return runs;
  return [{ from: last!.from, to: first!.to }, ...runs.slice(1, -1)];
}

/** True if the stretch prolonged to `to` is still straight, and does not turn back. */
function goesOn({ from, to: middle }: Stretch, to: Point): boolean {
  const axis = axisThrough({ from, to });
  if (axis === undefined || Math.abs(offAxis(axis, middle)) > FLAT_RUN_MM) return false;
  const at = alongAxis(axis, middle);
  return at > 0 && at < distanceBetween(from, to);
}

/** How much two stretches overlap, measured along the axis, mm. */
export function overlapAlong(axis: Axis, a: Stretch, b: Stretch): number {
  const [a1, a2, b1, b2] = [a.from, a.to, b.from, b.to].map((p) => alongAxis(axis, p)) as [
    number,
    number,
    number,
    number,
  ];
  return Math.min(Math.max(a1, a2), Math.max(b1, b2)) - Math.max(Math.min(a1, a2), Math.min(b1, b2));
}
