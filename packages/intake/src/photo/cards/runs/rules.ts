import { distanceBetween } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { DIRECTION_FLOOR_DEG, DIRECTION_SIGMAS, SMOOTH_DEG, SQUARE_WITHIN_DEG } from './limits.js';
import { nearestOnRun } from './run.js';
import type { RoundRun, Run, StraightRun } from './run.js';

/** What runs are meant to be to each other. */
export type Rule =
  /** Run a goes over into run b without a corner. */
  | { readonly kind: 'smooth'; readonly a: number; readonly b: number; readonly sign: 1 | -1 }
  /** Two lines are parallel or at right angles: angle a - angle b = turns × 90°. */
  | { readonly kind: 'square'; readonly a: number; readonly b: number; readonly turns: number };

const RADIANS = Math.PI / 180;

/** The direction in which a run is followed at a place, radians. */
function heading(run: Run, at: Point, towards: Point): number {
  if (run.kind === 'line') {
    const along = { x: -Math.sin(run.angle), y: Math.cos(run.angle) };
    const forward = along.x * towards.x + along.y * towards.y >= 0 ? 1 : -1;
    return Math.atan2(forward * along.y, forward * along.x);
  }
  const [dx, dy] = [at.x - run.centre.x, at.y - run.centre.y];
  return Math.atan2(run.sense * dx, -run.sense * dy);
}

/** Between -180° and 180°, in radians. */
function turnBetween(a: number, b: number): number {
  const turn = b - a;
  return turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
}

/** A joint of neighbours: where they were parted, and which way the chain goes there. */
export interface RoughJoint {
  readonly a: number;
  readonly b: number;
  readonly at: Point;
  readonly towards: Point;
}

/** Smooth joints: a line and an arc, or two arcs, that meet with hardly a corner. */
export function smoothRules(runs: readonly Run[], joints: readonly RoughJoint[]): Rule[] {
  return joints.flatMap(({ a, b, at, towards }): Rule[] => {
    const [first, second] = [runs[a]!, runs[b]!];
    if (a === b || (first.kind === 'line' && second.kind === 'line')) return [];
    const turn = turnBetween(
      heading(first, nearestOnRun(first, at), towards),
      heading(second, nearestOnRun(second, at), towards),
    );
    if (Math.abs(turn) > SMOOTH_DEG * RADIANS) return [];
    return [{ kind: 'smooth', a, b, sign: smoothSign(first, second) }];
  });
}

/** Of a line and an arc: on which side of the line the centre lies; of two arcs: 1 if both turn the same way. */
function smoothSign(a: Run, b: Run): 1 | -1 {
  if (a.kind === 'arc' && b.kind === 'arc') return a.sense === b.sense ? 1 : -1;
  const [line, arc] = a.kind === 'line' ? [a, b as RoundRun] : [b as StraightRun, a];
  return Math.cos(line.angle) * arc.centre.x + Math.sin(line.angle) * arc.centre.y >= line.offset ? 1 : -1;
}

/** A line with how well its direction is known. */
export interface KnownLine {
  readonly index: number;
  readonly angle: number;
  readonly sigma: number;
}

/**
 * Lines of one outline that are parallel or at right angles within what was measured. Each is held against the one that
 * is known best, so that nothing is turned by more than its own error.
 */
export function squareRules(lines: readonly KnownLine[]): Rule[] {
  const bestFirst = [...lines].sort((a, b) => a.sigma - b.sigma || a.index - b.index);
  const rules: Rule[] = [];
  const heads: KnownLine[] = [];
  for (const line of bestFirst) {
    const head = heads.find((one) => isSquare(one, line));
    if (head === undefined) heads.push(line);
    else
      rules.push({
        kind: 'square',
        a: line.index,
        b: head.index,
        turns: Math.round((line.angle - head.angle) / (Math.PI / 2)),
      });
  }
  return rules;
}

function isSquare(a: KnownLine, b: KnownLine): boolean {
  const turns = (b.angle - a.angle) / (Math.PI / 2);
  const off = Math.abs(turns - Math.round(turns)) * (Math.PI / 2);
  const known = DIRECTION_SIGMAS * Math.hypot(a.sigma, b.sigma) + DIRECTION_FLOOR_DEG * RADIANS;
  return off <= Math.min(known, SQUARE_WITHIN_DEG * RADIANS);
}

/** How far the runs miss a rule, mm (of directions: at the end of an arm of that length). */
export function missOfRule(rule: Rule, runs: readonly Run[], armMm: number): number {
  const [a, b] = [runs[rule.a]!, runs[rule.b]!];
  if (rule.kind === 'square') {
    if (a.kind !== 'line' || b.kind !== 'line') return 0;
    return (a.angle - b.angle - (rule.turns * Math.PI) / 2) * armMm;
  }
  if (a.kind === 'arc' && b.kind === 'arc') {
    const apart = distanceBetween(a.centre, b.centre);
    return rule.sign === 1 ? apart - Math.abs(a.radius - b.radius) : apart - a.radius - b.radius;
  }
  const [line, arc] = a.kind === 'line' ? [a, b as RoundRun] : [b as StraightRun, a];
  const off = Math.cos(line.angle) * arc.centre.x + Math.sin(line.angle) * arc.centre.y - line.offset;
  return rule.sign * off - arc.radius;
}
