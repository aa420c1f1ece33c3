import { composeAffine, curveBox, scaling, transformCurve, translation } from '@hidebound/geometry';
import type { Curve } from '@hidebound/geometry';
import type { LayablePiece } from '@hidebound/leather';
import { path } from '../drawing/build.js';
import type { Drawing, DrawingElement } from '../drawing/model.js';
import { FINE_LINE_MM, INK, INK_SOFT, PIECE } from '../sheet/palette.js';
import { sizeWords } from '../sheet/words.js';
import type { FontBook } from '../text/font-book.js';
import { measureText, textLine } from '../text/measure-text.js';

export interface SmallPiecesOptions {
  readonly pieces: readonly LayablePiece[];
  readonly fonts: FontBook;
  /** Room for the picture, mm. */
  readonly widthMm: number;
  readonly heightMm: number;
}

const TEXT_MM = 2.6;
const GAP_MM = 4;
/** One scale for all pieces, the largest of these at which they have room. */
const SCALES = [0.5, 0.4, 0.3, 0.25, 0.2, 0.15, 0.12, 0.1, 0.08, 0.06, 0.05, 0.04, 0.03, 0.02] as const;

/** All pieces side by side at one reduced scale, each with its name and size: to know an article by. */
export function drawSmallPieces(options: SmallPiecesOptions): Drawing {
  let rows = rowsAt(options, SCALES[SCALES.length - 1]!);
  for (const scale of SCALES) {
    const tried = rowsAt(options, scale);
    if (heightOf(tried) > options.heightMm || tried.some((row) => widthOf(row) > options.widthMm)) continue;
    rows = tried;
    break;
  }
  const elements: DrawingElement[] = [];
  let y = 0;
  for (const row of rows) {
    let x = 0;
    for (const cell of row) {
      elements.push(...drawCell(cell, x, y, rowHeight(row), options.fonts));
      x += cell.widthMm + GAP_MM;
    }
    y += rowHeight(row) + LABEL_MM + GAP_MM;
  }
  return {
    widthMm: options.widthMm,
    heightMm: heightOf(rows),
    title: 'pieces',
    layers: [{ name: 'pieces', elements }],
  };
}

const LABEL_MM = TEXT_MM * 2.8;

interface Cell {
  readonly name: string;
  readonly size: string;
  readonly curves: readonly Curve[];
  readonly widthMm: number;
  readonly heightMm: number;
}

function rowsAt({ pieces, fonts, widthMm }: SmallPiecesOptions, scale: number): Cell[][] {
  const rows: Cell[][] = [];
  for (const piece of pieces) {
    const cell = cellOf(piece, scale, fonts);
    const last = rows[rows.length - 1];
    if (last !== undefined && widthOf(last) + GAP_MM + cell.widthMm <= widthMm) last.push(cell);
    else rows.push([cell]);
  }
  return rows;
}

function cellOf({ piece, shape }: LayablePiece, scale: number, fonts: FontBook): Cell {
  const box = curveBox(shape.cut);
  const move = composeAffine(scaling(scale), translation(-box.minX, -box.minY));
  const size = sizeWords(box.maxX - box.minX, box.maxY - box.minY, 'mm');
  const textMm = Math.max(
    measureText(fonts, 'narrow bold', TEXT_MM, piece).widthMm,
    measureText(fonts, 'narrow', TEXT_MM, size).widthMm,
  );
  return {
    name: piece,
    size,
    curves: [shape.cut, ...shape.cutOuts].map((curve) => transformCurve(move, curve)),
    widthMm: Math.max(textMm, (box.maxX - box.minX) * scale),
    heightMm: (box.maxY - box.minY) * scale,
  };
}

/** Pieces of a row stand on one line, their names below it. */
function drawCell(cell: Cell, x: number, y: number, rowMm: number, fonts: FontBook): DrawingElement[] {
  const move = translation(x, y + rowMm - cell.heightMm);
  const label = (text: string, line: number, face: 'narrow' | 'narrow bold', colour: string) =>
    textLine(fonts, text, {
      at: { x, y: y + rowMm + TEXT_MM * (1.3 * line) },
      sizeMm: TEXT_MM,
      colour,
      face,
    });
  return [
    path(
      cell.curves.map((curve) => transformCurve(move, curve)),
      { fill: PIECE, stroke: { colour: INK, widthMm: FINE_LINE_MM } },
    ),
    label(cell.name, 1, 'narrow bold', INK),
    label(cell.size, 2, 'narrow', INK_SOFT),
  ];
}

function widthOf(row: readonly Cell[]): number {
  return row.reduce((sum, { widthMm }) => sum + widthMm, 0) + GAP_MM * (row.length - 1);
}

function rowHeight(row: readonly Cell[]): number {
  return Math.max(...row.map(({ heightMm }) => heightMm));
}

function heightOf(rows: readonly (readonly Cell[])[]): number {
  return (
    rows.reduce((sum, row) => sum + rowHeight(row) + LABEL_MM, 0) + GAP_MM * Math.max(0, rows.length - 1)
  );
}
