import type { Diagnostic } from '../../model/diagnostic.js';
import type { LayablePiece } from '../../model/piece.js';
import type { Workshop } from '../../model/workshop.js';
import { namesOf } from './buyable.js';
import type { PurchaseAnswer } from './buying-answer.js';
import { cutThatHolds } from './cut-that-holds.js';
import type { Purchase } from './purchase.js';
import type { MissedPiece } from './run-trial.js';

/** Pieces that no kind of hide holds, then those that the first choice misses now and then. */
export function missedFindings(
  answer: PurchaseAnswer,
  purchase: Purchase,
  pieces: readonly LayablePiece[],
  workshop: Workshop,
): Diagnostic[] {
  const first = answer.kinds[0];
  if (first === undefined) return [];
  if (first.holdsAll) {
    return distinct(first.missed).map(({ article, piece, trials }) => ({
      code: 'piece-misses-offer',
      severity: 'warning',
      params: { article, piece, offer: first.name, trials, of: first.trials },
    }));
  }
  return distinct(first.missed).map(({ article, piece, reason }) => ({
    code: 'piece-fits-no-offer',
    severity: 'error',
    params: {
      article,
      piece,
      leather: namesOf(answer),
      why: WHY[reason] ?? 'no room was left for it',
      cut: cutThatHolds(purchase, pieces, { article, piece }, workshop) ?? '',
    },
  }));
}

const WHY: Partial<Record<MissedPiece['reason'], string>> = {
  'larger-than-every-sheet': 'it is larger than every one of them',
  'no-leather-good-enough': 'no place on them is good enough in looks, strength and zone',
  'direction-unknown': 'their direction is not known',
  thickness: 'none is of its thickness',
};

/** A piece may have been missed for several reasons; the most frequent one is told. */
function distinct<Missed extends MissedPiece & { readonly trials: number }>(
  missed: readonly Missed[],
): Missed[] {
  const byPiece = new Map<string, Missed>();
  for (const own of [...missed].sort((a, b) => b.trials - a.trials)) {
    const key = JSON.stringify([own.article, own.piece]);
    if (!byPiece.has(key)) byPiece.set(key, own);
  }
  return [...byPiece.values()];
}
