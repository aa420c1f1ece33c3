import type { G } from '@svgdotjs/svg.js';
import type { Layout, LayablePiece, PiecePlacement } from '@hidebound/leather';
import { curvePath, linePath } from './path-data.js';

/** Across the head of the nail that is drawn in a piece that stays. */
const NAIL_MM = 8;

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
  layout: Pick<Layout, 'pieces'>,
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
  // A nail holds a piece that is to stay; seen only where it does.
  group.circle(NAIL_MM).center(0, 0).attr({ class: 'piece-nail' });
}

/** A piece as it is to be seen. */
export interface ShownPiece {
  readonly piece: LayablePiece;
  readonly placement: Omit<PiecePlacement, 'hide' | 'locked' | 'accepted' | 'state'>;
  /** As what it is seen: "is-cut is-locked". */
  readonly style: string;
}

/** A piece that is drawn, and what of it is drawn. */
export interface DrawnPiece {
  readonly group: G;
  readonly hash: string;
  readonly placement: ShownPiece['placement'];
}

export type DrawnPieces = ReadonlyMap<string, DrawnPiece>;

/**
 * Brings a layer to show these pieces: elements that are there already are kept, and moved by their `transform` alone.
 * Gives back what is drawn now, by key; `move` is told of each piece that was there before and lies elsewhere now, and
 * moves it in its own way. Elements carry `data-kind="piece"` and the copy's key as `data-id`.
 */
export function showPieces(
  layer: G,
  shown: readonly ShownPiece[],
  before: DrawnPieces,
  move: (drawn: DrawnPiece, from: ShownPiece['placement']) => void = place,
): DrawnPieces {
  layer.attr({ class: 'pieces' });
  const drawn = new Map<string, DrawnPiece>();
  for (const { piece, placement, style } of shown) {
    const key = copyKey(placement);
    const slot = drawn.has(key) ? `${key} ${drawn.size}` : key;
    const known = before.get(slot);
    if (known?.hash === piece.hash) {
      const kept = { ...known, placement };
      known.group.attr({ class: `piece ${style}` });
      if (!liesAlike(known.placement, placement)) move(kept, known.placement);
      drawn.set(slot, kept);
      continue;
    }
    const group = layer.group().attr({ class: `piece ${style}`, 'data-kind': 'piece', 'data-id': key });
    drawPieceInto(group, piece);
    const made = { group, hash: piece.hash, placement };
    place(made);
    drawn.set(slot, made);
  }
  for (const [slot, { group }] of before) if (drawn.get(slot)?.group !== group) group.remove();
  return drawn;
}

function place({ group, placement }: DrawnPiece): void {
  group.attr({ transform: placementMatrix(placement) });
}

function liesAlike(one: ShownPiece['placement'], other: ShownPiece['placement']): boolean {
  return one.x === other.x && one.y === other.y && one.rotationDeg === other.rotationDeg;
}

/** The placements of one hide as they are seen. */
export function shownOnHide(layout: Layout, hideId: string): ShownPiece[] {
  return layout.placements.flatMap((placement) => {
    const piece = placement.hide === hideId ? pieceOf(layout, placement) : undefined;
    const style = `is-${placement.state}${placement.locked ? ' is-locked' : ''}`;
    return piece === undefined ? [] : [{ piece, placement, style }];
  });
}

/** Draws the placements of one hide anew; gives back the element of each copy, by its key, to be moved by `transform`. */
export function drawPlacementsInto(layer: G, layout: Layout, hideId: string): ReadonlyMap<string, G> {
  layer.clear();
  const drawn = showPieces(layer, shownOnHide(layout, hideId), new Map());
  return new Map([...drawn].map(([key, { group }]) => [key, group]));
}
