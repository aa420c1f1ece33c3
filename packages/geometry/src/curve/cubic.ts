import type { Point } from '../types/shape.js';

/** A cubic Bézier by its four points. */
export interface Cubic {
  readonly p0: Point;
  readonly p1: Point;
  readonly p2: Point;
  readonly p3: Point;
}

/** The point at parameter t. */
export function cubicPoint(c: Cubic, t: number): Point {
  return {
    x: cubicValue(c.p0.x, c.p1.x, c.p2.x, c.p3.x, t),
    y: cubicValue(c.p0.y, c.p1.y, c.p2.y, c.p3.y, t),
  };
}

function cubicValue(p0: number, p1: number, p2: number, p3: number, t: number): number {
  const s = 1 - t;
  return s * s * s * p0 + 3 * s * s * t * p1 + 3 * s * t * t * p2 + t * t * t * p3;
}

/** The derivative by t at parameter t. */
export function cubicDerivative(c: Cubic, t: number): Point {
  const s = 1 - t;
  const a = 3 * s * s;
  const b = 6 * s * t;
  const d = 3 * t * t;
  return {
    x: a * (c.p1.x - c.p0.x) + b * (c.p2.x - c.p1.x) + d * (c.p3.x - c.p2.x),
    y: a * (c.p1.y - c.p0.y) + b * (c.p2.y - c.p1.y) + d * (c.p3.y - c.p2.y),
  };
}

/** The two parts before and after parameter t (de Casteljau). */
export function splitCubic(c: Cubic, t: number): readonly [Cubic, Cubic] {
  const p01 = mix(c.p0, c.p1, t);
  const p12 = mix(c.p1, c.p2, t);
  const p23 = mix(c.p2, c.p3, t);
  const p012 = mix(p01, p12, t);
  const p123 = mix(p12, p23, t);
  const middle = mix(p012, p123, t);
  return [
    { p0: c.p0, p1: p01, p2: p012, p3: middle },
    { p0: middle, p1: p123, p2: p23, p3: c.p3 },
  ];
}

/** The parts between the given parameters, which ascend within (0, 1). */
export function splitCubicAt(c: Cubic, parameters: readonly number[]): Cubic[] {
  const parts: Cubic[] = [];
  let rest = c;
  let from = 0;
  for (const t of parameters) {
    const [head, tail] = splitCubic(rest, (t - from) / (1 - from));
    parts.push(head);
    rest = tail;
    from = t;
  }
  parts.push(rest);
  return parts;
}

/** Parameters in (0, 1), ascending, at which the curve turns from bending one way to the other. */
export function cubicInflections(c: Cubic): number[] {
  const ax = c.p1.x - c.p0.x;
  const ay = c.p1.y - c.p0.y;
  const bx = c.p2.x - c.p1.x - ax;
  const by = c.p2.y - c.p1.y - ay;
  const dx = c.p3.x - 3 * c.p2.x + 3 * c.p1.x - c.p0.x;
  const dy = c.p3.y - 3 * c.p2.y + 3 * c.p1.y - c.p0.y;
  return rootsWithin(bx * dy - by * dx, ax * dy - ay * dx, ax * by - ay * bx);
}

/** Values at which one coordinate of a cubic turns back between its ends: two at most. */
export function cubicTurns(p0: number, p1: number, p2: number, p3: number): number[] {
  const turns = rootsWithin(p3 - 3 * p2 + 3 * p1 - p0, 2 * (p2 - 2 * p1 + p0), p1 - p0);
  for (let i = 0; i < turns.length; i++) turns[i] = cubicValue(p0, p1, p2, p3, turns[i]!);
  return turns;
}

/** Direction in which the curve leaves its start, not of unit length; zero only if all points coincide. */
export function cubicStartTangent(c: Cubic): Point {
  for (const p of [c.p1, c.p2, c.p3]) {
    if (p.x !== c.p0.x || p.y !== c.p0.y) return { x: p.x - c.p0.x, y: p.y - c.p0.y };
  }
  return { x: 0, y: 0 };
}

/** Direction in which the curve reaches its end. */
export function cubicEndTangent(c: Cubic): Point {
  for (const p of [c.p2, c.p1, c.p0]) {
    if (p.x !== c.p3.x || p.y !== c.p3.y) return { x: c.p3.x - p.x, y: c.p3.y - p.y };
  }
  return { x: 0, y: 0 };
}

/**
 * How far the curve can be from its chord, from above: three quarters of the farther handle's distance, as long
 * as both handles lie between the chord's ends; else infinity.
 */
export function cubicFlatness({ p0, p1, p2, p3 }: Cubic): number {
  return flatness(p1.x - p0.x, p1.y - p0.y, p2.x - p0.x, p2.y - p0.y, p3.x - p0.x, p3.y - p0.y);
}

/** `cubicFlatness` of handles a and b and end d, as seen from the start. */
export function flatness(ax: number, ay: number, bx: number, by: number, dx: number, dy: number): number {
  const lengthSq = dx * dx + dy * dy;
  if (lengthSq === 0) return Math.sqrt(Math.max(ax * ax + ay * ay, bx * bx + by * by));
  const along1 = ax * dx + ay * dy;
  const along2 = bx * dx + by * dy;
  if (along1 < 0 || along1 > lengthSq || along2 < 0 || along2 > lengthSq) return Infinity;
  const across = Math.max(Math.abs(ax * dy - ay * dx), Math.abs(bx * dy - by * dx));
  return (0.75 * across) / Math.sqrt(lengthSq);
}

/** Roots of a t² + b t + c in (0, 1), ascending, in the form that keeps digits when one coefficient is small. */
function rootsWithin(a: number, b: number, c: number): number[] {
  const discriminant = b * b - 4 * a * c;
  if (discriminant < 0) return [];
  const q = -0.5 * (b + (b < 0 ? -1 : 1) * Math.sqrt(discriminant));
  const one = a === 0 ? NaN : q / a;
  const other = q === 0 ? NaN : c / q;
  const hasOne = one > 0 && one < 1;
  const hasOther = other > 0 && other < 1 && !(hasOne && other === one);
  if (hasOne && hasOther) return one < other ? [one, other] : [other, one];
  return hasOne ? [one] : hasOther ? [other] : [];
}

function mix(a: Point, b: Point, t: number): Point {
  return { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
}
