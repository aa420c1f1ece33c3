import {
  IDENTITY,
  MIRROR_X,
  circleCurve,
  composeAffine,
  curveFromPolyline,
  transformCurve,
  sinCosDeg,
} from '@hidebound/geometry';
import type { Affine, Curve } from '@hidebound/geometry';
import { pieceOfPlacement, placementTransform } from '../layout/placed-region.js';
import { startedRoughCuts, withoutSpoiledSeats } from '../layout/seats.js';
import type { Layout, PiecePlacement, RoughCutBlock, Swatch } from '../model/layout.js';
import type { LayablePiece, MarkLine, Notch } from '../model/piece.js';
import { bareCopy, pieceCopyKey } from '../order/item-id.js';
import type { Contour } from './contour.js';
import type { CutFileOptions, CutKind, CutOwner } from './types.js';

/** One piece that is to be cut, as it lies on the hide. */
export interface PieceToCut {
  readonly placement: PiecePlacement;
  readonly piece: LayablePiece;
  /** From the piece's frame to that of the file. */
  readonly place: Affine;
}

/** What one hide's file is made from. */
export interface WorkOfHide {
  readonly pieces: readonly PieceToCut[];
  readonly roughCuts: readonly RoughCutBlock[];
  readonly swatches: readonly Swatch[];
  /** Cut or spoiled already. */
  readonly doneCount: number;
}

/** The hide's frame as the machine sees it. */
export function frameOfSide(side: CutFileOptions['side']): Affine {
  return side === 'flesh' ? MIRROR_X : IDENTITY;
}

/** The pieces and rough cuts that the choice takes, in the order of the layout. */
export function workOfHide(given: Layout, hideId: string, options: CutFileOptions): WorkOfHide {
  const layout = { ...given, ...withoutSpoiledSeats(given) };
  const started = startedRoughCuts(given);
  const here = layout.placements.filter(({ hide }) => hide === hideId);
  const planned = here.filter(({ state }) => state === 'planned');
  const blocks = layout.roughCuts.filter(({ hide }) => hide === hideId);
  const prepared = new Set(blocks.flatMap(({ members }) => members.map(pieceCopyKey)));
  const isWhole = options.choice === 'rough-cuts-first';
  const toFile = frameOfSide(options.side);
  return {
    pieces: planned
      .filter((placement) => !isWhole || !prepared.has(pieceCopyKey(placement)))
      .map((placement) => ({
        placement,
        piece: pieceOfPlacement(placement, layout.pieces),
        place: composeAffine(toFile, placementTransform(placement)),
      })),
    // A block of which a piece is cut lies on the table already.
    roughCuts: options.choice === 'pieces' ? [] : blocks.filter(({ id }) => !started.has(id)),
    swatches: layout.swatches.filter(({ hide, roughCut }) => hide === hideId && !(isWhole && roughCut)),
    doneCount: here.length - planned.length,
  };
}

/** Outline of a piece, of a swatch or rough cut: what is cut last. */
export function outlineOf({ piece, place, placement }: PieceToCut): Contour {
  return closedContour('cut', ownerOf(placement), 'outside', transformCurve(place, piece.shape.cut));
}

/** Openings and holes of a piece. */
export function openingsOf({ piece, place, placement }: PieceToCut): Contour[] {
  const of = ownerOf(placement);
  const closed = (kind: CutKind, curve: Curve): Contour =>
    closedContour(kind, of, 'inside', transformCurve(place, curve));
  return [
    ...piece.shape.cutOuts.map((curve) => closed('opening', curve)),
    ...piece.shape.punches.map(({ at, diameterMm }) => closed('punch', circleCurve(at, diameterMm / 2))),
  ];
}

/** Lines that are marked on a piece, not cut. */
export function marksOf({ piece: { shape }, place, placement }: PieceToCut): Contour[] {
  const of = ownerOf(placement);
  const mark = (kind: CutKind, curve: Curve): Contour => ({
    kind,
    of,
    curves: [transformCurve(place, curve)],
    waste: 'none',
  });
  const lines = (kind: CutKind, all: readonly MarkLine[]): Contour[] =>
    all.map(({ curve }) => mark(kind, curve));
  return [
    ...lines('stitch', shape.stitchLines),
    ...lines('fold', shape.foldLines),
    ...lines('skive', shape.skiveLines),
    ...lines('cement', shape.cementLines),
    ...shape.notches.map((notch) => mark('notch', notchLine(notch))),
  ];
}

/** Where the arrow of a placed piece points, clockwise from the x axis. */
export function arrowDegOf({ piece, placement }: PieceToCut, side: CutFileOptions['side']): number {
  const own = placement.mirrored ? 180 - piece.arrowDeg : piece.arrowDeg;
  const onHide = own + placement.rotationDeg;
  return side === 'flesh' ? 180 - onHide : onHide;
}

function ownerOf(placement: PiecePlacement): CutOwner {
  return { kind: 'piece', copy: bareCopy(placement) };
}

export function closedContour(kind: CutKind, of: CutOwner, waste: Contour['waste'], curve: Curve): Contour {
  return { kind, of, waste, curves: [curve] };
}

function notchLine({ at, angleDeg, depthMm }: Notch): Curve {
  const { sin, cos } = sinCosDeg(angleDeg);
  return curveFromPolyline([at, { x: at.x + depthMm * cos, y: at.y + depthMm * sin }], false);
}
