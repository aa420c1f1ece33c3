import { transformRegion } from '@hidebound/geometry';
import type { Region } from '@hidebound/geometry';
import { cuttingNumbers } from '../layout/cutting-numbers.js';
import { pieceOfPlacement, placementTransform } from '../layout/placed-region.js';
import type { Layout, PiecePlacement } from '../model/layout.js';
import type { PieceSource } from '../model/order.js';
import type { LayablePiece } from '../model/piece.js';
import { pieceCopyKey } from '../order/item-id.js';

/** A copy that is still to be cut, with all that is known of it. */
export interface PlacedCopy {
  readonly placement: PiecePlacement;
  readonly piece: LayablePiece;
  readonly source: PieceSource | undefined;
  readonly number: string;
  /** In the hide's frame. */
  readonly region: Region;
}

/** The copies of a hide that are still to be cut, by `pieceCopyKey`. Throws `unknown-piece`. */
export function plannedCopies(layout: Layout, hide: string): Map<string, PlacedCopy> {
  const numbers = cuttingNumbers(layout);
  return new Map(
    layout.placements
      .filter((placement) => placement.hide === hide && placement.state === 'planned')
      .map((placement) => {
        const piece = pieceOfPlacement(placement, layout.pieces);
        const asked = layout.order.articles
          .find(({ name }) => name === placement.article)
          ?.pieces.find(({ name }) => name === placement.piece);
        const key = pieceCopyKey(placement);
        const region = transformRegion(placementTransform(placement), piece.region);
        return [key, { placement, piece, source: asked?.from, number: numbers.get(key)!, region }];
      }),
  );
}
