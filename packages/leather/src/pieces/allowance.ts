import { containingRing, curveFromPolyline, offsetRegions, regionArea } from '@hidebound/geometry';
import type { Piece } from '../model/piece.js';
import { leatherErrorAs } from '../words/refuse.js';

/** A mitred corner of an allowance reaches at most this many times the allowance. */
export const ALLOWANCE_MITRE_LIMIT = 2;
/** The grown outline is made of short straight lines; this close to the drawn curve they look like one. */
const ALLOWANCE_CURVE_MM = 0.01;

/**
 * The piece with so many mm added all round its cut line, corners mitred to at most twice that. The new cut line is a
 * chain of lines that contains the true offset of the curve, within 0.02 mm. What was drawn stays where it is; where
 * no face was drawn, the old cut line bounds the face, because the allowance is not seen. Cut-outs don't change.
 */
export function addAllowance(piece: Piece, allowanceMm: number): Piece {
  if (allowanceMm === 0) return piece;
  if (!(allowanceMm > 0)) {
    throw leatherErrorAs('bad-value', 'allowance-bad', { piece: piece.name, allowanceMm });
  }
  const ring = containingRing(piece.cut, ALLOWANCE_CURVE_MM);
  const grown = [
    ...offsetRegions([{ outer: ring, openings: [] }], allowanceMm, {
      join: 'mitre',
      mitreLimit: ALLOWANCE_MITRE_LIMIT,
    }),
  ].sort((a, b) => regionArea(b) - regionArea(a));
  return {
    ...piece,
    cut: curveFromPolyline(grown[0]!.outer, true),
    face: piece.face.length > 0 ? piece.face : [piece.cut],
  };
}
