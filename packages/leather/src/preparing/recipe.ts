import type { Preparation } from '../model/order.js';
import type { Span } from '../model/workshop-rules.js';
import type { Workshop } from '../model/workshop.js';
import { figureOf } from '../workshop/figures.js';
import { conditioningOf, dyeBaseOf } from './kinds.js';

/** What of the leather decides whether it is fed, and when. */
export interface LeatherState {
  /** Tooled or moulded: it is cased, and must be dry and bare before the dye. */
  readonly isWorked?: boolean;
  /** From the tannery: it takes no more. */
  readonly isFullOfOil?: boolean;
}

/**
 * Whether the leather is fed before the dye and lightly after it. Dyes of water and pigment hold badly on leather that
 * was fed, so that before the dye it is fed only where that is of spirit or oil; what could not be fed before is fed
 * after. Dye takes fat out, so that fed leather is fed again. (Common practice, no source.)
 */
export function feedingOf(
  preparation: Preparation,
  { isWorked = false, isFullOfOil = false }: LeatherState = {},
): { readonly before: boolean; readonly after: boolean } {
  if (conditioningOf(preparation) !== 'fed' || isFullOfOil) return { before: false, after: false };
  const isDyed = preparation.dye !== undefined;
  const base = dyeBaseOf(preparation);
  const mayBefore = !isDyed || base === 'spirit' || base === 'oil';
  return { before: mayBefore && !isWorked, after: isDyed || isWorked };
}

/** Coats that the order asks for, else the workshop’s figure; none where there is no dye. */
export function dyeCoats({ dye, coats }: Preparation, workshop: Pick<Workshop, 'figures'>): Span {
  return dye === undefined ? NONE : coatsOf(coats, workshop, 'coats of dye');
}

export function finishCoats(
  { finish, finishCoats: coats }: Preparation,
  workshop: Pick<Workshop, 'figures'>,
): Span {
  return finish === undefined ? NONE : coatsOf(coats, workshop, 'coats of finish');
}

const NONE: Span = { min: 0, max: 0 };

function coatsOf(stated: number | undefined, workshop: Pick<Workshop, 'figures'>, figure: string): Span {
  if (stated !== undefined) return { min: stated, max: stated };
  const { min, max } = figureOf(workshop, figure).value;
  return { min: Math.ceil(min), max: Math.ceil(max) };
}
