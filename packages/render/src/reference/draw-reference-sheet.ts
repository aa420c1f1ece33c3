import { curveFromPolyline, translation } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { MARKERS_PER_SHEET, markerOutline } from '@hidebound/leather';
import type { SheetPaper } from '@hidebound/leather';
import { group, path } from '../drawing/build.js';
import type { Drawing, DrawingElement } from '../drawing/model.js';
import type { FontBook } from '../text/font-book.js';
import { sheetBars } from './sheet-bars.js';
import { sheetWords } from './sheet-words.js';

/** Pure black: a printer breaks up any grey into dots. */
const BLACK = '#000000';

export interface ReferenceSheetOptions {
  /** From 1. */
  readonly sheet: number;
  /** A4 or Letter; the drawing lies in its middle. */
  readonly paper: SheetPaper;
  readonly fonts: FontBook;
}

/** A reference sheet at true scale: four markers, the two bars to measure, its number, and how to use it. */
export function drawReferenceSheet({ sheet, paper, fonts }: ReferenceSheetOptions): Drawing {
  const middle: Point = { x: paper.widthMm / 2, y: paper.heightMm / 2 };
  const transform = translation(middle.x, middle.y);
  const centred = (name: string, elements: readonly DrawingElement[]) => ({
    name,
    elements: [group(name, elements, { transform })],
  });
  const markers = Array.from({ length: MARKERS_PER_SHEET }, (_, place) =>
    path(
      markerOutline({ sheet, place }).map((ring) => curveFromPolyline(ring, true)),
      { fill: BLACK },
    ),
  );
  return {
    widthMm: paper.widthMm,
    heightMm: paper.heightMm,
    title: `Reference sheet ${sheet}`,
    layers: [
      centred('markers', markers),
      centred('bars', sheetBars(BLACK)),
      centred('words', sheetWords({ sheet, fonts, colour: BLACK })),
    ],
  };
}
