import { curveBox } from '@hidebound/geometry';
import type { LayablePiece, Layout, PiecePlacement, ResolvedPiece } from '@hidebound/leather';
import type { SeenFrom } from '../picture/hide-view.js';
import { MIRRORED_SIGN, thicknessWords } from '../sheet/words.js';
import type { LengthUnit } from '../sheet/words.js';
import type { ShapeWords } from './template-scene.js';

/** What the order says of a piece. */
export function orderPieceOf(
  layout: Layout,
  piece: { readonly article: string; readonly piece: string },
): ResolvedPiece | undefined {
  return layout.order.articles
    .find((article) => article.name === piece.article)
    ?.pieces.find((each) => each.name === piece.piece);
}

/** What a template of a single piece says; counted over all that the layout lays. */
export function pieceTemplateWords(
  layout: Layout,
  piece: LayablePiece,
  side: SeenFrom,
  units: LengthUnit,
  stitchHoles: number,
): ShapeWords {
  const { order } = layout;
  const copies = layout.placements.filter(
    (each) => each.article === piece.article && each.piece === piece.piece,
  );
  const ordered = orderPieceOf(layout, piece);
  return {
    title: piece.piece,
    short: piece.piece,
    facts: [
      `${piece.article}: ${countWords(copies)}`,
      sideWords(side),
      ...thicknessFacts(ordered, units),
      ...faceFacts(piece, ordered),
      ...punchFacts(piece),
      ...(stitchHoles === 0 ? [] : [`${stitchHoles} stitch holes`]),
      ...(piece.arrowIsGuessed ? ['arrow: along its long axis, none was drawn'] : []),
      `${order.name}, version ${order.version}, ${order.date}`,
    ],
  };
}

/** What stands in a piece as it lies on a hide. */
export function placedPieceWords(
  layout: Layout,
  placement: PiecePlacement,
  number: string,
  units: LengthUnit,
): ShapeWords {
  const mirrored = placement.mirrored ? `, mirrored ${MIRRORED_SIGN}` : '';
  const title = `${number}  ${placement.piece}`;
  return {
    title,
    short: `${title}${placement.mirrored ? ` ${MIRRORED_SIGN}` : ''}`,
    facts: [
      `${placement.article}, set ${placement.set}, copy ${placement.copy}${mirrored}`,
      ...thicknessFacts(orderPieceOf(layout, placement), units),
    ],
  };
}

function countWords(copies: readonly PiecePlacement[]): string {
  const mirrored = copies.filter((copy) => copy.mirrored).length;
  const plain = copies.length - mirrored;
  if (mirrored === 0) return `cut ${plain}`;
  if (plain === 0) return `cut ${mirrored}, all mirrored: turn this over`;
  return `cut ${plain}, and ${mirrored} mirrored ${MIRRORED_SIGN}: turn this over`;
}

function sideWords(side: SeenFrom): string {
  return side === 'grain' ? 'grain side up' : 'flesh side up (mirrored drawing)';
}

function thicknessFacts(ordered: ResolvedPiece | undefined, units: LengthUnit): string[] {
  if (ordered?.thickness === undefined) return [];
  const skive = ordered.tooThick === 'skive' ? ', skive what is thicker' : '';
  return [`thickness ${thicknessWords(ordered.thickness, units)}${skive}`];
}

function faceFacts(piece: LayablePiece, ordered: ResolvedPiece | undefined): string[] {
  if (piece.shape.face.length === 0) return [];
  return hasAllowanceLine(piece, ordered)
    ? [`allowance ${trimmed(ordered!.allowanceMm)} mm outside the dotted line`]
    : ['face within the dotted line'];
}

function punchFacts({ shape }: LayablePiece): string[] {
  const counts = new Map<number, number>();
  for (const { diameterMm } of shape.punches) counts.set(diameterMm, (counts.get(diameterMm) ?? 0) + 1);
  return [...counts]
    .sort(([a], [b]) => a - b)
    .map(
      ([diameterMm, count]) => `${count === 1 ? 'punch' : `${count} punches`} ⌀ ${trimmed(diameterMm)} mm`,
    );
}

function trimmed(n: number): string {
  return String(Math.round(n * 100) / 100);
}

const SAME_MM = 0.1;

/** True where the face is bounded by the old cut line, all round inside the new one by the allowance. */
export function hasAllowanceLine(piece: LayablePiece, ordered: ResolvedPiece | undefined): boolean {
  const [face, ...more] = piece.shape.face;
  if (ordered === undefined || ordered.allowanceMm === 0 || face === undefined || more.length > 0)
    return false;
  const inner = curveBox(face);
  const outer = curveBox(piece.shape.cut);
  const gaps = [
    inner.minX - outer.minX,
    inner.minY - outer.minY,
    outer.maxX - inner.maxX,
    outer.maxY - inner.maxY,
  ];
  return gaps.every((gap) => Math.abs(gap - ordered.allowanceMm) <= SAME_MM);
}
