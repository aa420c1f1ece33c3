import { curveBox, regionArea, rotationDeg, transformCurve } from '@hidebound/geometry';
import type { UnplacedReason } from '@hidebound/geometry';
import { compareNumbers, cuttingNumbers } from '../layout/cutting-numbers.js';
import { pieceOfPlacement } from '../layout/placed-region.js';
import type { Layout, PieceCopy, PiecePlacement } from '../model/layout.js';
import type { ThicknessRange } from '../model/marks.js';
import type { LayablePiece } from '../model/piece.js';
import { pieceCopyKey } from '../order/item-id.js';

/** One copy of a piece in the list of a layout; lengths in mm, areas in mm². */
export interface ListedPiece {
  /** Its number in the order of cutting, as on the sheets; none where it is not laid or spoiled. */
  readonly number?: string;
  readonly article: string;
  readonly piece: string;
  readonly set: number;
  readonly copy: number;
  readonly mirrored: boolean;
  /** How many copies of this piece, plain and mirrored, the list has. */
  readonly count: number;
  readonly leather?: string;
  readonly colour?: string;
  readonly thickness?: ThicknessRange;
  /** Of the box around its cut line that lies along its direction arrow: along the arrow, and across it. */
  readonly lengthMm?: number;
  readonly widthMm?: number;
  /** Within the cut line, less the cut-outs. */
  readonly areaMm2?: number;
  readonly state: PiecePlacement['state'] | 'not laid';
  readonly reason?: UnplacedReason;
  readonly hide?: string;
  /** As the layout has them: see `PiecePlacement`. */
  readonly x?: number;
  readonly y?: number;
  readonly rotationDeg?: number;
}

/** Sizes are told to a tenth of a millimetre, areas to a square millimetre. */
const SIZE_STEPS_PER_MM = 10;

/**
 * Every copy of every piece of a layout, hide by hide in the order of cutting; spoiled copies and those that were not
 * laid come last. Throws `unknown-piece` if the layout places a piece that it doesn't hold.
 */
export function pieceList(layout: Layout): ListedPiece[] {
  const numbers = cuttingNumbers(layout);
  const placed = layout.placements
    .map((placement) => ({ placement, number: numbers.get(pieceCopyKey(placement)) ?? '' }))
    .sort((a, b) => Number(isSpoiled(a)) - Number(isSpoiled(b)) || compareNumbers(a.number, b.number));
  const rows = [
    ...placed.map(({ placement, number }) => placedRow(placement, number, layout)),
    ...layout.unplaced.map((copy): Omit<ListedPiece, 'count'> => ({
      ...commonOf(copy, layout),
      ...sizeOf(layout.pieces.find((piece) => isOf(piece, copy))),
      state: 'not laid',
      reason: copy.reason,
    })),
  ];
  return rows.map((row) => ({ ...row, count: rows.filter((other) => isOf(other, row)).length }));
}

function isSpoiled({ placement }: { readonly placement: PiecePlacement }): boolean {
  return placement.state === 'spoiled';
}

function placedRow(placement: PiecePlacement, number: string, layout: Layout): Omit<ListedPiece, 'count'> {
  const { state, hide, x, y, rotationDeg: turn } = placement;
  return {
    ...(state === 'spoiled' ? {} : { number }),
    ...commonOf(placement, layout),
    ...sizeOf(pieceOfPlacement(placement, layout.pieces)),
    state,
    hide,
    x,
    y,
    rotationDeg: turn,
  };
}

type Common = Pick<
  ListedPiece,
  'article' | 'piece' | 'set' | 'copy' | 'mirrored' | 'leather' | 'colour' | 'thickness'
>;

/** The thickness that the piece asks for, or else that of its leather. */
function commonOf({ article, piece, set, copy, mirrored }: PieceCopy, { order }: Layout): Common {
  const asked = order.articles
    .find(({ name }) => name === article)
    ?.pieces.find(({ name }) => name === piece);
  const leather = order.leathers.find(({ name }) => name === asked?.leather);
  const thickness = asked?.thickness ?? leather?.thickness;
  return {
    article,
    piece,
    set,
    copy,
    mirrored,
    ...(asked === undefined ? {} : { leather: asked.leather }),
    ...(leather?.colour === undefined ? {} : { colour: leather.colour }),
    ...(thickness === undefined ? {} : { thickness }),
  };
}

function sizeOf(piece: LayablePiece | undefined): Pick<ListedPiece, 'lengthMm' | 'widthMm' | 'areaMm2'> {
  if (piece === undefined) return {};
  const box = curveBox(transformCurve(rotationDeg(-piece.arrowDeg), piece.shape.cut));
  return {
    lengthMm: rounded(box.maxX - box.minX),
    widthMm: rounded(box.maxY - box.minY),
    areaMm2: Math.round(regionArea(piece.region)),
  };
}

function rounded(mm: number): number {
  return Math.round(mm * SIZE_STEPS_PER_MM) / SIZE_STEPS_PER_MM;
}

function isOf(
  one: { readonly article: string; readonly piece: string },
  other: { readonly article: string; readonly piece: string },
): boolean {
  return one.article === other.article && one.piece === other.piece;
}
