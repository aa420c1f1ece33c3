import { distanceBetween } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';

/** A chalk line to measure from: its zero, the unit vector along it, and the one at a right angle to it. */
export interface SettingFrame {
  readonly origin: Point;
  readonly axis: Point;
  readonly out: Point;
}

/** Where a point lies: along the line from its zero, and out from it; below zero beyond the zero or on the other side. */
export interface Measure {
  readonly alongMm: number;
  readonly outMm: number;
}

/** Tapes and squares are read to half a millimetre. */
export const MEASURE_STEP_MM = 0.5;

/** The frame of a line from one point to another; `out` points to the side on which the third one lies. */
export function frameBetween(from: Point, to: Point, towards: Point): SettingFrame {
  const axis = unitBetween(from, to);
  const right = rightOf(axis);
  const side = (towards.x - from.x) * right.x + (towards.y - from.y) * right.y;
  return { origin: from, axis, out: side < 0 ? opposite(right) : right };
}

/** Unit vector from one point to another. */
export function unitBetween(from: Point, to: Point): Point {
  const length = distanceBetween(from, to);
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}

/** The unit vector to the right of another as seen from the grain side (y grows downwards). */
export function rightOf(axis: Point): Point {
  return { x: -axis.y + 0, y: axis.x };
}

export function opposite(v: Point): Point {
  return { x: -v.x + 0, y: -v.y + 0 };
}

export function dot(a: Point, b: Point): number {
  return a.x * b.x + a.y * b.y;
}

/** The exact measure of a point. */
export function measureIn(frame: SettingFrame, p: Point): Measure {
  const from = { x: p.x - frame.origin.x, y: p.y - frame.origin.y };
  return { alongMm: dot(from, frame.axis), outMm: dot(from, frame.out) };
}

/** The point of a measure. */
export function pointOf({ origin, axis, out }: SettingFrame, { alongMm, outMm }: Measure): Point {
  return {
    x: origin.x + axis.x * alongMm + out.x * outMm,
    y: origin.y + axis.y * alongMm + out.y * outMm,
  };
}

/** To the nearest half millimetre. */
export function roundLength(mm: number): number {
  return Math.round(mm / MEASURE_STEP_MM) * MEASURE_STEP_MM + 0;
}

export function roundMeasure({ alongMm, outMm }: Measure): Measure {
  return { alongMm: roundLength(alongMm), outMm: roundLength(outMm) };
}
