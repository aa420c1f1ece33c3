import { middleOf } from '../../workshop/figures.js';
import type { LayablePiece } from '../../model/piece.js';
import type { Workshop } from '../../model/workshop.js';
import type { Purchase } from './purchase.js';
import { hidesOfTrial, layOn } from './run-trial.js';
import type { MissedPiece } from './run-trial.js';

/** Hides of chance of each cut that a piece is tried on. */
const HIDES_TRIED = 3;

/**
 * The smallest cut of the table of cuts that holds one copy of a piece, as hides of chance show; undefined where none
 * does.
 */
export function cutThatHolds(
  purchase: Purchase,
  pieces: readonly LayablePiece[],
  { article, piece }: Pick<MissedPiece, 'article' | 'piece'>,
  workshop: Workshop,
): string | undefined {
  const order = {
    ...purchase.order,
    articles: purchase.order.articles
      .filter(({ name }) => name === article)
      .map((own) => ({
        ...own,
        sets: 1,
        beside: [],
        pieces: own.pieces
          .filter(({ name }) => name === piece)
          .map((one) => ({ ...one, count: 1, mirrored: 0, layers: 1 })),
      })),
  };
  const cuts = [...workshop.cuts].sort((a, b) => middleOf(a.areaMm2) - middleOf(b.areaMm2));
  const found = cuts.find((rule) => {
    const input = { order, pieces, workshop, rule, areaMm2: rule.areaMm2, seed: 1, piecesMm2: 0 };
    const hides = hidesOfTrial(input, 1, HIDES_TRIED);
    return layOn(input, hides, { seed: 1, streams: 1, joins: 0 }).unplaced.length === 0;
  });
  return found?.name;
}
