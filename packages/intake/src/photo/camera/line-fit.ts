import type { Point } from '@hidebound/geometry';

/** A line: the places where (x, y) · normal = offset. */
export interface FittedLine {
  readonly normal: Point;
  readonly offset: number;
  /** Root mean square of what the points that count lie off, px. */
  readonly scatter: number;
}

const ROUNDS = 4;
/** Points farther off than so many typical misses don't count: a stain, a glint, a thread over the edge. */
const OUTLIER_TIMES = 3;
/** Nothing nearer than this is an outlier, px: edges in pictures are no better. */
const NEVER_OUT_PX = 0.05;

/** The line through points that are least off it, far ones left out; undefined for fewer than two of them. */
export function fitLine(points: readonly Point[]): FittedLine | undefined {
  let used = points;
  let line = plainLine(used);
  for (let round = 0; round < ROUNDS && line !== undefined; round++) {
    const current = line;
    const misses = points.map((point) => Math.abs(missOf(current, point)));
    const typical = [...misses].sort((a, b) => a - b)[misses.length >> 1]! * 1.4826;
    const limit = Math.max(NEVER_OUT_PX, OUTLIER_TIMES * typical);
    used = points.filter((_, i) => misses[i]! <= limit);
    line = plainLine(used);
  }
  return line;
}

function missOf(line: Pick<FittedLine, 'normal' | 'offset'>, { x, y }: Point): number {
  return x * line.normal.x + y * line.normal.y - line.offset;
}

function plainLine(points: readonly Point[]): FittedLine | undefined {
  if (points.length < 2) return undefined;
  let x = 0;
  let y = 0;
  for (const point of points) {
    x += point.x / points.length;
    y += point.y / points.length;
  }
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const point of points) {
    xx += (point.x - x) ** 2;
    xy += (point.x - x) * (point.y - y);
    yy += (point.y - y) ** 2;
  }
  const along = Math.atan2(2 * xy, xx - yy) / 2;
  const normal = { x: -Math.sin(along), y: Math.cos(along) };
  const line = { normal, offset: x * normal.x + y * normal.y, scatter: 0 };
  const sumSq = points.reduce((sum, point) => sum + missOf(line, point) ** 2, 0);
  return { ...line, scatter: Math.sqrt(sumSq / points.length) };
}

/** Where two lines meet; undefined for parallel ones. */
export function meetLines(a: FittedLine, b: FittedLine): Point | undefined {
  const determinant = a.normal.x * b.normal.y - a.normal.y * b.normal.x;
  if (Math.abs(determinant) < 1e-9) return undefined;
  return {
    x: (a.offset * b.normal.y - b.offset * a.normal.y) / determinant,
    y: (b.offset * a.normal.x - a.offset * b.normal.x) / determinant,
  };
}
