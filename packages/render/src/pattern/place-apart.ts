import {
  boxUnion,
  boxesTouch,
  curveBox,
  flattenCurve,
  pointInRing,
  transformCurveToGrid,
  translation,
} from '@hidebound/geometry';
import type { Box, Curve, Point, Polyline } from '@hidebound/geometry';
import type { Piece } from '@hidebound/leather';
import { curvesOfPiece } from './piece-lines.js';
import { placesAlong } from './places-along.js';

/** Around the drawing, and between pieces that are set in rows. */
const MARGIN_MM = 10;
const GAP_MM = 15;
/** Rows are about so broad; the longest piece decides if it is longer. */
const ROW_MM = 900;
/** A file's own frame is kept if its drawing starts no farther than this from the corner: beyond it only blank is seen. */
const FARTHEST_START_MM = 1000;
/** Chords for telling whether lines of one piece reach into another. */
const CHORD_MM = 0.05;

/** Where pieces are drawn: each is moved by its offset, in whole mm. */
export interface PlacedApart {
  readonly offsets: readonly Point[];
  readonly widthMm: number;
  readonly heightMm: number;
}

/**
 * Where the file has them, if no line of one lies on another; else in rows in their order. A drawing that starts left
 * of or above the corner, or far from it, is moved as a whole.
 */
export function placeApart(pieces: readonly Piece[]): PlacedApart {
  const boxes = pieces.map(boxOfPiece);
  const offsets = liesApart(pieces, boxes) ? keptFrame(boxes) : rows(boxes);
  const ends = boxes.map((box, i) => ({ x: box.maxX + offsets[i]!.x, y: box.maxY + offsets[i]!.y }));
  return {
    offsets,
    widthMm: Math.ceil(Math.max(0, ...ends.map(({ x }) => x)) + MARGIN_MM),
    heightMm: Math.ceil(Math.max(0, ...ends.map(({ y }) => y)) + MARGIN_MM),
  };
}

/** Around all that is drawn of a piece. */
export function boxOfPiece(piece: Piece): Box {
  return curvesOfPiece(piece).map(curveBox).reduce(boxUnion);
}

function keptFrame(boxes: readonly Box[]): Point[] {
  if (boxes.length === 0) return [];
  const { minX, minY } = boxes.reduce(boxUnion);
  const stays = (least: number) => least >= 0 && least <= FARTHEST_START_MM;
  const move =
    stays(minX) && stays(minY)
      ? { x: 0, y: 0 }
      : { x: MARGIN_MM - Math.floor(minX), y: MARGIN_MM - Math.floor(minY) };
  return boxes.map(() => move);
}

function rows(boxes: readonly Box[]): Point[] {
  let x = MARGIN_MM;
  let y = MARGIN_MM;
  let rowHeight = 0;
  return boxes.map((box) => {
    const width = Math.ceil(box.maxX - Math.floor(box.minX));
    if (x > MARGIN_MM && x + width > ROW_MM) {
      x = MARGIN_MM;
      y += rowHeight + GAP_MM;
      rowHeight = 0;
    }
    const offset = { x: x - Math.floor(box.minX), y: y - Math.floor(box.minY) };
    x += width + GAP_MM;
    rowHeight = Math.max(rowHeight, Math.ceil(box.maxY - Math.floor(box.minY)));
    return offset;
  });
}

/** True if no line of any piece comes within, or onto the edge of, another one. */
function liesApart(pieces: readonly Piece[], boxes: readonly Box[]): boolean {
  const chains = new Map<number, Polyline[]>();
  const chainsOf = (i: number): Polyline[] => {
    const known = chains.get(i) ?? curvesOfPiece(pieces[i]!).map(placesAlong);
    chains.set(i, known);
    return known;
  };
  const reachesInto = (i: number, j: number): boolean => {
    const ring = flattenCurve(pieces[j]!.cut, CHORD_MM).slice(0, -1);
    return chainsOf(i).some((chain) => chain.some((p) => pointInRing(p, ring) !== 'outside'));
  };
  return boxes.every((box, i) =>
    boxes.every((other, j) => {
      if (j >= i || !boxesTouch(box, other)) return true;
      return !reachesInto(i, j) && !reachesInto(j, i);
    }),
  );
}

/** The curve where it is drawn; whole mm keep it on the grid. */
export function movedBy({ x, y }: Point, curve: Curve): Curve {
  return x === 0 && y === 0 ? curve : transformCurveToGrid(translation(x, y), curve);
}
