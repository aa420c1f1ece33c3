import { boxUnion, curveBox, transformCurve, translation } from '@hidebound/geometry';
import type { Box, Curve } from '@hidebound/geometry';
import type { PatternPiece, Piece, StitchHole, StitchTool } from '@hidebound/leather';
import { group, line, path } from '../drawing/build.js';
import type { Drawing, DrawingElement, GroupElement, Stroke } from '../drawing/model.js';
import { scaleBar } from '../sheet/header.js';
import { FINE_LINE_MM, INDIGO, INK, INK_SOFT, PIECE } from '../sheet/palette.js';
import type { LengthUnit } from '../sheet/words.js';
import { sizeWords } from '../sheet/words.js';
import type { FontBook } from '../text/font-book.js';
import { fitText, measureText, textLine } from '../text/measure-text.js';
import { directionArrow } from './direction-arrow.js';
import { LINE_LOOKS } from './line-looks.js';
import type { LineKind } from './line-looks.js';
import { holesAndNotches } from './piece-layers.js';
import { stitchMarkPath } from './stitch-mark-path.js';

export interface PiecesPictureOptions {
  readonly pieces: readonly PatternPiece[];
  readonly fonts: FontBook;
  /** Above the picture; the files' names, say. */
  readonly title: string;
  readonly units?: LengthUnit;
  /** Stitch holes, piece by piece; marks of an iron are slanted strokes, of an awl dots. */
  readonly stitches?: readonly PieceStitches[];
}

/** The holes of all stitch lines of one piece, in the piece's own frame. */
export interface PieceStitches {
  readonly with: StitchTool;
  readonly holes: readonly StitchHole[];
}

/** Under the marks of its holes a stitch line steps back: dashes would be taken for stitches. */
const MARKED_STITCH: Stroke = { colour: INDIGO, widthMm: FINE_LINE_MM * 0.7 };

function strokeOf(kind: LineKind, isMarked: boolean): Stroke {
  return kind === 'stitch' && isMarked ? MARKED_STITCH : LINE_LOOKS[kind].stroke;
}

const MARGIN_MM = 12;
const GAP_MM = 14;
/** Letters at the least, and as a share of the longest piece: a picture of large pieces is looked at from farther off. */
const LEAST_TEXT_MM = 3.2;
const TEXT_SHARE = 1 / 60;
const MOST_TEXT_MM = 8;
/** A title is so many times as large. */
const TITLE_GROW = 1.9;
/** Pieces stand in rows of about this breadth. */
const ROW_MM = 700;

/** What was read from pattern files, at true scale: each piece with its lines, its name and its size, and a legend. */
export function drawPieces(options: PiecesPictureOptions): Drawing {
  const { fonts } = options;
  const textMm = textSizeMm(options.pieces);
  const titleMm = textMm * TITLE_GROW;
  const setting: Setting = { fonts, units: options.units ?? 'mm', textMm };
  const top = MARGIN_MM + titleMm * 1.8;
  const placed = placeInRows(options, setting, top);
  const kinds = usedKinds(options.pieces);
  const legendTop = Math.max(top, ...placed.map((each) => each.bottom)) + GAP_MM;
  const widthMm = Math.max(LEAST_WIDTH_MM, ...placed.map((each) => each.right)) + MARGIN_MM;
  const heightMm = legendTop + textMm * LEGEND_ROW * (kinds.length + 2) + MARGIN_MM;
  return {
    widthMm,
    heightMm,
    title: options.title,
    layers: [
      {
        name: 'title',
        elements: [
          textLine(fonts, fitText(fonts, 'bold', titleMm, options.title, widthMm - 2 * MARGIN_MM), {
            at: { x: MARGIN_MM, y: MARGIN_MM + titleMm * 0.8 },
            sizeMm: titleMm,
            colour: INK,
            face: 'bold',
          }),
        ],
      },
      { name: 'pieces', elements: placed.map((each) => drawPiece(each, setting)) },
      { name: 'legend', elements: legend(kinds, setting, legendTop, options.stitches !== undefined) },
    ],
  };
}

const LEAST_WIDTH_MM = 150;
/** Heights in letters of the text's size: a row of the legend, the two lines below a piece. */
const LEGEND_ROW = 1.7;
const LABEL_ROOM = 2.9;
/** Length of a line in the legend. */
const LEGEND_SWATCH = 5.6;

interface Setting {
  readonly fonts: FontBook;
  readonly units: LengthUnit;
  readonly textMm: number;
}

function textSizeMm(pieces: readonly PatternPiece[]): number {
  const longest = Math.max(
    0,
    ...pieces
      .map(({ piece }) => pieceBox(piece))
      .map((box) => Math.max(box.maxX - box.minX, box.maxY - box.minY)),
  );
  return Math.min(MOST_TEXT_MM, Math.max(LEAST_TEXT_MM, longest * TEXT_SHARE));
}

interface RowPiece {
  readonly pattern: PatternPiece;
  readonly stitches?: PieceStitches;
  readonly box: Box;
  readonly x: number;
  readonly y: number;
  readonly right: number;
  readonly bottom: number;
}

/** Rows from left to right, as high as their highest piece; the order stays that of the files. */
function placeInRows(
  { pieces, stitches = [] }: PiecesPictureOptions,
  { fonts, units, textMm }: Setting,
  top: number,
): RowPiece[] {
  const placed: RowPiece[] = [];
  let x = MARGIN_MM;
  let y = top;
  let rowBottom = top;
  for (const [i, pattern] of pieces.entries()) {
    const own = stitches[i];
    const box = pieceBox(pattern.piece);
    const label = Math.max(
      measureText(fonts, 'bold', textMm, pattern.piece.name).widthMm,
      measureText(fonts, 'narrow', textMm, pieceNote(pattern, units)).widthMm,
    );
    const width = Math.max(box.maxX - box.minX, Math.min(label, ROW_MM));
    if (x > MARGIN_MM && x + width > MARGIN_MM + ROW_MM) {
      x = MARGIN_MM;
      y = rowBottom + GAP_MM;
    }
    const bottom = y + (box.maxY - box.minY) + LABEL_ROOM * textMm;
    const sewn = own === undefined ? {} : { stitches: own };
    placed.push({ pattern, ...sewn, box, x, y, right: x + width, bottom });
    x += width + GAP_MM;
    rowBottom = Math.max(rowBottom, bottom);
  }
  return placed;
}

function pieceBox(piece: Piece): Box {
  return linesOf(piece)
    .map(([, curve]) => curveBox(curve))
    .reduce(boxUnion);
}

/** Every line of a piece with its kind, the cut line first. */
function linesOf(piece: Piece): (readonly [LineKind, Curve])[] {
  const marks = (kind: LineKind, lines: Piece['stitchLines']) =>
    lines.map((each) => [kind, each.curve] as const);
  return [
    ['cut', piece.cut],
    ...piece.cutOuts.map((curve) => ['hole', curve] as const),
    ...holesAndNotches(piece).map((curve) => ['hole', curve] as const),
    ...marks('stitch', piece.stitchLines),
    ...marks('fold', piece.foldLines),
    ...marks('skive', piece.skiveLines),
    ...marks('cement', piece.cementLines),
    ...piece.face.map((curve) => ['face', curve] as const),
  ];
}

function usedKinds(pieces: readonly PatternPiece[]): LineKind[] {
  const used = new Set(pieces.flatMap(({ piece }) => linesOf(piece).map(([kind]) => kind)));
  return (Object.keys(LINE_LOOKS) as LineKind[]).filter((kind) => used.has(kind));
}

function drawPiece(placed: RowPiece, { fonts, units, textMm }: Setting): GroupElement {
  const { pattern, box, x, y } = placed;
  const { piece } = pattern;
  const move = translation(x - box.minX, y - box.minY);
  const moved = (curve: Curve): Curve => transformCurve(move, curve);
  const ground = [piece.cut, ...piece.cutOuts].map(moved);
  const below = y + (box.maxY - box.minY) + textMm * 1.4;
  const text = (words: string, down: number, face: 'bold' | 'narrow'): DrawingElement =>
    textLine(fonts, fitText(fonts, face, textMm, words, ROW_MM), {
      at: { x, y: below + down },
      sizeMm: textMm,
      colour: face === 'bold' ? INK : INK_SOFT,
      face,
    });
  return group(`piece ${piece.name}`, [
    path(ground, { fill: PIECE }),
    ...linesOf(piece).map(([kind, curve]) =>
      path([moved(curve)], { stroke: strokeOf(kind, placed.stitches !== undefined) }),
    ),
    ...(placed.stitches === undefined ? [] : [stitchMarkPath(placed.stitches, move)]),
    ...arrowOf(piece, x - box.minX, y - box.minY),
    text(piece.name, 0, 'bold'),
    text(pieceNote(pattern, units), textMm * 1.3, 'narrow'),
  ]);
}

/** Size, and what the file says of the piece. */
function pieceNote(pattern: PatternPiece, units: LengthUnit): string {
  const cut = curveBox(pattern.piece.cut);
  return [
    sizeWords(cut.maxX - cut.minX, cut.maxY - cut.minY, units),
    ...(pattern.count === undefined ? [] : [`count ${pattern.count}`]),
    ...(pattern.mirrored === undefined || pattern.mirrored === 0 ? [] : [`mirrored ${pattern.mirrored}`]),
    ...(pattern.material === undefined ? [] : [pattern.material]),
  ].join(', ');
}

function arrowOf(piece: Piece, dx: number, dy: number): DrawingElement[] {
  if (piece.direction === undefined) return [];
  const { from, to } = piece.direction;
  const length = Math.sqrt((to.x - from.x) ** 2 + (to.y - from.y) ** 2);
  if (length === 0) return [];
  const center = { x: (from.x + to.x) / 2 + dx, y: (from.y + to.y) / 2 + dy };
  const direction = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  return directionArrow({ center, widthMm: length, heightMm: 2, angleDeg: 0 }, direction, 2);
}

function legend(
  kinds: readonly LineKind[],
  { fonts, units, textMm }: Setting,
  top: number,
  isMarked: boolean,
): DrawingElement[] {
  const rowMm = textMm * LEGEND_ROW;
  const swatchMm = textMm * LEGEND_SWATCH;
  const rows = kinds.flatMap((kind, i) => {
    const y = top + i * rowMm;
    return [
      line({ x: MARGIN_MM, y }, { x: MARGIN_MM + swatchMm, y }, strokeOf(kind, isMarked)),
      textLine(fonts, LINE_LOOKS[kind].name, {
        at: { x: MARGIN_MM + swatchMm + textMm, y: y + textMm * 0.35 },
        sizeMm: textMm,
        colour: INK,
        face: 'narrow',
      }),
    ];
  });
  const y = top + (kinds.length + 1) * rowMm;
  const bar = scaleBar(fonts, { x: MARGIN_MM, y }, textMm, 1, units, units === 'in' ? 4 : 100);
  return [...rows, ...bar.elements];
}
