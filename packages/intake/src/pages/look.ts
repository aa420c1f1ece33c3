import type { DrawnLine } from '../drawing/drawn-line.js';

/** Widths of one line on two pages agree to this, mm. */
const WIDTH_STEP_MM = 0.1;

/** Lines that may go on in one another look alike: colour, filling, dash, width. */
export function lookOf({ stroke, fill, isDashed, widthMm }: DrawnLine): string {
  const width = stroke === undefined ? 0 : Math.round(widthMm / WIDTH_STEP_MM);
  return `${stroke ?? ''}|${fill ?? ''}|${isDashed}|${width}`;
}
