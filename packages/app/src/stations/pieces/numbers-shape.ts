import { DEFAULT_WORKSHOP, resolveOrder, resolvePieces } from '@hidebound/leather';
import type { LayablePiece, OrderPiece } from '@hidebound/leather';
import type { App } from '../../app/app.js';
import { toldError } from '../../words/told.js';
import type { Told } from '../../words/told.js';
import { benchOf } from './bench.js';
import { emptyOrder, withArticle } from './order/articles.js';

/** The piece by numbers that is being made, or what says why it can't be. */
export function tryNumbers(piece: OrderPiece): LayablePiece | Told {
  const begun = emptyOrder({ name: '-', date: '2000-01-01', method: '-', leathers: [] });
  const whole = withArticle(
    { ...begun, leathers: [{ name: piece.leather, hides: [] }] },
    { name: '-', goods: '-', sets: 1 },
    [piece],
  );
  const cutting = { method: '-', gapMm: 0, edgeMm: 0, voidMm: 0, kerfMm: 0 };
  const { articles, ...rest } = whole;
  const written = articles.flatMap((article) => ('file' in article ? [] : [article]));
  try {
    const order = resolveOrder({ ...rest, articles: written, cutting, keepMm: [1, 1] }, DEFAULT_WORKSHOP, {
      hidesLater: true,
    });
    return resolvePieces(order, () => ({ pieces: [] })).pieces[0]!;
  } catch (error) {
    return toldError(error);
  }
}

/** What is drawn while the numbers are typed: the last shape that could be. */
export function numbersShape(app: App): LayablePiece | undefined {
  const { numbers } = benchOf(app);
  const made = numbers === undefined ? undefined : tryNumbers(numbers);
  return made === undefined || 'sentence' in made ? undefined : made;
}
