import { CHECK_FORGIVES_DEG, angleBetweenDeg } from '@hidebound/geometry';
import type { Point, Region, Ring } from '@hidebound/geometry';
import type { Diagnostic } from '../model/diagnostic.js';
import type { Layout } from '../model/layout.js';
import type { ResolvedPiece } from '../model/order.js';
import type { LayablePiece } from '../model/piece.js';
import { deriveLayable } from '../pieces/layable-piece.js';

/** Rings derived anew from the stored curves must agree with the stored rings to the last digit of the file. */
const SAME_RING_MM = 0.001;

/**
 * What is wrong with a layout's pieces: one that the order has and the layout lacks, or one whose hash, region, face
 * or arrow does not follow from its own curves. Each finding is an error and names article and piece.
 */
export function provePieces(layout: Pick<Layout, 'order' | 'pieces'>): Diagnostic[] {
  return layout.order.articles.flatMap((article) =>
    article.pieces.flatMap((orderPiece) => {
      const stored = layout.pieces.filter((p) => p.article === article.name && p.piece === orderPiece.name);
      const [piece, second] = stored;
      if (piece === undefined) return [finding('layout-piece-missing', article.name, orderPiece.name)];
      if (second !== undefined) return [finding('layout-piece-twice', article.name, orderPiece.name)];
      return provePiece(piece, orderPiece);
    }),
  );
}

function provePiece(piece: LayablePiece, orderPiece: ResolvedPiece): Diagnostic[] {
  const { article, shape } = piece;
  const derived = deriveOrNothing(article, orderPiece, piece);
  const say = (code: string): Diagnostic[] => [finding(code, article, orderPiece.name)];
  if (derived === undefined) return say('layout-piece-broken');
  const isGuessed = derived.arrowIsGuessed === piece.arrowIsGuessed;
  const turn = Math.abs(angleBetweenDeg(derived.arrowDeg, piece.arrowDeg));
  return [
    ...(derived.hash === piece.hash ? [] : say('layout-piece-hash')),
    ...(isSameRegion(derived.region, piece.region) ? [] : say('layout-piece-region')),
    ...(isSameFace(derived.face, piece.face) ? [] : say('layout-piece-face')),
    ...(isGuessed && turn <= CHECK_FORGIVES_DEG ? [] : say('layout-piece-arrow')),
    ...(shape.name === orderPiece.name ? [] : say('layout-piece-hash')),
  ];
}

/** A shape that was edited into nonsense encloses nothing: that is a finding, not a crash. */
function deriveOrNothing(
  article: string,
  orderPiece: ResolvedPiece,
  piece: LayablePiece,
): LayablePiece | undefined {
  try {
    return deriveLayable({ article, orderPiece, shape: piece.shape });
  } catch (error) {
    if (error instanceof Error && 'code' in error) return undefined;
    throw error;
  }
}

function isSameFace(one: readonly Region[], other: readonly Region[]): boolean {
  return one.length === other.length && one.every((region, i) => isSameRegion(region, other[i]!));
}

function isSameRegion(one: Region, other: Region): boolean {
  return (
    isSameRing(one.outer, other.outer) &&
    one.openings.length === other.openings.length &&
    one.openings.every((ring, i) => isSameRing(ring, other.openings[i]!))
  );
}

function isSameRing(one: Ring, other: Ring): boolean {
  return one.length === other.length && one.every((p, i) => isSamePoint(p, other[i]!));
}

function isSamePoint(p: Point, q: Point): boolean {
  return Math.abs(p.x - q.x) <= SAME_RING_MM && Math.abs(p.y - q.y) <= SAME_RING_MM;
}

function finding(code: string, article: string, piece: string): Diagnostic {
  return { code, severity: 'error', params: { article, piece }, place: { at: `${article}/${piece}` } };
}
