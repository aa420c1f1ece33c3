import { minimumWidthBox } from '@hidebound/geometry';
import { middleOf } from '../../workshop/figures.js';
import type { LayablePiece } from '../../model/piece.js';
import type { CutSizeRule } from '../../model/workshop-rules.js';
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
  const layable = pieces.find((own) => own.article === article && own.piece === piece);
  if (layable === undefined) return undefined;
  const cuts = workshop.cuts
    .filter((rule) => mayHold(rule, layable))
    .sort((a, b) => middleOf(a.areaMm2) - middleOf(b.areaMm2));
  const found = cuts.find((rule) => {
    const input = { order, pieces, workshop, rule, areaMm2: rule.areaMm2, seed: 1, piecesMm2: 0 };
    const hides = hidesOfTrial(input, 1, HIDES_TRIED);
    return layOn(input, hides, { seed: 1, streams: 1, joins: 0 }).unplaced.length === 0;
  });
  return found?.name;
}

/** By length and width alone: what is longer and wider than the largest of a cut need not be tried. */
function mayHold({ lengthMm, widthMm }: CutSizeRule, { region }: LayablePiece): boolean {
  const { width, length } = minimumWidthBox(region.outer);
  const sides = [lengthMm.max, widthMm.max].sort((a, b) => a - b);
  return width <= sides[0]! && length * length <= sides[0]! ** 2 + sides[1]! ** 2;
}
