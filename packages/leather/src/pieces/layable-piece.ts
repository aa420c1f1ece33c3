import { roundPoint, enclosingCircle, translation } from '@hidebound/geometry';
import type { Curve } from '@hidebound/geometry';
import { hashPieceShape } from '../hash/index.js';
import type { ResolvedPiece } from '../model/order.js';
import type { LayablePiece, Piece } from '../model/piece.js';
import { nearestParams } from '../words/nearest.js';
import { leatherErrorAs } from '../words/refuse.js';
import { addAllowance } from './allowance.js';
import { arrowOf } from './arrow.js';
import { mirrorPiece, pieceFace, pieceRegion, roundPiece, transformPiece } from './piece-shape.js';

/** The face wish that takes all of the piece. */
export const ALL_FACE = 'all';

/**
 * A piece made ready to be laid. Its stored shape is always the one seen from the grain side: a piece whose seen side
 * is the flesh is drawn from the flesh side, so it is mirrored here (x → -x) once and for all. Its plain copies are
 * then laid as stored, and its mirrored copies are the mirror image of that, as for every other piece.
 *
 * In order: face as the order names it, allowance, mirrored if seen from the flesh side, moved so that the smallest
 * circle around the cut ring is centred at the origin, rounded to 0.001 mm. Region, face, arrow and hash follow from
 * the rounded shape, so that a check can derive them anew.
 */
export function layablePiece(from: {
  readonly article: string;
  readonly orderPiece: ResolvedPiece;
  readonly source: Piece;
}): LayablePiece {
  const { article, orderPiece, source } = from;
  const faced = { ...source, name: orderPiece.name, face: faceCurves(source, orderPiece) };
  const grown = addAllowance(faced, orderPiece.allowanceMm);
  const seen = orderPiece.side === 'flesh' ? mirrorPiece(grown) : grown;
  const { center } = enclosingCircle(pieceRegion(seen).outer);
  const origin = roundPoint(center);
  const shape = roundPiece(transformPiece(translation(-origin.x, -origin.y), seen));
  return deriveLayable({ article, orderPiece, shape });
}

/** Everything of a layable piece that follows from its shape and from what the order says of it. */
export function deriveLayable(from: {
  readonly article: string;
  readonly orderPiece: ResolvedPiece;
  readonly shape: Piece;
}): LayablePiece {
  const { article, orderPiece, shape } = from;
  const region = pieceRegion(shape);
  const arrow = arrowOf(shape, region, orderPiece);
  return {
    article,
    piece: orderPiece.name,
    hash: hashPieceShape(shape),
    shape,
    region,
    face: pieceFace(shape, region),
    arrowDeg: arrow.arrowDeg,
    arrowIsGuessed: arrow.isGuessed,
  };
}

function faceCurves(source: Piece, orderPiece: ResolvedPiece): readonly Curve[] {
  const wish = orderPiece.face;
  if (wish === undefined) return source.face;
  if (wish === ALL_FACE) return [];
  const lines = [
    ...source.stitchLines,
    ...source.foldLines,
    ...source.skiveLines,
    ...source.cementLines,
  ].filter((line) => line.curve.closed);
  const named = lines.filter((line) => line.name === wish);
  if (named.length > 0) return named.map((line) => line.curve);
  const names = lines.flatMap((line) => (line.name === undefined ? [] : [line.name]));
  throw leatherErrorAs('unknown-line', 'face-line-unknown', {
    piece: orderPiece.name,
    line: wish,
    ...nearestParams(wish, names),
  });
}
