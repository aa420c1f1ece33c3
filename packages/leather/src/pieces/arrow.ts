import { atan2Deg, minimumWidthBox, normalizeDeg } from '@hidebound/geometry';
import type { Region } from '@hidebound/geometry';
import type { ResolvedPiece } from '../model/order.js';
import type { Piece } from '../model/piece.js';

/** Decimals of an arrow's angle in degrees. */
const ARROW_STEPS_PER_DEG = 1e6;

export interface PieceArrow {
  /** In the piece's own frame, clockwise from its x axis, in [0, 360). */
  readonly arrowDeg: number;
  /** Nobody drew it: it follows the long axis. */
  readonly isGuessed: boolean;
}

/**
 * The piece's arrow, in the frame of the grain side: what the order says, else what is drawn, else the long axis of
 * the smallest-width box, towards greater x (towards greater y if it runs straight down).
 */
export function arrowOf(
  shape: Piece,
  region: Region,
  wish: Pick<ResolvedPiece, 'arrowDeg' | 'side'>,
): PieceArrow {
  if (wish.arrowDeg !== undefined) {
    // The order's angle is one of the drawing, which shows the seen side.
    const deg = wish.side === 'flesh' ? 180 - wish.arrowDeg : wish.arrowDeg;
    return { arrowDeg: roundAngle(deg), isGuessed: false };
  }
  if (shape.direction !== undefined) {
    const { from, to } = shape.direction;
    if (from.x !== to.x || from.y !== to.y) {
      return { arrowDeg: roundAngle(atan2Deg(to.y - from.y, to.x - from.x)), isGuessed: false };
    }
  }
  return { arrowDeg: roundAngle(longAxisDeg(region)), isGuessed: true };
}

/** The arrow of the mirrored copy, whose frame is x → -x. */
export function mirroredArrowDeg(arrowDeg: number): number {
  return roundAngle(180 - arrowDeg);
}

function longAxisDeg(region: Region): number {
  const axis = roundAngle(minimumWidthBox(region.outer).angleDeg) % 180;
  return axis > 90 ? axis + 180 : axis;
}

function roundAngle(deg: number): number {
  return normalizeDeg(Math.round(normalizeDeg(deg) * ARROW_STEPS_PER_DEG) / ARROW_STEPS_PER_DEG);
}
