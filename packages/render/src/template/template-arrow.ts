import type { Point } from '@hidebound/geometry';
import { chain, line } from '../drawing/build.js';
import type { DrawingElement } from '../drawing/model.js';
import type { LabelBox } from '../label/label-box.js';
import { BLACK } from './template-style.js';

/** Lengths that are tried, longest first, and the breadth of the head. */
export const TEMPLATE_ARROWS_MM: readonly number[] = [60, 42, 30, 20, 12];
export const TEMPLATE_ARROW_BREADTH_MM = 5;

const HEAD_LENGTH_MM = 7;
const SHAFT_MM = 0.7;

/** An arrow along the box's width, pointing the way of the direction: towards the tail. */
export function templateArrow(box: LabelBox, direction: Point): DrawingElement[] {
  const half = box.widthMm / 2;
  const at = (along: number, across: number): Point => ({
    x: box.center.x + direction.x * along - direction.y * across,
    y: box.center.y + direction.y * along + direction.x * across,
  });
  const head = Math.min(HEAD_LENGTH_MM, half);
  const wing = TEMPLATE_ARROW_BREADTH_MM * 0.4;
  return [
    line(at(-half, 0), at(half - head * 0.7, 0), { colour: BLACK, widthMm: SHAFT_MM }),
    chain([at(half, 0), at(half - head, wing), at(half - head * 0.72, 0), at(half - head, -wing)], true, {
      fill: BLACK,
    }),
  ];
}
