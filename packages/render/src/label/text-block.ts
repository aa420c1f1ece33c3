import { sinCosDeg } from '@hidebound/geometry';
import type { FontFace, TextElement } from '../drawing/model.js';
import type { FontBook } from '../text/font-book.js';
import { measureText, textLine } from '../text/measure-text.js';
import type { LabelBox } from './label-box.js';

/** One line of a label. */
export interface BlockLine {
  readonly text: string;
  readonly face: FontFace;
  readonly sizeMm: number;
  readonly colour: string;
}

/** Lines of text with the room that they take up. */
export interface TextBlock {
  readonly lines: readonly BlockLine[];
  readonly widthMm: number;
  readonly heightMm: number;
  /** Baselines, from the block's top. */
  readonly baselines: readonly number[];
}

/** Room between the ink of two lines, as a share of the letters' size. */
const LEADING = 0.28;

/** Measures a block by its ink: the label's box is then as small as it can be. */
export function measureBlock(fonts: FontBook, lines: readonly BlockLine[]): TextBlock {
  let widthMm = 0;
  let y = 0;
  const baselines: number[] = [];
  lines.forEach((line, i) => {
    const measure = measureText(fonts, line.face, line.sizeMm, line.text);
    widthMm = Math.max(widthMm, measure.widthMm);
    if (i > 0) y += LEADING * line.sizeMm;
    y += measure.aboveMm;
    baselines.push(y);
    y += measure.belowMm;
  });
  return { lines, widthMm, heightMm: y, baselines };
}

/** The block's text elements, centred in the box, whose inner room is at least the block. */
export function setBlock(fonts: FontBook, block: TextBlock, box: LabelBox): TextElement[] {
  const { sin, cos } = sinCosDeg(box.angleDeg);
  return block.lines.map((line, i) => {
    const down = block.baselines[i]! - block.heightMm / 2;
    return textLine(fonts, line.text, {
      at: { x: box.center.x - down * sin, y: box.center.y + down * cos },
      sizeMm: line.sizeMm,
      colour: line.colour,
      face: line.face,
      anchor: 'middle',
      angleDeg: box.angleDeg,
    });
  });
}
