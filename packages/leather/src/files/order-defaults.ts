import type { DirectionWish, OrderMode, PairWish, UseFrom, KeepTogether } from '../model/order.js';

/** What an order or article file leaves unsaid. All are common practice, no source, and every one can be written out. */

export const DEFAULT_VALUE = 1;
export const DEFAULT_PRIORITY = 0;
export const DEFAULT_KEEP_TOGETHER: KeepTogether = 'faces on one lot';
export const DEFAULT_USE_FROM: UseFrom = 'tail';
export const DEFAULT_MODE: OrderMode = 'place all';

/** `pair: alike`. */
export const DEFAULT_PAIR: PairWish = { toleranceDeg: 10, distanceMm: 150 };

/** A direction given by its rule alone: 10° is the trade's figure for straps; "free" bears any angle. */
const DIRECTION_TOLERANCE_DEG: Readonly<Record<DirectionWish['rule'], number>> = {
  along: 10,
  across: 10,
  free: 180,
  fixed: 5,
};

/** Only a fixed direction tells head from tail. */
export function defaultDirection(rule: DirectionWish['rule']): DirectionWish {
  return { rule, angleDeg: 0, toleranceDeg: DIRECTION_TOLERANCE_DEG[rule], halfTurn: rule !== 'fixed' };
}
