import type { G } from '@svgdotjs/svg.js';
import type { Polyline } from '@hidebound/geometry';
import type { EdgeHints } from '@hidebound/leather';
import { linePath } from '../../../../drawing/path-data.js';
import type { Pen } from '../bring-in.js';

/** Strokes of leather are whole lines, of floor dashed ones; places on the edge are small crosses. `scale`: px of the screen. */
export function drawMarks(layer: G, marks: EdgeHints, scale: number): void {
  for (const line of marks.hideStrokes) drawStroke(layer, 'hide', line);
  for (const line of marks.floorStrokes) drawStroke(layer, 'floor', line);
  const arm = 9 / scale;
  for (const { x, y } of marks.edgePoints) {
    const cross = `M${x - arm} ${y}H${x + arm}M${x} ${y - arm}V${y + arm}`;
    layer.path(cross).attr({ class: 'hide-pen-casing' });
    layer.path(cross).attr({ class: 'hide-pen is-edge' });
  }
}

export function drawStroke(layer: G, pen: Pen, line: Polyline): void {
  const path = linePath(line);
  layer.path(path).attr({ class: 'hide-pen-casing' });
  layer.path(path).attr({ class: `hide-pen is-${pen}` });
}
