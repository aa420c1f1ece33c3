import type { Point } from '@hidebound/geometry';
import type { Hide } from '@hidebound/leather';
import { group, line } from '../drawing/build.js';
import type { DrawingElement, GroupElement } from '../drawing/model.js';
import type { LabelBox } from '../label/label-box.js';
import { isFree } from '../label/place-outside.js';
import { measureBlock, setBlock } from '../label/text-block.js';
import { FINE_LINE_MM, INK_SOFT } from '../sheet/palette.js';
import { movePoints } from './hide-layers.js';
import type { HideView } from './hide-view.js';
import type { LabelDesk } from './piece-labels.js';
import type { PictureStyle } from './picture-style.js';

/** Half the breadth of a reading's cross. */
const READING_ARM_MM = 0.7;

const NAME = 'label reading';

/**
 * Thickness readings: a small cross where it was measured and the figure in mm beside it. One without room is left
 * out: a reading is never led to from afar, nor set over a piece.
 */
export function labelReadings(desk: LabelDesk, hide: Hide, view: HideView): GroupElement[] {
  const { fonts, style, space } = desk;
  const arm = READING_ARM_MM * style.grow;
  return hide.leather.readings.flatMap(({ at, mm }, i) => {
    const [p] = movePoints(view.toDrawing, [at]);
    const text = measureBlock(fonts, [
      { text: mm.toFixed(1), face: 'narrow', sizeMm: style.smallMm, colour: INK_SOFT },
    ]);
    // The cross at one end, as much room behind it as it is broad, then the figure.
    const widthMm = text.widthMm + 3.5 * arm;
    const heightMm = Math.max(text.heightMm, 2 * arm) + arm;
    for (const side of [1, -1]) {
      const box: LabelBox = {
        center: { x: p!.x + side * (widthMm / 2 - arm), y: p!.y },
        widthMm,
        heightMm,
        angleDeg: 0,
      };
      if (!isFree(space, box)) continue;
      space.taken.push(box);
      const textBox = { ...box, center: { x: p!.x + side * (2 * arm + text.widthMm / 2), y: p!.y } };
      return [group(`${NAME} ${i + 1}`, [...cross(p!, style), ...setBlock(fonts, text, textBox)])];
    }
    return [];
  });
}

/** True of what `labelReadings` makes. */
export function isReadingLabel(element: DrawingElement): boolean {
  return element.kind === 'group' && element.name?.startsWith(NAME) === true;
}

/** The sign of a place where the thickness was measured. */
export function cross(p: Point, style: PictureStyle): DrawingElement[] {
  const arm = READING_ARM_MM * style.grow;
  const stroke = { colour: INK_SOFT, widthMm: FINE_LINE_MM * style.pen };
  return [
    line({ x: p.x - arm, y: p.y }, { x: p.x + arm, y: p.y }, stroke),
    line({ x: p.x, y: p.y - arm }, { x: p.x, y: p.y + arm }, stroke),
  ];
}
