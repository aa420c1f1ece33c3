import {
  MIRROR_X,
  containingRegion,
  containingRing,
  intersectRegions,
  roundCurve,
  roundPoint,
  transformCurve,
  applyAffine,
  atan2Deg,
  normalizeDeg,
} from '@hidebound/geometry';
import type { Affine, Curve, Region } from '@hidebound/geometry';
import type { MarkLine, Piece } from '../model/piece.js';

/** The piece moved, turned or mirrored, with everything that is drawn on it. */
export function transformPiece(m: Affine, piece: Piece): Piece {
  const curve = (c: Curve): Curve => transformCurve(m, c);
  const mark = (line: MarkLine): MarkLine => ({ ...line, curve: curve(line.curve) });
  const { direction } = piece;
  return {
    ...piece,
    cut: curve(piece.cut),
    cutOuts: piece.cutOuts.map(curve),
    punches: piece.punches.map((punch) => ({ ...punch, at: applyAffine(m, punch.at) })),
    notches: piece.notches.map((notch) => ({
      ...notch,
      at: applyAffine(m, notch.at),
      angleDeg: turnedAngleDeg(m, notch.angleDeg),
    })),
    stitchLines: piece.stitchLines.map(mark),
    foldLines: piece.foldLines.map(mark),
    skiveLines: piece.skiveLines.map(mark),
    cementLines: piece.cementLines.map(mark),
    face: piece.face.map(curve),
    ...(direction === undefined
      ? {}
      : { direction: { from: applyAffine(m, direction.from), to: applyAffine(m, direction.to) } }),
  };
}

/** x becomes -x: the same piece seen from its other side. */
export function mirrorPiece(piece: Piece): Piece {
  return transformPiece(MIRROR_X, piece);
}

/** Every coordinate on the 0.001 mm grid, angles to 0.001 degrees. */
export function roundPiece(piece: Piece): Piece {
  const mark = (line: MarkLine): MarkLine => ({ ...line, curve: roundCurve(line.curve) });
  const { direction } = piece;
  return {
    ...piece,
    cut: roundCurve(piece.cut),
    cutOuts: piece.cutOuts.map(roundCurve),
    punches: piece.punches.map((punch) => ({
      at: roundPoint(punch.at),
      diameterMm: roundThousandth(punch.diameterMm),
    })),
    notches: piece.notches.map((notch) => ({
      at: roundPoint(notch.at),
      angleDeg: roundThousandth(notch.angleDeg),
      depthMm: roundThousandth(notch.depthMm),
    })),
    stitchLines: piece.stitchLines.map(mark),
    foldLines: piece.foldLines.map(mark),
    skiveLines: piece.skiveLines.map(mark),
    cementLines: piece.cementLines.map(mark),
    face: piece.face.map(roundCurve),
    ...(direction === undefined
      ? {}
      : { direction: { from: roundPoint(direction.from), to: roundPoint(direction.to) } }),
  };
}

/**
 * The region that stands for the piece in nesting and check: contains the true cut line within 0.05 mm, its openings
 * lie inside the true cut-outs. Follows from the shape alone, so that a check can derive it anew.
 */
export function pieceRegion(shape: Piece): Region {
  return containingRegion(shape.cut, shape.cutOuts);
}

/** What is seen of the piece, clipped to its region; all of it where no face is drawn. */
export function pieceFace(shape: Piece, region: Region): readonly Region[] {
  if (shape.face.length === 0) return [region];
  const drawn = shape.face.map((curve): Region => ({ outer: containingRing(curve), openings: [] }));
  return intersectRegions(drawn, [region]);
}

function turnedAngleDeg(m: Affine, deg: number): number {
  // Where the x axis goes; a mirroring transform turns angles the other way round.
  const axisDeg = atan2Deg(m.b, m.a);
  return normalizeDeg(m.a * m.d - m.b * m.c < 0 ? axisDeg - deg : axisDeg + deg);
}

function roundThousandth(n: number): number {
  return Math.round(n * 1000) / 1000 + 0;
}
