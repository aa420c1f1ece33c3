import {
  MIRROR_X,
  applyAffine,
  composeAffine,
  rotationDeg,
  sinCosDeg,
  transformCurve,
  translation,
} from '@hidebound/geometry';
import type { Affine, Curve, Point, Region } from '@hidebound/geometry';
import { compareNumbers, cuttingNumbers, pieceCopyKey } from '@hidebound/leather';
import type { LayablePiece, Layout, PiecePlacement } from '@hidebound/leather';
import { RenderError } from '../error.js';
import { regionOnDrawing } from './hide-view.js';
import type { HideView } from './hide-view.js';

export { compareNumbers, cuttingNumbers };
/** What tells a copy from all others of the layout. */
export { pieceCopyKey as copyKey };

/** One copy of a piece as it lies on the drawing. */
export interface PlacedPiece {
  readonly placement: PiecePlacement;
  readonly piece: LayablePiece;
  /** Its number in the order of cutting: "12", or "3.2" for the second piece of step 3. */
  readonly number: string;
  /** From the piece's frame to the drawing's. */
  readonly toDrawing: Affine;
  readonly region: Region;
  /** Where the seen part ends; empty if all of it is seen. */
  readonly face: readonly Region[];
  /** Unit vector of the direction arrow. */
  readonly arrow: Point;
}

/** The pieces of one hide as the view shows them, in the order of cutting. Throws `unknown-piece`. */
export function placePieces(layout: Layout, hideId: string, view: HideView): PlacedPiece[] {
  const pieces = new Map(layout.pieces.map((piece) => [pieceKey(piece), piece]));
  const numbers = cuttingNumbers(layout);
  const placed = layout.placements
    .filter((placement) => placement.hide === hideId)
    .map((placement) => {
      const piece = pieces.get(pieceKey(placement));
      if (piece === undefined) {
        throw new RenderError(
          'unknown-piece',
          `The layout places "${placement.piece}" of ${placement.article}, but holds no shape for it.`,
        );
      }
      return placePiece(placement, piece, numbers.get(pieceCopyKey(placement)) ?? '', view);
    });
  return placed.sort((a, b) => compareNumbers(a.number, b.number));
}

/** What tells a piece from all others of the layout. */
export function pieceKey(piece: { readonly article: string; readonly piece: string }): string {
  return JSON.stringify([piece.article, piece.piece]);
}

/** From a piece's frame to its hide's: mirrored if asked, turned clockwise, moved. */
export function placementTransform(placement: PiecePlacement): Affine {
  const turned = composeAffine(
    rotationDeg(placement.rotationDeg),
    placement.mirrored ? MIRROR_X : rotationDeg(0),
  );
  return composeAffine(translation(placement.x, placement.y), turned);
}

/** A curve of the piece on the drawing. */
export function pieceCurve(placed: PlacedPiece, curve: Curve): Curve {
  return transformCurve(placed.toDrawing, curve);
}

function placePiece(
  placement: PiecePlacement,
  piece: LayablePiece,
  number: string,
  view: HideView,
): PlacedPiece {
  const toDrawing = composeAffine(view.toDrawing, placementTransform(placement));
  return {
    placement,
    piece,
    number,
    toDrawing,
    region: regionOnDrawing(toDrawing, piece.region),
    face: isAllFace(piece) ? [] : piece.face.map((region) => regionOnDrawing(toDrawing, region)),
    arrow: arrowOnDrawing(toDrawing, piece.arrowDeg),
  };
}

/** A piece without a drawn face is all face. */
function isAllFace(piece: LayablePiece): boolean {
  return piece.shape.face.length === 0;
}

/** The unit vector of a direction in the piece, on the drawing. */
export function arrowOnDrawing(toDrawing: Affine, arrowDeg: number): Point {
  const { sin, cos } = sinCosDeg(arrowDeg);
  const foot = applyAffine(toDrawing, { x: 0, y: 0 });
  const tip = applyAffine(toDrawing, { x: cos, y: sin });
  const length = Math.sqrt((tip.x - foot.x) ** 2 + (tip.y - foot.y) ** 2);
  return { x: (tip.x - foot.x) / length, y: (tip.y - foot.y) / length };
}
