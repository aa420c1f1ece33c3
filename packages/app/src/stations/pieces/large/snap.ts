import { curveBox, pointToSegment } from '@hidebound/geometry';
import type { Curve, Point } from '@hidebound/geometry';
import type { Piece } from '@hidebound/leather';

export type Snapped =
  | { readonly kind: 'corner'; readonly at: Point }
  | { readonly kind: 'side'; readonly from: Point; readonly to: Point };

/** What of a drawing lies under a tap: a corner first, else a straight side as a whole; undefined beside all. mm. */
export function snapTo(curves: readonly Curve[], at: Point, reachMm: number): Snapped | undefined {
  let corner: { readonly at: Point; readonly far: number } | undefined;
  let side: { readonly from: Point; readonly to: Point; readonly far: number } | undefined;
  for (const curve of curves) {
    let from = curve.start;
    for (const segment of curve.segments) {
      const far = Math.hypot(segment.to.x - at.x, segment.to.y - at.y);
      if (far <= reachMm && (corner === undefined || far < corner.far)) corner = { at: segment.to, far };
      if (segment.kind === 'line') {
        const beside = pointToSegment(at, from, segment.to);
        if (beside <= reachMm && (side === undefined || beside < side.far))
          side = { from, to: segment.to, far: beside };
      }
      from = segment.to;
    }
    const far = Math.hypot(curve.start.x - at.x, curve.start.y - at.y);
    if (far <= reachMm && (corner === undefined || far < corner.far)) corner = { at: curve.start, far };
  }
  if (corner !== undefined) return { kind: 'corner', at: corner.at };
  return side === undefined ? undefined : { kind: 'side', from: side.from, to: side.to };
}

/** All lines of a piece that something can be measured on. */
export function linesOfPiece(piece: Piece): readonly Curve[] {
  const { cut, cutOuts, stitchLines, foldLines, skiveLines, cementLines, face } = piece;
  const marks = [...stitchLines, ...foldLines, ...skiveLines, ...cementLines].map(({ curve }) => curve);
  return [cut, ...cutOuts, ...marks, ...face];
}

export function sizeOfPiece({ cut }: Piece): { readonly widthMm: number; readonly heightMm: number } {
  const box = curveBox(cut);
  return { widthMm: box.maxX - box.minX, heightMm: box.maxY - box.minY };
}

/** Multiples of this draw the arrow to them when it is turned by hand, degrees. */
const ARROW_STEP_DEG = 15;
const ARROW_REACH_DEG = 3;

/** The arrow's angle when it points from the middle to where the hand is; tenths of a degree, in [0, 360). */
export function arrowToward(middle: Point, at: Point, isFree: boolean): number {
  const deg = (Math.atan2(at.y - middle.y, at.x - middle.x) * 180) / Math.PI;
  const step = Math.round(deg / ARROW_STEP_DEG) * ARROW_STEP_DEG;
  const chosen = !isFree && Math.abs(deg - step) <= ARROW_REACH_DEG ? step : deg;
  return Math.round((((chosen % 360) + 360) % 360) * 10) / 10;
}
