import {
  composeAffine,
  regionBox,
  scaling,
  sinCosDeg,
  transformRegion,
  translation,
} from '@hidebound/geometry';
import type { Box, Point, Region } from '@hidebound/geometry';
import { hideRegion, voidRegions } from '@hidebound/leather';
import type { StockRow } from '@hidebound/leather';
import { chain, line, path, regionCurves } from '../drawing/build.js';
import type { Drawing, DrawingElement } from '../drawing/model.js';
import { BARE_HIDE, CUT_LINE_MM, FINE_LINE_MM, INK, INK_SOFT, OXBLOOD, PIECE } from '../sheet/palette.js';
import type { FontBook } from '../text/font-book.js';
import { fitText, textLine } from '../text/measure-text.js';
import { areaWords, rectangleWords } from './stock-words.js';

/** A hide within a box: its outline, what is never to be used, its largest rectangle, its direction. */
export function hideInBox(row: StockRow, box: Box): DrawingElement[] {
  const region = hideRegion(row.hide);
  const own = regionBox(region);
  const room = { x: box.maxX - box.minX, y: box.maxY - box.minY };
  const grow = Math.min(room.x / (own.maxX - own.minX), room.y / (own.maxY - own.minY));
  const at = composeAffine(
    translation(
      (box.minX + box.maxX - grow * (own.minX + own.maxX)) / 2,
      (box.minY + box.maxY - grow * (own.minY + own.maxY)) / 2,
    ),
    scaling(grow),
  );
  const placed = (shape: Region): Region => transformRegion(at, shape);
  const { rectangle, directionDeg } = row.sizes;
  return [
    path(regionCurves(placed(region)), {
      fill: BARE_HIDE,
      stroke: { colour: INK, widthMm: CUT_LINE_MM },
    }),
    ...(rectangle === undefined
      ? []
      : [
          chain(placed({ outer: rectangle.corners, openings: [] }).outer, true, {
            fill: PIECE,
            stroke: { colour: INK_SOFT, widthMm: FINE_LINE_MM, dashMm: [1, 0.7] },
          }),
        ]),
    ...voidRegions(row.hide).map((flaw) => path(regionCurves(placed(flaw)), { fill: OXBLOOD })),
    ...(directionDeg === undefined
      ? []
      : directionArrow(
          { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 },
          directionDeg,
          Math.min(room.x, room.y) * 0.34,
        )),
  ];
}

/** An arrow to the tail, about its middle. */
function directionArrow(middle: Point, angleDeg: number, lengthMm: number): DrawingElement[] {
  const { sin, cos } = sinCosDeg(angleDeg);
  const at = (along: number, across: number): Point => ({
    x: middle.x + along * cos - across * sin,
    y: middle.y + along * sin + across * cos,
  });
  const stroke = { colour: INK, widthMm: FINE_LINE_MM };
  const [half, head] = [lengthMm / 2, Math.min(1.8, lengthMm / 4)];
  return [
    line(at(-half, 0), at(half, 0), stroke),
    chain([at(half - head, -head / 2), at(half, 0), at(half - head, head / 2)], false, { stroke }),
  ];
}

const CELLS_ABREAST = 4;
const PICTURE_MM = 34;
const WORDS_MM = 13;
const GAP_MM = 4;
const TEXT_MM = 2.9;

/** The hides as small pictures, each to its own scale, so many side by side; a drawing for each row of them. */
export function stockPictures(rows: readonly StockRow[], fonts: FontBook, widthMm: number): Drawing[] {
  const cellMm = (widthMm - GAP_MM * (CELLS_ABREAST - 1)) / CELLS_ABREAST;
  const drawings: Drawing[] = [];
  for (let from = 0; from < rows.length; from += CELLS_ABREAST) {
    const elements = rows.slice(from, from + CELLS_ABREAST).flatMap((row, i) => {
      const left = i * (cellMm + GAP_MM);
      const words = [
        row.hide.id,
        `largest ${rectangleWords(row.sizes.rectangle)}`,
        areaWords(row.sizes.usableMm2),
      ];
      return [
        ...hideInBox(row, { minX: left, minY: 1, maxX: left + cellMm, maxY: PICTURE_MM }),
        ...words.map((text, k) => {
          const face = k === 0 ? 'narrow bold' : 'narrow';
          return textLine(fonts, fitText(fonts, face, TEXT_MM, text, cellMm), {
            at: { x: left, y: PICTURE_MM + (k + 1) * TEXT_MM * 1.35 },
            sizeMm: TEXT_MM,
            colour: k === 0 ? INK : INK_SOFT,
            face,
          });
        }),
      ];
    });
    drawings.push({
      widthMm,
      heightMm: PICTURE_MM + WORDS_MM,
      title: 'Hides and offcuts',
      layers: [{ name: 'hides', elements }],
    });
  }
  return drawings;
}
