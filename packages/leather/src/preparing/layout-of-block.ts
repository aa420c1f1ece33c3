import type { Placement } from '@hidebound/geometry';
import { layoutFrom } from '../layout/layout-from.js';
import { seatsOf } from '../layout/seats.js';
import type { Hide } from '../model/hide.js';
import type { Layout, PiecePlacement, RoughCutBlock } from '../model/layout.js';
import type { ResolvedOrder } from '../model/order.js';
import type { PatternPiece } from '../model/piece.js';
import { copyRefOf } from '../order/item-id.js';
import { nestProblemFor } from '../order/problem.js';
import { layablePiece } from '../pieces/layable-piece.js';

/** What a block’s own layout is made from. */
export interface BlockToLay {
  readonly block: RoughCutBlock;
  readonly order: ResolvedOrder;
  readonly hide: Hide;
  readonly pieces: readonly PatternPiece[];
  /** That the block is cut from. */
  readonly layout: Layout;
}

/** The block’s pieces on the block alone, where they lie on the whole hide, all of one set, each locked in its place. */
export function layoutOfBlock({ block, order, hide, pieces: drawn, layout }: BlockToLay): Layout {
  const pieces = order.articles.flatMap((article) =>
    article.pieces.map((orderPiece) => {
      const { from } = orderPiece;
      const source = drawn.find(({ piece }) => from.kind === 'pattern' && piece.name === from.piece)!;
      return layablePiece({ article: article.name, orderPiece, source: source.piece });
    }),
  );
  const [file = ''] = order.leathers[0]?.hides ?? [];
  const hides = [{ file, hide }];
  const { seed, streams, version } = layout.origin;
  const marks = layout.marks;
  const reading = marks === undefined ? {} : { workshop: marks, avoidCandidates: marks.avoidCandidates };
  const problem = nestProblemFor({ order, pieces, hides, budget: { seed, streams }, ...reading });
  const placements = placementsOf(block, layout, hide.id);
  return layoutFrom({
    order,
    pieces,
    hides,
    problem,
    ...reading,
    keep: { placements },
    answer: {
      placements: placements.map((placement): Placement => {
        const { x, y, rotationDeg } = placement;
        return { ...copyRefOf(placement), sheet: hide.id, x, y, rotationDeg };
      }),
      lanes: [],
      roughCuts: [],
      unplaced: [],
      joins: 0,
    },
    origin: { version, seed, streams, effort: 0 },
  });
}

/** Copies are numbered anew, plain and mirrored ones apart; those that were a pair get one number. */
function placementsOf(block: RoughCutBlock, layout: Layout, hide: string): PiecePlacement[] {
  const seated = seatsOf(layout.placements).ofRoughCut(block);
  const here = seated.flatMap((placement) => (placement === undefined ? [] : [placement]));
  const inOrder = [...here].sort((a, b) => a.set - b.set || a.copy - b.copy);
  const counts = new Map<string, number>();
  return inOrder.map((placement) => {
    const key = JSON.stringify([placement.article, placement.piece, placement.mirrored]);
    const copy = (counts.get(key) ?? 0) + 1;
    counts.set(key, copy);
    return { ...placement, hide, set: 1, copy, locked: true };
  });
}
