import { roundPoint } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import type { FlawShape } from '@hidebound/leather';
import { strokeAround, strokeLine } from '../../hide/marks/logic/stroke.js';
import { resizedShape } from '../../hide/marks/logic/flaws.js';

/** A stroke whose ends are nearer to each other than this share of its length goes around something. */
const CLOSED_SHARE = 0.2;

/** Sizes that a spot or a stroke of a found flaw may have, mm. */
export const FOUND_SIZES_MM = [2, 5, 10, 20, 40, 80, 160] as const;
export const USUAL_SPOT_MM = 20;
export const USUAL_STROKE_MM = 5;

/** What was touched: a round spot. */
export function touchedSpot(at: Point, acrossMm: number): FlawShape {
  return { kind: 'point', at: roundPoint(at), radiusMm: acrossMm / 2 };
}

/** What was drawn with one stroke: around something, or along it; undefined for a dab. Scale in px per mm. */
export function drawnShape(drawn: readonly Point[], scale: number, widthMm: number): FlawShape | undefined {
  if (goesAround(drawn)) {
    const outline = strokeAround(drawn, scale);
    if (outline !== undefined) return { kind: 'area', outline };
  }
  const line = strokeLine(drawn, scale);
  return line === undefined ? undefined : { kind: 'line', line, widthMm };
}

export function goesAround(drawn: readonly Point[]): boolean {
  const [start, end] = [drawn[0], drawn.at(-1)];
  if (start === undefined || end === undefined || drawn.length < 4) return false;
  const length = drawn.slice(1).reduce((sum, point, i) => sum + apart(point, drawn[i]!), 0);
  return apart(start, end) < CLOSED_SHARE * length;
}

/** The next size up or down; undefined where there is none, or where the shape was drawn as it is. */
export function nextSizeMm(shape: FlawShape | undefined, by: 1 | -1): number | undefined {
  if (shape === undefined || shape.kind === 'area') return undefined;
  const now = shape.kind === 'point' ? 2 * shape.radiusMm : shape.widthMm;
  return by === 1
    ? FOUND_SIZES_MM.find((size) => size > now)
    : [...FOUND_SIZES_MM].reverse().find((size) => size < now);
}

export function sizedShape(shape: FlawShape, sizeMm: number): FlawShape {
  return resizedShape(shape, shape.kind === 'point' ? sizeMm / 2 : sizeMm);
}

function apart(one: Point, other: Point): number {
  return Math.hypot(one.x - other.x, one.y - other.y);
}
