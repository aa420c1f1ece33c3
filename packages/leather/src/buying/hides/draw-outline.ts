import { distanceBetween, sinCosDeg } from '@hidebound/geometry';
import type { Curve, CurveSegment, Point, Random } from '@hidebound/geometry';
import type { HidePlan, PlannedRun } from './hide-plan.js';

/** A run with its points in mm. */
interface Run {
  readonly kind: PlannedRun['kind'];
  readonly points: readonly Point[];
}

/** Sizes of a plan, mm: along, and from the base line out. */
export interface PlanSize {
  readonly lengthMm: number;
  readonly reachMm: number;
}

/** How rough an outline is drawn: 1 is usual, 0 as planned. */
export interface OutlineRoughness {
  readonly roughness: number;
}

/**
 * The closed outline of a plan, in mm, base line along the x axis: knife cuts straight, the rest smooth and wavering.
 * A half's base line is one straight line, from tail to head.
 */
export function drawOutline(
  random: Random,
  plan: HidePlan,
  size: PlanSize,
  { roughness }: OutlineRoughness,
): Curve {
  const scale = Math.sqrt(size.lengthMm * size.reachMm);
  const half = (fork: Random, sign: 1 | -1): Run[] =>
    plan.half.map(({ kind, points }) => ({
      kind,
      points: points.map(([x, y]) => ({
        x: x * size.lengthMm + shifted(fork, y, JITTER * scale * roughness),
        y: sign * (y * size.reachMm + shifted(fork, y, JITTER * scale * roughness)),
      })),
    }));
  const near = joined(half(random.fork(1), 1));
  const runs = plan.isWhole
    ? [...near, ...reversed(joined(half(random.fork(2), -1)))]
    : [...near, { kind: 'cut' as const, points: [lastOf(near), near[0]!.points[0]!] }];
  const waver = createWaver(random.fork(3), scale * roughness);
  return curveOfRuns(mergeNatural(runs), waver, STEP * scale);
}

/** In shares of the size: how far a planned point may be off, how far apart the points of a wavering edge are. */
const JITTER = 0.006;
const STEP = 0.045;

/** Points of the base line stay where they are, so that halves meet and cuts are straight. */
function shifted(random: Random, out: number, by: number): number {
  const shift = random.between(-by, by);
  return out === 0 ? 0 : shift;
}

/** Where runs meet they share a point; each drew its own. */
function joined(runs: readonly Run[]): Run[] {
  const all: Run[] = [];
  for (const run of runs) {
    const last = all[all.length - 1];
    all.push(last === undefined ? run : { ...run, points: [lastOf(all), ...run.points.slice(1)] });
  }
  return all;
}

function reversed(runs: readonly Run[]): Run[] {
  return runs.map(({ kind, points }) => ({ kind, points: [...points].reverse() })).reverse();
}

function lastOf(runs: readonly Run[]): Point {
  const { points } = runs[runs.length - 1]!;
  return points[points.length - 1]!;
}

/** Natural edges run on over the base line; the same goes for a cut across it. */
function mergeNatural(runs: readonly Run[]): Run[] {
  const merged: Run[] = [];
  for (const run of runs) {
    const last = merged[merged.length - 1];
    if (last?.kind === 'natural' && run.kind === 'natural') {
      merged[merged.length - 1] = { kind: 'natural', points: [...last.points, ...run.points.slice(1)] };
    } else merged.push(run);
  }
  const first = merged[0]!;
  const last = merged[merged.length - 1]!;
  if (merged.length > 1 && first.kind === 'natural' && last.kind === 'natural') {
    merged.pop();
    merged[0] = { kind: 'natural', points: [...last.points, ...first.points.slice(1)] };
  }
  return merged;
}

/** How far out the edge is at a share of a run, mm. */
type Waver = (share: number, lengthMm: number) => number;

/** Waves in shares of the size: how long, and how far they reach out. */
const WAVES: readonly (readonly [long: number, reach: number])[] = [
  [0.55, 0.008],
  [0.27, 0.006],
  [0.15, 0.004],
];

/** Whole numbers of waves, so that a closed edge meets itself. */
function createWaver(random: Random, scale: number): Waver {
  const waves = WAVES.map(([long, reach]) => ({
    long: long * scale,
    reach: reach * scale * random.between(0.5, 1),
    phase: random.between(0, 360),
  }));
  return (share, lengthMm) => {
    let out = 0;
    for (const { long, reach, phase } of waves) {
      if (long === 0) continue;
      const count = Math.max(1, Math.round(lengthMm / long));
      out += reach * sinCosDeg(phase + 360 * count * share).sin;
    }
    return out;
  };
}

function curveOfRuns(runs: readonly Run[], waver: Waver, step: number): Curve {
  const isClosed = runs.length === 1 && runs[0]!.kind === 'natural';
  const segments: CurveSegment[] = [];
  let start: Point | undefined;
  for (const { kind, points } of runs) {
    const through = kind === 'cut' ? points : wavering(points, waver, step, isClosed);
    start ??= through[0]!;
    if (kind === 'cut') for (const to of through.slice(1)) segments.push({ kind: 'line', to });
    else segments.push(...smoothSegments(through, isClosed));
  }
  return closedAt(start!, segments);
}

function closedAt(start: Point, segments: CurveSegment[]): Curve {
  const last = segments[segments.length - 1]!;
  segments[segments.length - 1] = { ...last, to: start };
  return { start, segments, closed: true };
}

/** Points along the smooth line through the given ones, moved in and out by the waver; ends of an open one stay. */
function wavering(points: readonly Point[], waver: Waver, step: number, isClosed: boolean): Point[] {
  const smooth = smoothSegments(points, isClosed);
  const chords = points.slice(1).map((p, i) => distanceBetween(points[i]!, p));
  const total = chords.reduce((sum, chord) => sum + chord, 0);
  const all: Point[] = [];
  let before = 0;
  smooth.forEach((segment, i) => {
    if (segment.kind !== 'cubic') return;
    const count = Math.max(1, Math.round(chords[i]! / step));
    for (let k = 0; k < count; k++) {
      const t = k / count;
      const share = (before + t * chords[i]!) / total;
      const taper = isClosed
        ? 1
        : Math.min(1, (TAPER * share * total) / step, (TAPER * (1 - share) * total) / step);
      all.push(movedOut(points[i]!, segment, t, taper * waver(share, total)));
    }
    before += chords[i]!;
  });
  all.push(isClosed ? all[0]! : points[points.length - 1]!);
  return all;
}

/** The waver grows to its full reach over three steps from a corner. */
const TAPER = 1 / 3;

function movedOut(from: Point, segment: CurveSegment & { kind: 'cubic' }, t: number, out: number): Point {
  const { handle1, handle2, to } = segment;
  const s = 1 - t;
  const weigh = (a: number, b: number, c: number, d: number): number =>
    s * s * s * a + 3 * s * s * t * b + 3 * s * t * t * c + t * t * t * d;
  const slope = (a: number, b: number, c: number, d: number): number =>
    s * s * (b - a) + 2 * s * t * (c - b) + t * t * (d - c);
  const dx = slope(from.x, handle1.x, handle2.x, to.x);
  const dy = slope(from.y, handle1.y, handle2.y, to.y);
  const length = Math.sqrt(dx * dx + dy * dy);
  const n = length === 0 ? 0 : out / length;
  return {
    x: weigh(from.x, handle1.x, handle2.x, to.x) - dy * n,
    y: weigh(from.y, handle1.y, handle2.y, to.y) + dx * n,
  };
}

/** Cubics through all points; each handle a third of its chord along the direction from neighbour to neighbour. */
export function smoothSegments(points: readonly Point[], isClosed: boolean): CurveSegment[] {
  const last = points.length - 1;
  const at = (i: number): Point => {
    if (!isClosed) return points[Math.max(0, Math.min(last, i))]!;
    return points[((i % last) + last) % last]!;
  };
  const along = (i: number): Point => {
    const dx = at(i + 1).x - at(i - 1).x;
    const dy = at(i + 1).y - at(i - 1).y;
    const length = Math.sqrt(dx * dx + dy * dy);
    return length === 0 ? { x: 0, y: 0 } : { x: dx / length, y: dy / length };
  };
  return points.slice(1).map((to, i) => {
    const from = points[i]!;
    const third = distanceBetween(from, to) / 3;
    const a = along(i);
    const b = along(i + 1);
    return {
      kind: 'cubic',
      handle1: { x: from.x + a.x * third, y: from.y + a.y * third },
      handle2: { x: to.x - b.x * third, y: to.y - b.y * third },
      to,
    };
  });
}
