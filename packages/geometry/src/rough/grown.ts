import { roundPoint } from '../point.js';
import {
  composeAffine,
  rotationDeg,
  scaling,
  transformRegion,
  transformRing,
  translation,
} from '../shape/affine.js';
import { offsetRegions } from '../shape/clipper.js';
import { ringArea } from '../shape/ring.js';
import { simplifyGrowing } from '../shape/simplify.js';
import type { CopyRef, Item, Placement } from '../types/problem.js';
import type { Affine, Region, Ring } from '../types/shape.js';
import { EASY, MAGNIFIED, TIGHT } from './constants.js';
import type { Precision } from './constants.js';

/** A copy where it lies on its sheet. */
export interface Piece {
  readonly copy: CopyRef;
  readonly item: Item;
  readonly at: Affine;
  readonly region: Region;
  /** It stays where it is. */
  readonly isFixed: boolean;
}

export function pieceOf(item: Item, placement: Placement, isFixed: boolean): Piece {
  const at = composeAffine(translation(placement.x, placement.y), rotationDeg(placement.rotationDeg));
  const { set, copy } = placement;
  return { copy: { item: item.id, set, copy }, item, at, region: transformRegion(at, item.region), isFixed };
}

/** Draws pieces grown by a margin. */
export type Grow = (piece: Piece, marginMm: number) => Ring;

/** What was grown already, by item, margin and precision. */
export type GrownItems = Map<string, Ring>;

/**
 * The outline of a piece grown by a margin, openings and closed bays filled, on the grid. An item is grown once, in
 * its own frame, and then turned with each of its copies.
 */
export function createGrow(isTight: (piece: Piece) => boolean, known: GrownItems): Grow {
  return (piece, marginMm) => {
    const tight = isTight(piece);
    const key = JSON.stringify([piece.item.id, marginMm, tight]);
    const own = known.get(key) ?? growItem(piece.item.region.outer, marginMm, tight ? TIGHT : EASY);
    known.set(key, own);
    return transformRing(piece.at, own).map(roundPoint);
  };
}

function growItem(outer: Ring, marginMm: number, { simplifyMm, excessMm, arcMm }: Precision): Ring {
  const simple = simplifyMm > 0 ? simplifyGrowing(outer, simplifyMm) : outer;
  const grown = offsetRegions(
    [{ outer: transformRing(scaling(MAGNIFIED), simple), openings: [] }],
    (marginMm + excessMm) * MAGNIFIED,
    { join: 'round', arcTolerance: arcMm * MAGNIFIED },
  );
  // A ring that touches itself may part in the offset's union; the largest part holds all but slivers of it.
  let best = grown[0]!.outer;
  for (const { outer: other } of grown) if (ringArea(other) > ringArea(best)) best = other;
  return transformRing(scaling(1 / MAGNIFIED), best);
}
