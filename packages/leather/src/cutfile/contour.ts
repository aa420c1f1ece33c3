import type { Curve, Point, Ring } from '@hidebound/geometry';
import type { CutKind, CutOwner } from './types.js';

/** A line that is to be cut or marked, before it is put in order. */
export interface Contour {
  readonly kind: CutKind;
  readonly of: CutOwner;
  /** Closed, or several open ones where others share a part of it. */
  readonly curves: readonly Curve[];
  /** On which side of a closed line the waste lies, where a lead-in may start. */
  readonly waste: 'outside' | 'inside' | 'none';
  /** Its closed line as corners, where something may lie within it. */
  readonly ring?: Ring;
  /** Contours of one lane are cut one after another. */
  readonly lane?: string;
  /** Where bridges stand on an open line, mm from its start; closed lines have them evenly. */
  readonly bridgesAtMm?: readonly number[];
}

/** How near a corner of a flattened line is to the true one; only what lies within what is judged by it. */
export const RING_TOLERANCE_MM = 0.02;

/** Two lines nearer than this are one: placements are rounded to a micrometre and angles to a millionth of a degree. */
export const SAME_LINE_MM = 0.005;

/** The line through `from` in a direction of unit length, and what lies how far along and across it. */
export interface Axis {
  readonly from: Point;
  readonly unit: Point;
}

export function alongAxis({ from, unit }: Axis, p: Point): number {
  return (p.x - from.x) * unit.x + (p.y - from.y) * unit.y;
}

export function acrossAxis({ from, unit }: Axis, p: Point): number {
  return (p.y - from.y) * unit.x - (p.x - from.x) * unit.y;
}

export function onAxis({ from, unit }: Axis, along: number, across: number): Point {
  return {
    x: from.x + along * unit.x - across * unit.y,
    y: from.y + along * unit.y + across * unit.x,
  };
}
