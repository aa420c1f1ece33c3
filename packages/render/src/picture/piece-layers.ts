import { applyAffine, circleCurve, curveFromPolyline, sinCosDeg } from '@hidebound/geometry';
import type { Curve, Point } from '@hidebound/geometry';
import type { MarkLine, Notch, Piece } from '@hidebound/leather';
import { group, path, regionCurves } from '../drawing/build.js';
import type { DrawingElement, PathElement } from '../drawing/model.js';
import { CUT_LINE_MM, FINE_LINE_MM, INK, INK_SOFT, PAPER, PIECE } from '../sheet/palette.js';
import type { PictureStyle } from './picture-style.js';
import { pieceCurve } from './placed-pieces.js';
import type { PlacedPiece } from './placed-pieces.js';

/** The pieces' leather. */
export function pieceGrounds(placed: readonly PlacedPiece[]): DrawingElement[] {
  return placed.map((piece) => group(`piece ${piece.number}`, [path(cutCurves(piece), { fill: PIECE })]));
}

/** The cut lines, and where asked every other line; the dotted line within bounds what is seen. */
export function pieceLines(placed: readonly PlacedPiece[], style: PictureStyle): DrawingElement[] {
  return placed.flatMap((piece) => [
    ...faceHint(piece, style),
    ...(style.detail === 'every line' ? markLines(piece, style) : seenPunches(piece, style)),
    path(cutCurves(piece), { stroke: { colour: INK, widthMm: CUT_LINE_MM * style.pen } }),
  ]);
}

/** A smaller circle is a speck on paper, mm. */
const LEAST_PUNCH_MM = 0.4;

/** A punch on the drawing. */
export interface DrawnPunch {
  readonly at: Point;
  readonly radiusMm: number;
}

/** The punches that are large enough on the drawing to be seen. */
export function drawnPunches(piece: PlacedPiece): DrawnPunch[] {
  const { a, b } = piece.toDrawing;
  const reduced = Math.sqrt(a * a + b * b);
  return piece.piece.shape.punches
    .map(({ at, diameterMm }) => ({ at: piecePoint(piece, at), radiusMm: (diameterMm * reduced) / 2 }))
    .filter(({ radiusMm }) => 2 * radiusMm >= LEAST_PUNCH_MM);
}

/** Punches on a reduced picture: open rings, so that a strap's end is known at a glance. */
function seenPunches(piece: PlacedPiece, style: PictureStyle): DrawingElement[] {
  const punches = drawnPunches(piece);
  if (punches.length === 0) return [];
  const rings = punches.map(({ at, radiusMm }) => circleCurve(at, radiusMm));
  return [path(rings, { fill: PAPER, stroke: { colour: INK, widthMm: FINE_LINE_MM * style.pen } })];
}

/** Cut line and cut-outs as drawn; the derived outline where an allowance was added to it. */
function cutCurves(piece: PlacedPiece): Curve[] {
  const shape = piece.piece.shape;
  return [shape.cut, ...shape.cutOuts].map((curve) => pieceCurve(piece, curve));
}

function faceHint(piece: PlacedPiece, style: PictureStyle): PathElement[] {
  if (piece.face.length === 0) return [];
  return [
    path(piece.face.flatMap(regionCurves), {
      stroke: {
        colour: INK_SOFT,
        widthMm: FINE_LINE_MM * style.pen,
        dashMm: [0.3 * style.grow, 0.6 * style.grow],
      },
    }),
  ];
}

/** Dash patterns by what a line is, in mm at true scale. */
const STITCH_DASH: readonly number[] = [2.4, 1.6];
const FOLD_DASH: readonly number[] = [8, 2, 1.5, 2];
const SKIVE_DASH: readonly number[] = [1, 1];
const CEMENT_DASH: readonly number[] = [5, 1.5, 1, 1.5, 1, 1.5];

/** Lines other than the cut line, told apart by their dashes. */
function markLines(piece: PlacedPiece, style: PictureStyle): DrawingElement[] {
  const { shape } = piece.piece;
  const widthMm = FINE_LINE_MM * style.pen;
  const draw = (lines: readonly MarkLine[], dashMm: readonly number[]): DrawingElement[] =>
    lines.map((line) =>
      path([pieceCurve(piece, line.curve)], { stroke: { colour: INK_SOFT, widthMm, dashMm } }),
    );
  return [
    ...draw(shape.stitchLines, STITCH_DASH),
    ...draw(shape.foldLines, FOLD_DASH),
    ...draw(shape.skiveLines, SKIVE_DASH),
    ...draw(shape.cementLines, CEMENT_DASH),
    ...holesAndNotches(shape).map((curve) =>
      path([pieceCurve(piece, curve)], { stroke: { colour: INK, widthMm: FINE_LINE_MM * style.pen } }),
    ),
  ];
}

/** Punches as circles and notches as short lines, in the piece's frame. */
export function holesAndNotches(shape: Piece): Curve[] {
  return [
    ...shape.punches.map((punch) => circleCurve(punch.at, punch.diameterMm / 2)),
    ...shape.notches.map(notchLine),
  ];
}

/** A notch as a short line into the piece. */
export function notchLine(notch: Notch): Curve {
  const { sin, cos } = sinCosDeg(notch.angleDeg);
  const to = { x: notch.at.x + notch.depthMm * cos, y: notch.at.y + notch.depthMm * sin };
  return curveFromPolyline([notch.at, to], false);
}

/** A point of the piece on the drawing. */
export function piecePoint(piece: PlacedPiece, p: Point): Point {
  return applyAffine(piece.toDrawing, p);
}
