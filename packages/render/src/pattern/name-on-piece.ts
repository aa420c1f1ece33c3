import { curveBox, flattenCurve, pointInRing } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import type { Piece } from '@hidebound/leather';
import { curvesOfPiece } from './piece-lines.js';
import { placesAlong } from './places-along.js';

/** Sizes of letters, largest first: legible on a bench, down to what a drawing program shows at a glance. */
const SIZES_MM = [8, 6, 4.5, 3, 2, 1.5] as const;
/** Mean advance of a letter, and height of a capital, in sizes of the letters. */
const ADVANCE = 0.62;
const CAPITAL = 0.73;
/** Room between a name and any line, in sizes of the letters. */
const ROOM = 0.45;
/** Places that are tried across and down a piece. */
const TRIED = 17;

export interface NamePlace {
  /** The middle of the name's baseline. */
  readonly at: Point;
  readonly sizeMm: number;
}

/** Where a piece's name is written: on the piece, clear of every line if there is room, as near its middle as that goes. */
export function nameOnPiece(piece: Piece): NamePlace {
  const lines = curvesOfPiece(piece).flatMap(placesAlong);
  const places = triedPlaces(piece);
  const letters = Math.max(1, [...piece.name].length);
  for (const sizeMm of SIZES_MM) {
    const half = { x: (letters * ADVANCE * sizeMm) / 2, y: (CAPITAL * sizeMm) / 2 };
    const room = ROOM * sizeMm;
    const free = places.find((at) => isFree(at, { x: half.x + room, y: half.y + room }, lines));
    if (free !== undefined) return { at: { x: free.x, y: free.y + half.y }, sizeMm };
  }
  const sizeMm = SIZES_MM.at(-1)!;
  const middle = places[0] ?? piece.cut.start;
  return { at: { x: middle.x, y: middle.y + (CAPITAL * sizeMm) / 2 }, sizeMm };
}

/** Places on the leather in a grid, nearest to the middle of the piece first. */
function triedPlaces(piece: Piece): Point[] {
  const { minX, minY, maxX, maxY } = curveBox(piece.cut);
  const ring = flattenCurve(piece.cut, 0.5).slice(0, -1);
  const middle = { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
  const share = (i: number) => (i + 0.5) / TRIED;
  return Array.from({ length: TRIED * TRIED }, (_, i) => ({
    x: minX + (maxX - minX) * share(i % TRIED),
    y: minY + (maxY - minY) * share(Math.floor(i / TRIED)),
  }))
    .filter((p) => pointInRing(p, ring) === 'inside')
    .map((p) => ({ p, off: (p.x - middle.x) ** 2 + (p.y - middle.y) ** 2 }))
    .sort((a, b) => a.off - b.off)
    .map(({ p }) => p);
}

function isFree(at: Point, half: Point, lines: readonly Point[]): boolean {
  return lines.every(({ x, y }) => Math.abs(x - at.x) > half.x || Math.abs(y - at.y) > half.y);
}
