import { distanceBetween } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { JOINT_REACH_MM } from './limits.js';
import { nearestOnRun } from './run.js';
import type { RoundRun, Run, StraightRun } from './run.js';

/** Centres of smooth neighbours and runs that are nearly one give no crossing: this far from touching they still touch, mm. */
const TOUCHING_MM = 0.05;

/**
 * Where two neighbouring runs meet, nearest to where the chain was parted. Runs that do not meet there are joined half
 * way between them.
 */
export function jointOf(a: Run, b: Run, near: Point): Point {
  const candidates = crossings(a, b).filter((p) => distanceBetween(p, near) <= JOINT_REACH_MM);
  const [best] = candidates.sort((p, q) => distanceBetween(p, near) - distanceBetween(q, near));
  if (best !== undefined) return best;
  const [p, q] = [nearestOnRun(a, near), nearestOnRun(b, near)];
  return { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
}

function crossings(a: Run, b: Run): Point[] {
  if (a.kind === 'line' && b.kind === 'line') return lineCrossing(a, b);
  if (a.kind === 'arc' && b.kind === 'arc') return arcCrossings(a, b);
  return a.kind === 'line' ? lineArcCrossings(a, b as RoundRun) : lineArcCrossings(b as StraightRun, a);
}

function lineCrossing(a: StraightRun, b: StraightRun): Point[] {
  const det = Math.sin(b.angle - a.angle);
  if (det === 0) return [];
  return [
    {
      x: (a.offset * Math.sin(b.angle) - b.offset * Math.sin(a.angle)) / det,
      y: (b.offset * Math.cos(a.angle) - a.offset * Math.cos(b.angle)) / det,
    },
  ];
}

function lineArcCrossings(line: StraightRun, { centre, radius }: RoundRun): Point[] {
  const normal = { x: Math.cos(line.angle), y: Math.sin(line.angle) };
  const off = line.offset - normal.x * centre.x - normal.y * centre.y;
  const foot = { x: centre.x + off * normal.x, y: centre.y + off * normal.y };
  const half = Math.sqrt(Math.max(0, radius * radius - off * off));
  if (Math.abs(Math.abs(off) - radius) <= TOUCHING_MM * TOUCHING_SHARE) return [foot];
  if (Math.abs(off) > radius) return [];
  return [1, -1].map((k) => ({ x: foot.x - k * half * normal.y, y: foot.y + k * half * normal.x }));
}

/** Rules hold to a few micrometres: what is nearer to touching than this share of the above was meant to. */
const TOUCHING_SHARE = 0.1;

function arcCrossings(a: RoundRun, b: RoundRun): Point[] {
  const apart = distanceBetween(a.centre, b.centre);
  if (apart === 0) return [];
  const along = (apart * apart + a.radius * a.radius - b.radius * b.radius) / (2 * apart);
  const way = { x: (b.centre.x - a.centre.x) / apart, y: (b.centre.y - a.centre.y) / apart };
  const touch = Math.min(
    Math.abs(apart - a.radius - b.radius),
    Math.abs(apart - Math.abs(a.radius - b.radius)),
  );
  if (touch <= TOUCHING_MM * TOUCHING_SHARE) {
    const side = along >= 0 ? 1 : -1;
    return [{ x: a.centre.x + side * a.radius * way.x, y: a.centre.y + side * a.radius * way.y }];
  }
  const square = a.radius * a.radius - along * along;
  if (square < 0) return [];
  const half = Math.sqrt(square);
  return [1, -1].map((k) => ({
    x: a.centre.x + along * way.x - k * half * way.y,
    y: a.centre.y + along * way.y + k * half * way.x,
  }));
}
