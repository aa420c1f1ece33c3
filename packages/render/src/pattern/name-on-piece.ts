import {
  curveBox,
  flattenCurve,
  orientRing,
  pointToSegment,
  widestInscribedCircle,
} from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import type { Piece } from '@hidebound/leather';

/** Letters of a name: legible on a bench at the most, and no smaller than a drawing program shows at a glance. */
const MOST_MM = 8;
const LEAST_MM = 1.5;
/** Mean advance of a letter, and height of a capital, in sizes of the letters. */
const ADVANCE = 0.62;
const CAPITAL = 0.73;
/** How near to the widest place the name's middle comes, as a share of the piece's smaller side. */
const PRECISION_SHARE = 0.05;
/** A name is no place to be exact about. */
const CHORD_MM = 0.5;

/** Where a piece's name is written: the middle of its baseline, where the piece is widest, beside its arrow. */
export function nameOnPiece(piece: Piece): { readonly at: Point; readonly sizeMm: number } {
  const ring = (curve: Piece['cut'], side: 'outer' | 'opening') =>
    orientRing(flattenCurve(curve, CHORD_MM).slice(0, -1), side);
  const region = {
    outer: ring(piece.cut, 'outer'),
    openings: piece.cutOuts.map((curve) => ring(curve, 'opening')),
  };
  const box = curveBox(piece.cut);
  const side = Math.min(box.maxX - box.minX, box.maxY - box.minY);
  const { center, radius } = widestInscribedCircle(region, Math.max(side * PRECISION_SHARE, CHORD_MM));
  const fitting = (2 * radius) / (ADVANCE * Math.max(1, [...piece.name].length));
  const sizeMm = Math.round(Math.min(MOST_MM, Math.max(LEAST_MM, fitting)) * 10) / 10;
  const middle = center.y + besideArrow(piece, center, sizeMm);
  return { at: { x: center.x, y: middle + (CAPITAL * sizeMm) / 2 }, sizeMm };
}

/** How far down a name steps that an arrow would strike through. */
function besideArrow({ direction }: Piece, center: Point, sizeMm: number): number {
  if (direction === undefined) return 0;
  const distance = pointToSegment(center, direction.from, direction.to);
  return distance < sizeMm ? 1.5 * sizeMm : 0;
}
