import { circleCurve, curveFromPolyline } from '@hidebound/geometry';
import type { Curve, Point } from '@hidebound/geometry';
import type { Hide } from '../model/hide.js';
import type { Layout, PiecePlacement, RoughCutBlock, StrapLane } from '../model/layout.js';
import type { LayablePiece, Piece } from '../model/piece.js';
import { pieceRegion } from '../pieces/piece-shape.js';
import type { CutFileOptions } from './types.js';
import { plainPiece } from '../testing/plain.js';

/** Nothing asked for: the lines as they lie. */
export const PLAIN: CutFileOptions = {
  choice: 'pieces',
  kerfMm: 0,
  overcutMm: 0,
  marks: true,
  frame: false,
  labels: false,
  side: 'grain',
};

/** A panel of 1000 × 600 mm. */
export const PANEL = {
  id: 'h',
  cut: 'panel',
  outline: box(0, 0, 1000, 600),
  openings: [],
} as unknown as Hide;

export function box(minX: number, minY: number, maxX: number, maxY: number): Curve {
  return curveFromPolyline(corners(minX, minY, maxX, maxY), true);
}

export function corners(minX: number, minY: number, maxX: number, maxY: number): Point[] {
  return [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
}

/** A square of so many mm about the origin. */
export function square(name: string, side: number, more: Partial<Piece> = {}): Piece {
  return plainPiece(name, box(-side / 2, -side / 2, side / 2, side / 2), more);
}

export function disc(name: string, radius: number): Piece {
  return plainPiece(name, circleCurve({ x: 0, y: 0 }, radius));
}

export interface Laid extends Partial<PiecePlacement> {
  readonly shape: Piece;
}

/** A layout of these pieces on one panel; nothing in it is proven. */
export function layoutOf(
  laid: readonly Laid[],
  more: { readonly lanes?: readonly StrapLane[]; readonly roughCuts?: readonly RoughCutBlock[] } = {},
): Layout {
  const shapes = new Map(laid.map(({ shape }) => [shape.name, shape]));
  const pieces = [...shapes.values()].map((shape): LayablePiece => {
    const region = pieceRegion(shape);
    return {
      article: 'bag',
      piece: shape.name,
      hash: '',
      shape,
      region,
      face: [region],
      arrowDeg: 0,
      arrowIsGuessed: false,
    };
  });
  const counted = new Map<string, number>();
  const placements = laid.map(({ shape, ...placement }): PiecePlacement => {
    const copy = (counted.get(shape.name) ?? 0) + 1;
    counted.set(shape.name, copy);
    return {
      article: 'bag',
      piece: shape.name,
      set: 1,
      copy,
      mirrored: false,
      hide: 'h',
      x: 0,
      y: 0,
      rotationDeg: 0,
      locked: false,
      accepted: [],
      state: 'planned',
      ...placement,
    };
  });
  const { lanes = [], roughCuts = [] } = more;
  return { pieces, placements, lanes, roughCuts, swatches: [], cuttingOrder: [] } as unknown as Layout;
}
