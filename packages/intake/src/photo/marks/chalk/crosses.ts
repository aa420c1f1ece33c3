import type { Point } from '@hidebound/geometry';
import { indicesOf } from '../map/thin.js';
import type { Patch } from '../map/thin.js';

/** Two short strokes that cross; in cells. */
export interface Cross {
  readonly at: Point;
  readonly widthCells: number;
}

/** Strokes of 20 to 60 mm, with room for what blur and a quick hand add or take. */
const LEAST_ARM_MM = 5;
const LEAST_STROKE_MM = 16;
const MOST_STROKE_MM = 75;

/** Crossed by hand at about a right angle. */
const LEAST_ANGLE_DEG = 60;

/** So many of its cells lie on the two strokes, and so much of each stroke is there. */
const LEAST_ON_STROKES = 0.88;
const LEAST_THERE = 0.72;

const ROUNDS = 8;
const START_EVERY_DEG = 15;

/** The cross that a patch of chalk is, if it is one. */
export function crossOf(patch: Patch, stepMm: number): Cross | undefined {
  if (Math.max(patch.width, patch.height) * stepMm > 1.2 * MOST_STROKE_MM) return undefined;
  const points = indicesOf(patch.cells).map((i) => {
    const x = i % patch.width;
    return { x: patch.x + x, y: patch.y + (i - x) / patch.width };
  });
  if (points.length < 20) return undefined;
  let best: Fit | undefined;
  for (let deg = 0; deg < 90; deg += START_EVERY_DEG) {
    const fit = fitted(points, deg);
    if (fit !== undefined && (best === undefined || fit.offSq < best.offSq)) best = fit;
  }
  return best === undefined ? undefined : judged(best, stepMm);
}

interface Line {
  readonly at: Point;
  readonly way: Point;
}

interface Fit {
  readonly lines: readonly [Line, Line];
  readonly points: readonly [readonly Point[], readonly Point[]];
  readonly offSq: number;
}

/** Cells to the nearer of two lines, lines through their cells, in turns. */
function fitted(points: readonly Point[], startDeg: number): Fit | undefined {
  const t = (startDeg * Math.PI) / 180;
  const at = meanOf(points);
  let lines: readonly [Line, Line] = [
    { at, way: { x: Math.cos(t), y: Math.sin(t) } },
    { at, way: { x: -Math.sin(t), y: Math.cos(t) } },
  ];
  let sets: [Point[], Point[]] = [[], []];
  for (let round = 0; round < ROUNDS; round++) {
    sets = [[], []];
    for (const point of points) {
      const d0 = Math.abs(offLine(lines[0], point));
      const d1 = Math.abs(offLine(lines[1], point));
      sets[d0 <= d1 ? 0 : 1].push(point);
    }
    if (sets[0].length < 6 || sets[1].length < 6) return undefined;
    lines = [lineThrough(sets[0]), lineThrough(sets[1])];
  }
  let offSq = 0;
  sets.forEach((set, k) => set.forEach((point) => (offSq += offLine(lines[k]!, point) ** 2)));
  return { lines, points: sets, offSq };
}

function judged({ lines, points }: Fit, stepMm: number): Cross | undefined {
  const [one, other] = lines;
  const sin = Math.abs(one.way.x * other.way.y - one.way.y * other.way.x);
  if (sin < Math.sin((LEAST_ANGLE_DEG * Math.PI) / 180)) return undefined;
  const at = meeting(one, other);
  const spans = [spanOf(one, points[0], at), spanOf(other, points[1], at)];
  const total = spans.reduce((sum, { low, high }) => sum + high - low, 0);
  const widthCells = (points[0].length + points[1].length) / Math.max(1, total);
  const half = widthCells / 2 + 2 / stepMm;
  const all = [...points[0], ...points[1]];
  const on = all.filter((p) => Math.min(Math.abs(offLine(one, p)), Math.abs(offLine(other, p))) <= half);
  if (on.length < LEAST_ON_STROKES * all.length) return undefined;
  const isCross = spans.every(({ low, high, there }) => {
    const length = (high - low) * stepMm;
    const arms = Math.min(-low, high) * stepMm;
    return (
      length >= LEAST_STROKE_MM && length <= MOST_STROKE_MM && arms >= LEAST_ARM_MM && there >= LEAST_THERE
    );
  });
  return isCross && widthCells * stepMm < leastLength(spans, stepMm) ? { at, widthCells } : undefined;
}

/** A stroke is at least so much longer than wide: else two blots would make a cross. */
function leastLength(
  spans: readonly { readonly low: number; readonly high: number }[],
  stepMm: number,
): number {
  return 0.45 * Math.min(...spans.map(({ low, high }) => (high - low) * stepMm));
}

interface Span {
  readonly low: number;
  readonly high: number;
  /** The share of the stroke's length on which there are cells; the middle belongs to both strokes. */
  readonly there: number;
}

function spanOf({ way }: Line, points: readonly Point[], at: Point): Span {
  const alongs = points.map(({ x, y }) => (x - at.x) * way.x + (y - at.y) * way.y);
  const low = Math.min(...alongs);
  const high = Math.max(...alongs);
  const filled = new Set(alongs.map((along) => Math.floor(along / 2)));
  for (let along = -4; along <= 4; along++) filled.add(Math.floor(along / 2));
  return { low, high, there: filled.size / Math.max(1, Math.ceil((high - low) / 2)) };
}

function meanOf(points: readonly Point[]): Point {
  const n = points.length;
  return {
    x: points.reduce((sum, { x }) => sum + x, 0) / n,
    y: points.reduce((sum, { y }) => sum + y, 0) / n,
  };
}

function offLine({ at, way }: Line, { x, y }: Point): number {
  return (x - at.x) * way.y - (y - at.y) * way.x;
}

/** The line that the cells lie nearest to, by the squares of their distances. */
function lineThrough(points: readonly Point[]): Line {
  const at = meanOf(points);
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const { x, y } of points) {
    xx += (x - at.x) ** 2;
    xy += (x - at.x) * (y - at.y);
    yy += (y - at.y) ** 2;
  }
  const t = 0.5 * Math.atan2(2 * xy, xx - yy);
  return { at, way: { x: Math.cos(t), y: Math.sin(t) } };
}

function meeting(one: Line, other: Line): Point {
  const cross = one.way.x * other.way.y - one.way.y * other.way.x;
  const dx = other.at.x - one.at.x;
  const dy = other.at.y - one.at.y;
  const along = (dx * other.way.y - dy * other.way.x) / cross;
  return { x: one.at.x + along * one.way.x, y: one.at.y + along * one.way.y };
}
