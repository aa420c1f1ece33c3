import { circleCurve, curveFromPolyline, roundPoint } from '@hidebound/geometry';
import type { Curve } from '@hidebound/geometry';
import type { LineRole, MarkLine, Piece } from '@hidebound/leather';
import { notchLine } from '../picture/piece-layers.js';

/** A line of a piece as a pattern drawing holds it. */
export interface PatternLine {
  readonly role: LineRole;
  readonly curve: Curve;
  readonly name?: string;
  /** What its curve, on the 1 µm grid, can't say exactly; by the name of the `data-` attribute. */
  readonly exact?: Readonly<Record<string, number>>;
}

/** Every line of a piece but its punches, the cut line first, in the piece's own order. */
export function linesOfPiece(piece: Piece): PatternLine[] {
  const marks = (role: LineRole, lines: readonly MarkLine[]) =>
    lines.map(({ name, curve }): PatternLine => ({ role, curve, ...(name === undefined ? {} : { name }) }));
  return [
    { role: 'cut', curve: piece.cut },
    ...piece.cutOuts.map((curve): PatternLine => ({ role: 'cut-out', curve })),
    ...piece.notches.map((notch): PatternLine => ({
      role: 'notch',
      curve: onGrid(notchLine(notch)),
      exact: { angle: notch.angleDeg, depth: notch.depthMm },
    })),
    ...marks('stitch', piece.stitchLines),
    ...marks('fold', piece.foldLines),
    ...marks('skive', piece.skiveLines),
    ...marks('cement', piece.cementLines),
    ...piece.face.map((curve): PatternLine => ({ role: 'face', curve })),
    ...directionOf(piece),
  ];
}

function directionOf({ direction }: Piece): PatternLine[] {
  if (direction === undefined) return [];
  return [{ role: 'direction', curve: curveFromPolyline([direction.from, direction.to], false) }];
}

/** A notch starts where the piece says; only its tip is computed. */
function onGrid({ start, segments }: Curve): Curve {
  return curveFromPolyline([start, ...segments.map(({ to }) => roundPoint(to))], false);
}

/** Everything that is drawn of a piece, its punches too. */
export function curvesOfPiece(piece: Piece): Curve[] {
  return [
    ...linesOfPiece(piece).map(({ curve }) => curve),
    ...piece.punches.map(({ at, diameterMm }) => circleCurve(at, diameterMm / 2)),
  ];
}
