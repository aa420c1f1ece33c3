import { roundCoordinate } from '../point.js';
import type { Point } from '../types/shape.js';

/**
 * The frame in which a sheet is searched: u runs along `useFrom` into the sheet, v across it, turned the same way
 * as x and y. Pieces are pushed towards small u.
 */
export interface Frame {
  readonly fx: number;
  readonly fy: number;
}

export function frameOf(useFrom: Point): Frame {
  const length = Math.sqrt(useFrom.x * useFrom.x + useFrom.y * useFrom.y);
  return length > 0 ? { fx: useFrom.x / length, fy: useFrom.y / length } : { fx: 1, fy: 0 };
}

export function toU(frame: Frame, x: number, y: number): number {
  return x * frame.fx + y * frame.fy;
}

export function toV(frame: Frame, x: number, y: number): number {
  return y * frame.fx - x * frame.fy;
}

export function toX(frame: Frame, u: number, v: number): number {
  return u * frame.fx - v * frame.fy;
}

export function toY(frame: Frame, u: number, v: number): number {
  return u * frame.fy + v * frame.fx;
}

/** The place on the 0.001 mm grid of the sheet that is nearest to (u, v). */
export function roundedPlace(frame: Frame, u: number, v: number): Point {
  return { x: roundCoordinate(toX(frame, u, v)), y: roundCoordinate(toY(frame, u, v)) };
}

/** Flat corners [x0, y0, …] in the frame. */
export function ringToFrame(frame: Frame, ring: Float64Array): Float64Array {
  const turned = new Float64Array(ring.length);
  for (let i = 0; i < ring.length; i += 2) {
    turned[i] = toU(frame, ring[i]!, ring[i + 1]!);
    turned[i + 1] = toV(frame, ring[i]!, ring[i + 1]!);
  }
  return turned;
}
