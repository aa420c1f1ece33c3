import { curveBox, distanceBetween, minimumWidthBox, regionArea } from '@hidebound/geometry';
import type { Point, Ring } from '@hidebound/geometry';
import type { PieceSource } from '../model/order.js';
import type { LayablePiece } from '../model/piece.js';

/** A shape that is cut by its size alone, without a card; in the piece's own frame. */
export type SimpleShape =
  /** Corners in order around; the first side is a long one. */
  | {
      readonly kind: 'rectangle';
      readonly widthMm: number;
      readonly lengthMm: number;
      readonly corners: Ring;
    }
  | { readonly kind: 'disc'; readonly diameterMm: number; readonly centre: Point };

/** Four corners rounded with this radius are still cut as a rectangle. */
const ROUNDED_MM = 4;
const ROUNDED_LOSS_MM2 = (4 - Math.PI) * ROUNDED_MM * ROUNDED_MM;
/** A disc is as wide each way, and its area is a circle's, within this share. */
const ROUND_WITHIN = 0.005;

/** The rectangle or disc that a piece is cut as; none for what needs its card. A strap is a rectangle before its ends are shaped. */
export function simpleShape(piece: LayablePiece, source: PieceSource | undefined): SimpleShape | undefined {
  const box = curveBox(piece.shape.cut);
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  const area = regionArea({ outer: piece.region.outer, openings: [] });
  if (isNear(width, height) && isNear(area, (Math.PI / 4) * width * height)) {
    const centre = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
    return { kind: 'disc', diameterMm: width, centre };
  }
  if (source?.kind === 'strap') {
    const { minX, minY, maxX, maxY } = box;
    const corners = [
      { x: minX, y: minY },
      { x: maxX, y: minY },
      { x: maxX, y: maxY },
      { x: minX, y: maxY },
    ];
    return { kind: 'rectangle', widthMm: height, lengthMm: width, corners };
  }
  const least = minimumWidthBox(piece.region.outer);
  if (least.width * least.length - area > ROUNDED_LOSS_MM2) return undefined;
  return {
    kind: 'rectangle',
    widthMm: least.width,
    lengthMm: least.length,
    corners: longSideFirst(least.corners),
  };
}

function longSideFirst(corners: Ring): Ring {
  const [p, q, r] = corners;
  return distanceBetween(p!, q!) >= distanceBetween(q!, r!) ? corners : [...corners.slice(1), p!];
}

function isNear(value: number, wanted: number): boolean {
  return Math.abs(value - wanted) <= ROUND_WITHIN * wanted;
}
