import type { G } from '@svgdotjs/svg.js';
import type { Box, Point } from '@hidebound/geometry';
import { regionBox } from '@hidebound/geometry';
import type { LayablePiece } from '@hidebound/leather';
import { drawPieceInto } from '../../../drawing/piece-layer.js';
import { linePath, regionPath, ringPath } from '../../../drawing/path-data.js';

/** How long the arrow is against the smaller side of its piece, and against the larger one at most. */
const ARROW_SHARES = { ofSmaller: 0.75, ofLarger: 0.3 } as const;

export interface Arrow {
  readonly middle: Point;
  readonly lengthMm: number;
}

/** Where the arrow of a piece is drawn: from its own origin, so that it lies on the piece's middle. */
export function arrowOfPiece({ region }: LayablePiece): Arrow {
  const { minX, maxX, minY, maxY } = regionBox(region);
  const [smaller, larger] = [Math.min(maxX - minX, maxY - minY), Math.max(maxX - minX, maxY - minY)];
  const lengthMm = Math.max(ARROW_SHARES.ofSmaller * smaller, ARROW_SHARES.ofLarger * larger) / 2;
  return { middle: { x: (minX + maxX) / 2, y: (minY + maxY) / 2 }, lengthMm };
}

export function arrowTip({ middle, lengthMm }: Arrow, deg: number): Point {
  const angle = (deg * Math.PI) / 180;
  return { x: middle.x + lengthMm * Math.cos(angle), y: middle.y + lengthMm * Math.sin(angle) };
}

/** One piece alone, with its lines, what is seen of it, and its arrow with a handle at its tip. Gives back what to fit. */
export function drawLarge(
  layer: G,
  piece: LayablePiece,
  rings: readonly (readonly Point[])[],
  withArrow: boolean,
): Box {
  const group = layer.group().attr({ class: 'large-piece' });
  drawPieceInto(group, piece);
  if (piece.shape.face.length > 0 && rings.length === 0)
    for (const region of piece.face) group.path(regionPath(region)).attr({ class: 'large-face' });
  for (const ring of rings) group.path(ringPath(ring)).attr({ class: 'large-face' });
  for (const { at, angleDeg, depthMm } of piece.shape.notches) {
    const angle = (angleDeg * Math.PI) / 180;
    const inner = { x: at.x + depthMm * Math.cos(angle), y: at.y + depthMm * Math.sin(angle) };
    group.path(linePath([at, inner])).attr({ class: 'piece-notch' });
  }
  if (withArrow) drawArrow(layer.group().attr({ class: 'large-arrow' }), piece, piece.arrowDeg);
  return regionBox(piece.region);
}

export function drawArrow(group: G, piece: LayablePiece, deg: number): void {
  group.clear();
  const arrow = arrowOfPiece(piece);
  const { middle, lengthMm } = arrow;
  const tip = arrowTip(arrow, deg);
  const tail = arrowTip(arrow, deg + 180);
  const barb = (by: number): Point => {
    const angle = ((deg + 180 + by) * Math.PI) / 180;
    const long = lengthMm * 0.22;
    return { x: tip.x + long * Math.cos(angle), y: tip.y + long * Math.sin(angle) };
  };
  group.path(linePath([tail, tip])).attr({ class: 'arrow-line' });
  group.path(ringPath([tip, barb(24), barb(-24)])).attr({ class: 'arrow-head' });
  group
    .circle(lengthMm * 0.2)
    .center(middle.x, middle.y)
    .attr({ class: 'arrow-middle' });
}
