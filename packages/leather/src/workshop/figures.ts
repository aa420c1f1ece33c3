import { BUYING_FIGURES } from '../buying/buying-figures.js';
import { HIDES_FIGURES } from '../buying/hides/hides-figures.js';
import { LOSSES_FIGURES } from '../buying/losses/losses-figures.js';
import { COSTING_FIGURES } from '../costing/costing-figures.js';
import { PREPARING_FIGURES } from '../preparing/preparing-figures.js';
import { STOCK_FIGURES } from '../stock/stock-figures.js';
import { SUIT_FIGURES } from '../suit/suit-figures.js';
import type { Figure, Span } from '../model/workshop-rules.js';
import type { Workshop } from '../model/workshop.js';

/** Every figure that a workshop file may overrule, by topic. */
export const DEFAULT_FIGURES: readonly Figure[] = [
  ...SUIT_FIGURES,
  ...BUYING_FIGURES,
  ...HIDES_FIGURES,
  ...LOSSES_FIGURES,
  ...PREPARING_FIGURES,
  ...COSTING_FIGURES,
  ...STOCK_FIGURES,
];

/** A figure of the workshop by name. A name that there is none of is a mistake in the program. */
export function figureOf(workshop: Pick<Workshop, 'figures'>, name: string): Figure {
  const figure = workshop.figures.find((each) => each.name === name);
  if (figure === undefined) throw new Error(`There is no figure "${name}".`);
  return figure;
}

/** The middle of a span, for where one figure must stand for it. */
export function middleOf({ min, max }: Span): number {
  return (min + max) / 2;
}
