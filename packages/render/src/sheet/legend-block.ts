import { curveFromPolyline } from '@hidebound/geometry';
import type { Box } from '@hidebound/geometry';
import { boxCorners, chain, line, rectangle } from '../drawing/build.js';
import type { DrawingElement } from '../drawing/model.js';
import { directionArrow } from '../picture/direction-arrow.js';
import { spoiledCross } from '../picture/gone-pieces.js';
import type { MarkMeaning } from '../picture/hide-marks.js';
import type { PictureContent } from '../picture/layout-picture.js';
import { markPattern, markSign, offcutPattern } from '../picture/mark-pattern.js';
import type { PictureStyle } from '../picture/picture-style.js';
import { cross } from '../picture/reading-labels.js';
import type { FontBook } from '../text/font-book.js';
import { textLine } from '../text/measure-text.js';
import {
  CUT_LINE_MM,
  FINE_LINE_MM,
  FREEING_CUT_MM,
  INK,
  INK_SOFT,
  MARK_LINE_MM,
  PAPER,
  PIECE,
  ROUGH_CUT_MM,
  RULE,
  UNSURE_GLOW,
} from './palette.js';
import type { PanelBlock, PanelRow, PanelStyle } from './panel.js';
import { MIRRORED_SIGN } from './words.js';

const SWATCH_MM = 7.5;
const SWATCH_GAP_MM = 2;

const NOTHING: MarkMeaning = { never: false, second: false, hidden: false, weak: false };
const NEVER: MarkMeaning = { ...NOTHING, never: true };
const SECOND: MarkMeaning = { ...NOTHING, second: true };
const HIDDEN: MarkMeaning = { ...NOTHING, hidden: true };
const WEAK: MarkMeaning = { ...NOTHING, weak: true };

export type Swatch = (box: Box) => readonly DrawingElement[];

/** What the signs, lines and patterns on this picture mean; only those that are on it. */
export function legendBlock(
  content: PictureContent,
  fonts: FontBook,
  style: PanelStyle,
  picture: PictureStyle,
): PanelBlock {
  const entry = (swatch: Swatch, text: string): PanelRow => legendRow(fonts, style, swatch, text);
  const marks = [...content.flaws, ...content.zones].map((mark) => mark.meaning);
  const hasPieces = content.pieces.length > 0;
  const rows = [
    ...(hasPieces ? pieceRows(content, entry, fonts, style, picture) : []),
    ...goneRows(content, entry, picture),
    ...(marks.some((meaning) => meaning.never) ? [entry(patternSwatch(NEVER, picture), 'never here')] : []),
    ...(marks.some((meaning) => meaning.second)
      ? [entry(patternSwatch(SECOND, picture), 'not on the best faces')]
      : []),
    ...(marks.some((meaning) => meaning.hidden)
      ? [entry(patternSwatch(HIDDEN, picture), 'only where hidden')]
      : []),
    ...(marks.some((meaning) => meaning.weak)
      ? [entry(patternSwatch(WEAK, picture), 'weak: nothing that bears load')]
      : []),
    ...lineRows(content, entry, { fonts, style, picture }),
  ];
  return { title: 'Signs', rows, keepRows: 3 };
}

type Entry = (swatch: Swatch, text: string) => PanelRow;

function pieceRows(
  content: PictureContent,
  entry: Entry,
  fonts: FontBook,
  style: PanelStyle,
  picture: PictureStyle,
): PanelRow[] {
  const letters =
    (text: string): Swatch =>
    (box) => [
      textLine(fonts, text, {
        at: { x: (box.minX + box.maxX) / 2, y: box.maxY - (box.maxY - box.minY) * 0.2 },
        sizeMm: style.textMm,
        colour: INK,
        face: 'narrow bold',
        anchor: 'middle',
      }),
    ];
  const arrow: Swatch = (box) =>
    directionArrow(
      {
        center: { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 },
        widthMm: SWATCH_MM - 1,
        heightMm: 1,
        angleDeg: 0,
      },
      { x: 1, y: 0 },
      picture.grow,
    );
  return [
    entry(letters('12'), 'number in the order of cutting'),
    ...(picture.labels === 'number and name' ? [] : [entry(letters('2/1'), 'set 2, copy 1')]),
    ...(content.pieces.some((piece) => piece.placement.mirrored)
      ? [entry(letters(MIRRORED_SIGN), 'mirrored')]
      : []),
    entry(arrow, 'direction, towards the tail'),
    entry(
      (box) => [rectangle(box, { fill: PIECE, stroke: { colour: INK, widthMm: CUT_LINE_MM } })],
      'piece, with its cut line',
    ),
    ...(content.pieces.some((piece) => piece.face.length > 0)
      ? [entry(strokeSwatch(INK_SOFT, FINE_LINE_MM, [0.3, 0.6]), 'bounds what is seen of a piece')]
      : []),
  ];
}

function goneRows({ gone }: PictureContent, entry: Entry, picture: PictureStyle): PanelRow[] {
  const ground = (box: Box): DrawingElement =>
    rectangle(box, { fill: PAPER, stroke: { colour: INK_SOFT, widthMm: FINE_LINE_MM } });
  const crossed: Swatch = (box) => [
    ground(box),
    ...spoiledCross({ outer: boxCorners(box), openings: [] }, picture),
  ];
  const has = (state: string): boolean => gone.some(({ placement }) => placement.state === state);
  return [
    ...(has('cut') ? [entry((box) => [ground(box)], 'cut already')] : []),
    ...(has('spoiled') ? [entry(crossed, 'spoiled')] : []),
  ];
}

interface LegendStyles {
  readonly fonts: FontBook;
  readonly style: PanelStyle;
  readonly picture: PictureStyle;
}

function lineRows(content: PictureContent, entry: Entry, styles: LegendStyles): PanelRow[] {
  const rows: PanelRow[] = [];
  if (content.zones.length > 0) {
    rows.push(entry(strokeSwatch(INK_SOFT, FINE_LINE_MM, [3, 0.8, 0.4, 0.8]), 'zone'));
  }
  if (content.hasBackbone) {
    rows.push(entry(strokeSwatch(INK_SOFT, MARK_LINE_MM, [5, 1, 0.6, 1]), 'backbone'));
  }
  if (content.hasStrokes) {
    rows.push(entry(strokeSwatch(RULE, FINE_LINE_MM, [1.6, 1]), 'stretches least this way'));
  }
  if (content.hasLanes) rows.push(entry(strokeSwatch(INK, FREEING_CUT_MM), 'straight first cut'));
  if (content.hasRoughCuts) rows.push(entry(strokeSwatch(INK, ROUGH_CUT_MM, [4, 1.2]), 'rough cut'));
  if (content.hasSwatches) rows.push(entry(testPiece, 'swatch: a small test piece'));
  if (content.hasFreeingCut) {
    rows.push(entry(strokeSwatch(INK, FREEING_CUT_MM, [5, 1.2, 1.2, 1.2]), 'freeing cut: frees the offcut'));
  }
  if (content.hasOffcuts) rows.push(entry(offcutSwatch, 'offcut worth keeping'));
  if (content.hasReadings) rows.push(entry(readingSwatch(styles), 'thickness measured here, mm'));
  if (content.hasUnsureEdges)
    rows.push(entry(strokeSwatch(UNSURE_GLOW.colour, UNSURE_GLOW.widthMm), 'edge not known for sure'));
  return rows;
}

/** A row of a legend: how it looks, and what it means. */
export function legendRow(fonts: FontBook, style: PanelStyle, swatch: Swatch, text: string): PanelRow {
  const heightMm = style.rowMm * 1.08;
  return {
    heightMm,
    draw: (x, y) => {
      const inset = heightMm * 0.14;
      const box = { minX: x + 0.2, minY: y + inset, maxX: x + SWATCH_MM, maxY: y + heightMm - inset };
      return [
        ...swatch(box),
        textLine(fonts, text, {
          at: { x: x + SWATCH_MM + SWATCH_GAP_MM, y: y + heightMm * 0.7 },
          sizeMm: style.textMm,
          colour: INK,
          face: 'narrow',
        }),
      ];
    },
  };
}

function patternSwatch(meaning: MarkMeaning, picture: PictureStyle): Swatch {
  return (box) => {
    const outer = boxCorners({ ...box, maxX: box.minX + (box.maxX - box.minX) * 0.66 });
    const sign = { x: box.maxX - 0.9, y: (box.minY + box.maxY) / 2 };
    return [
      ...markPattern(meaning, [{ outer, openings: [] }], [curveFromPolyline(outer, true)], picture.grow),
      ...markSign(meaning, sign, 1.7),
    ];
  };
}

function strokeSwatch(colour: string, widthMm: number, dashMm?: readonly number[]): Swatch {
  return (box) => {
    const y = (box.minY + box.maxY) / 2;
    const stroke = { colour, widthMm, ...(dashMm === undefined ? {} : { dashMm }) };
    return [line({ x: box.minX, y }, { x: box.maxX, y }, stroke)];
  };
}

function testPiece(box: Box): DrawingElement[] {
  const side = (box.maxY - box.minY) * 0.8;
  const [x, y] = [(box.minX + box.maxX - side) / 2, (box.minY + box.maxY - side) / 2];
  const square = { minX: x, maxX: x + side, minY: y, maxY: y + side };
  return [chain(boxCorners(square), true, { stroke: { colour: INK, widthMm: MARK_LINE_MM } })];
}

function readingSwatch({ fonts, style, picture }: LegendStyles): Swatch {
  return (box) => {
    const y = (box.minY + box.maxY) / 2;
    const figure = textLine(fonts, '2.4', {
      at: { x: box.minX + READING_FIGURE_MM, y: box.maxY - (box.maxY - box.minY) * 0.2 },
      sizeMm: style.textMm,
      colour: INK_SOFT,
      face: 'narrow',
    });
    return [...cross({ x: box.minX + 1.2, y }, picture), figure];
  };
}

/** From the left edge of a swatch to the figure beside a reading's cross. */
const READING_FIGURE_MM = 2.8;

function offcutSwatch(box: Box): DrawingElement[] {
  const outer = boxCorners(box);
  return offcutPattern([{ outer, openings: [] }], [curveFromPolyline(outer, true)]);
}
