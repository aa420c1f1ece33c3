import {
  MIRROR_X,
  composeAffine,
  regionBox,
  rotationDeg,
  transformRegion,
  translation,
} from '@hidebound/geometry';
import type { Affine, Box, Region } from '@hidebound/geometry';
import type { PiecePlacement, PlacedRegion } from '../model/layout.js';
import type { LayablePiece } from '../model/piece.js';
import { bareCopy } from '../order/item-id.js';
import { leatherErrorAs } from '../words/refuse.js';

/** From a piece's own frame onto its hide: mirrored if asked, turned clockwise about the origin, moved. */
export function placementTransform(
  placement: Pick<PiecePlacement, 'x' | 'y' | 'rotationDeg' | 'mirrored'>,
): Affine {
  const turned = composeAffine(translation(placement.x, placement.y), rotationDeg(placement.rotationDeg));
  return placement.mirrored ? composeAffine(turned, MIRROR_X) : turned;
}

/** The piece that a placement lays. Throws `LeatherError` if the layout does not have it. */
export function pieceOfPlacement(
  placement: Pick<PiecePlacement, 'article' | 'piece'>,
  pieces: readonly LayablePiece[],
): LayablePiece {
  const found = pieces.find((p) => p.article === placement.article && p.piece === placement.piece);
  if (found !== undefined) return found;
  const { piece, article } = placement;
  throw leatherErrorAs('unknown-piece', 'layout-piece-not-held', { piece, article });
}

/** Where a placed piece lies on its hide. */
export function placedRegion(placement: PiecePlacement, pieces: readonly LayablePiece[]): PlacedRegion {
  const { region } = pieceOfPlacement(placement, pieces);
  return { copy: bareCopy(placement), region: transformRegion(placementTransform(placement), region) };
}

/** The placed pieces of one hide, in the order of the placements; spoiled ones are left out. */
export function placedRegions(
  placements: readonly PiecePlacement[],
  pieces: readonly LayablePiece[],
  hide: string,
): PlacedRegion[] {
  return placements
    .filter((placement) => placement.hide === hide && placement.state !== 'spoiled')
    .map((placement) => placedRegion(placement, pieces));
}

/** Box of a region seen from a frame whose x axis points along `axis` (a unit vector). */
export function boxAlong(region: Region, axis: { readonly x: number; readonly y: number }): Box {
  const turn: Affine = { a: axis.x, b: -axis.y, c: axis.y, d: axis.x, e: 0, f: 0 };
  return regionBox(transformRegion(turn, region));
}
