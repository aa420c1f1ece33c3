import { atan2Deg, distanceBetween, normalizeDeg } from '@hidebound/geometry';
import type { Point, Ring } from '@hidebound/geometry';

/** The outline is looked at at places so far apart. */
const STEP_MM = 15;

/** Places on a ring, about `STEP_MM` apart, its corners among them. */
export function placesOn(ring: Ring): Point[] {
  return ring.flatMap((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    const parts = Math.max(1, Math.ceil(distanceBetween(p, q) / STEP_MM));
    return Array.from({ length: parts }, (_, k) => ({
      x: p.x + (k / parts) * (q.x - p.x),
      y: p.y + (k / parts) * (q.y - p.y),
    }));
  });
}

/**
 * From each place of a closed outline the longest run of places that one straight line from there passes within
 * `bandMm`: lists of points, none with fewer than three.
 */
export function straightRuns(places: readonly Point[], bandMm: number): Point[][] {
  return places.map((_, i) => runFrom(places, i, bandMm)).filter((run) => run.length >= 3);
}

/** Keeps the span of directions in which a line from the first place passes all others near enough. */
function runFrom(places: readonly Point[], from: number, bandMm: number): Point[] {
  const first = places[from]!;
  const run = [first];
  let base: number | undefined;
  let [low, high] = [-Infinity, Infinity];
  let farthest = 0;
  for (let step = 1; step < places.length; step++) {
    const p = places[(from + step) % places.length]!;
    const distance = distanceBetween(first, p);
    // A line back past the start is no edge any more.
    if (distance < farthest - bandMm) break;
    farthest = Math.max(farthest, distance);
    if (distance > bandMm) {
      const deg = atan2Deg(p.y - first.y, p.x - first.x);
      base ??= deg;
      const off = signedDeg(deg - base);
      if (off < low || off > high) break;
      const half = DEG_PER_RADIAN * (bandMm / distance);
      low = Math.max(low, off - half);
      high = Math.min(high, off + half);
    }
    run.push(p);
  }
  return run;
}

/** Near enough for a narrow band: the sine of a small angle is the angle. */
const DEG_PER_RADIAN = 57.29577951308232;

function signedDeg(deg: number): number {
  const within = normalizeDeg(deg);
  return within > 180 ? within - 360 : within;
}

/** Length of a run, straight from its first to its last place. */
export function runLengthMm(run: readonly Point[]): number {
  return distanceBetween(run[0]!, run[run.length - 1]!);
}

/** An end of a run that bends away from it by more than this has gone round a corner. */
const BENT_DEG = 25;

/** The run without what has gone round a corner at either end. */
export function withoutBentEnds(run: readonly Point[]): Point[] {
  const kept = [...run];
  const isBent = (p: Point, q: Point): boolean => {
    const whole = atan2Deg(run[run.length - 1]!.y - run[0]!.y, run[run.length - 1]!.x - run[0]!.x);
    return Math.abs(signedDeg(atan2Deg(q.y - p.y, q.x - p.x) - whole)) > BENT_DEG;
  };
  while (kept.length > 2 && isBent(kept[kept.length - 2]!, kept[kept.length - 1]!)) kept.pop();
  while (kept.length > 2 && isBent(kept[0]!, kept[1]!)) kept.shift();
  return kept;
}

/**
 * The straight line nearest to a run of an edge that has all of the run on its outer side: of the lines that touch the
 * run from within, the one that is nearest to it on the average. It rests on two places of the run (their hull's side
 * over the run's middle), which are given back. `inward` is a unit vector from the run into the hide.
 */
export function lineWithin(run: readonly Point[], inward: Point): readonly [Point, Point] {
  const axis = { x: inward.y, y: -inward.x };
  const seen = run
    .map((p) => ({ p, u: p.x * axis.x + p.y * axis.y, v: p.x * inward.x + p.y * inward.y }))
    .sort((a, b) => a.u - b.u || b.v - a.v);
  const middle = seen.reduce((sum, { u }) => sum + u, 0) / seen.length;
  const hull: typeof seen = [];
  for (const next of seen) {
    while (hull.length >= 2) {
      const [a, b] = [hull[hull.length - 2]!, hull[hull.length - 1]!];
      if ((b.u - a.u) * (next.v - a.v) - (b.v - a.v) * (next.u - a.u) < 0) break;
      hull.pop();
    }
    const last = hull[hull.length - 1];
    if (last === undefined || next.u > last.u) hull.push(next);
  }
  const over = hull.findIndex(({ u }, i) => i > 0 && u >= middle);
  const end = over === -1 ? hull.length - 1 : over;
  return [hull[Math.max(0, end - 1)]!.p, hull[end]!.p];
}
