import { BAR_MM } from '@hidebound/leather';
import { line } from '../drawing/build.js';
import type { DrawingElement } from '../drawing/model.js';

/** As fine as printers print without gaps, so that a rule can be laid on the middle of an end. */
const BAR_PEN_MM = 0.2;

/** Half the length of an end: long enough to lay a rule along, and outside the white that markers need. */
const END_HALF_MM = 5;

/** The bars through the middle of the sheet, each from the middle of one end line to the middle of the other. */
export function sheetBars(colour: string): readonly DrawingElement[] {
  const stroke = { colour, widthMm: BAR_PEN_MM };
  const halfX = BAR_MM.across / 2;
  const halfY = BAR_MM.down / 2;
  return [
    line({ x: -halfX, y: 0 }, { x: halfX, y: 0 }, stroke),
    line({ x: 0, y: -halfY }, { x: 0, y: halfY }, stroke),
    ...[-halfX, halfX].map((x) => line({ x, y: -END_HALF_MM }, { x, y: END_HALF_MM }, stroke)),
    ...[-halfY, halfY].map((y) => line({ x: -END_HALF_MM, y }, { x: END_HALF_MM, y }, stroke)),
  ];
}
