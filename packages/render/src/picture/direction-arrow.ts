import { atan2Deg } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { chain, line } from '../drawing/build.js';
import type { DrawingElement } from '../drawing/model.js';
import type { LabelBox } from '../label/label-box.js';
import { INK } from '../sheet/palette.js';

const HEAD_LENGTH_MM = 1.5;
const HEAD_HALF_WIDTH_MM = 0.55;
const SHAFT_MM = 0.22;

/** Breadth of an arrow's box. */
export const ARROW_BREADTH_MM = 2 * HEAD_HALF_WIDTH_MM + 0.1;

/** The lengths that are tried, longest first. */
export const ARROW_LENGTHS_MM: readonly number[] = [11, 8, 6, 4.5, 3.4, 2.6, 2];

/** The room that an arrow of this length takes up. */
export function arrowAngleDeg(direction: Point): number {
  return atan2Deg(direction.y, direction.x);
}

/** An arrow that fills the box along its width, pointing the way of the direction. */
export function directionArrow(box: LabelBox, direction: Point, grow: number): DrawingElement[] {
  const half = box.widthMm / 2;
  const at = (along: number, across: number): Point => ({
    x: box.center.x + direction.x * along - direction.y * across,
    y: box.center.y + direction.y * along + direction.x * across,
  });
  const head = Math.min(HEAD_LENGTH_MM * grow, box.widthMm * 0.75);
  const wing = HEAD_HALF_WIDTH_MM * grow;
  return [
    line(at(-half, 0), at(half - head * 0.7, 0), { colour: INK, widthMm: SHAFT_MM * Math.min(grow, 1.5) }),
    chain([at(half, 0), at(half - head, wing), at(half - head * 0.72, 0), at(half - head, -wing)], true, {
      fill: INK,
    }),
  ];
}

/** Where the arrow begins. */
export function arrowTail(box: LabelBox, direction: Point): Point {
  const half = box.widthMm / 2;
  return { x: box.center.x - direction.x * half, y: box.center.y - direction.y * half };
}
