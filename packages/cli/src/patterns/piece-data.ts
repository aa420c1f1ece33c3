import { curveArea, curveBox } from '@hidebound/geometry';
import type { ReadPage, Repair } from '@hidebound/intake';
import type { PatternPiece } from '@hidebound/leather';

/** What is told of a piece. */
export function pieceData({ piece, count, mirrored, material, size }: PatternPiece) {
  const box = curveBox(piece.cut);
  return {
    name: piece.name,
    widthMm: hundredths(box.maxX - box.minX),
    heightMm: hundredths(box.maxY - box.minY),
    areaMm2: hundredths(Math.abs(curveArea(piece.cut))),
    cutOuts: piece.cutOuts.length,
    punches: piece.punches.length,
    notches: piece.notches.length,
    stitchLines: piece.stitchLines.length,
    foldLines: piece.foldLines.length,
    skiveLines: piece.skiveLines.length,
    cementLines: piece.cementLines.length,
    direction: piece.direction === undefined ? 'long axis' : 'drawn',
    face: piece.face.length === 0 ? 'all' : 'drawn',
    ...(count === undefined ? {} : { count }),
    ...(mirrored === undefined ? {} : { mirrored }),
    ...(material === undefined ? {} : { material }),
    ...(size === undefined ? {} : { size }),
  };
}

/** What is told of a page: where it lies, and on what that rests. */
export function pageData({ number, widthMm, heightMm, toWhole, joinedBy, missMm }: ReadPage) {
  return {
    number,
    widthMm: hundredths(widthMm),
    heightMm: hundredths(heightMm),
    joinedBy,
    ...(missMm === undefined ? {} : { missMm: thousandths(missMm) }),
    ...(toWhole === undefined ? {} : { toWhole }),
  };
}

/** One change that was made to what is drawn. */
export function repairData({ kind, element, at, sizeMm }: Repair) {
  return { kind, element, at: [thousandths(at.x), thousandths(at.y)], sizeMm: thousandths(sizeMm) };
}

export function thousandths(value: number): number {
  return Math.round(value * 1000) / 1000;
}

export function hundredths(value: number): number {
  return Math.round(value * 100) / 100;
}
