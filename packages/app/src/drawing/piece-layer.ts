import type { G } from '@svgdotjs/svg.js';
import type { Layout, LayablePiece, PiecePlacement } from '@hidebound/leather';
import { curvePath, linePath } from './path-data.js';

/** A placement by what it is, whatever place it has: key of its element in a layer. */
export function copyKey({
  article,
  piece,
  set,
  copy,
  mirrored,
}: Omit<PiecePlacement, 'hide' | 'x' | 'y' | 'rotationDeg' | 'locked' | 'accepted' | 'state'>): string {
  return JSON.stringify([article, piece, set, copy, mirrored]);
}

/** Where a piece lies: mirrored first, then turned clockwise about its origin, then moved. */
export function placementMatrix({
  x,
  y,
  rotationDeg,
  mirrored,
}: Pick<PiecePlacement, 'x' | 'y' | 'rotationDeg' | 'mirrored'>): string {
  const angle = (rotationDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const flip = mirrored ? -1 : 1;
  return `matrix(${flip * cos} ${flip * sin} ${-sin} ${cos} ${x} ${y})`;
}

export function pieceOf(
  layout: Layout,
  { article, piece }: Pick<PiecePlacement, 'article' | 'piece'>,
): LayablePiece | undefined {
  return layout.pieces.find((each) => each.article === article && each.piece === piece);
}

/** One piece in its own frame: cut line, cut-outs, holes and marks. */
export function drawPieceInto(group: G, { shape }: LayablePiece): void {
  const cut = [shape.cut, ...shape.cutOuts].map(curvePath).join(' ');
  group.path(cut).attr({ class: 'piece-cut', 'fill-rule': 'evenodd' });
  for (const { at, diameterMm } of shape.punches)
    group.circle(diameterMm).center(at.x, at.y).attr({ class: 'piece-punch' });
  const marks: readonly (readonly [string, typeof shape.stitchLines])[] = [
    ['piece-stitch', shape.stitchLines],
    ['piece-fold', shape.foldLines],
    ['piece-skive', shape.skiveLines],
    ['piece-cement', shape.cementLines],
  ];
  for (const [style, lines] of marks)
    for (const { curve } of lines) group.path(curvePath(curve)).attr({ class: style });
  if (shape.direction !== undefined)
    group.path(linePath([shape.direction.from, shape.direction.to])).attr({ class: 'piece-direction' });
}

/** Draws the placements of one hide; gives back the element of each copy, by its key, to be moved by `transform`. */
export function drawPlacementsInto(layer: G, layout: Layout, hideId: string): ReadonlyMap<string, G> {
  layer.clear();
  layer.attr({ class: 'pieces' });
  const groups = new Map<string, G>();
  for (const placement of layout.placements) {
    if (placement.hide !== hideId) continue;
    const piece = pieceOf(layout, placement);
    if (piece === undefined) continue;
    const key = copyKey(placement);
    const group = layer.group().attr({
      class: `piece is-${placement.state}${placement.locked ? ' is-locked' : ''}`,
      'data-kind': 'piece',
      'data-id': key,
      transform: placementMatrix(placement),
    });
    drawPieceInto(group, piece);
    groups.set(key, group);
  }
  return groups;
}
