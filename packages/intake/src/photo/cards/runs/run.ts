import type { Point } from '@hidebound/geometry';

/** A straight line: all points p with normal · p = offset. */
export interface StraightRun {
  readonly kind: 'line';
  /** Direction of its normal, radians. */
  readonly angle: number;
  readonly offset: number;
}

export interface RoundRun {
  readonly kind: 'arc';
  readonly centre: Point;
  readonly radius: number;
  /** 1: turns clockwise as seen (y down), -1: the other way. */
  readonly sense: 1 | -1;
}

export type Run = StraightRun | RoundRun;

/** How far a place lies off a run, mm, with a sign. */
export function offRun(run: Run, { x, y }: Point): number {
  if (run.kind === 'line') return Math.cos(run.angle) * x + Math.sin(run.angle) * y - run.offset;
  return Math.hypot(x - run.centre.x, y - run.centre.y) - run.radius;
}

/** The place of a run nearest to a point. */
export function nearestOnRun(run: Run, p: Point): Point {
  if (run.kind === 'line') {
    const off = offRun(run, p);
    return { x: p.x - off * Math.cos(run.angle), y: p.y - off * Math.sin(run.angle) };
  }
  const { centre, radius } = run;
  const away = Math.hypot(p.x - centre.x, p.y - centre.y);
  if (away === 0) return { x: centre.x + radius, y: centre.y };
  return {
    x: centre.x + ((p.x - centre.x) * radius) / away,
    y: centre.y + ((p.y - centre.y) * radius) / away,
  };
}
