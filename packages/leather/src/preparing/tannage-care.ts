import type { OrderLeather } from '../model/order.js';
import type { Workshop } from '../model/workshop.js';
import { tannageRowOf } from '../goods/find-goods.js';

/** The table’s name of the leather’s tannage; undefined where the order or the table does not say it. */
export function tannageOf(
  { tannage }: Pick<OrderLeather, 'tannage'>,
  workshop: Workshop,
): string | undefined {
  return tannage === undefined ? undefined : tannageRowOf(tannage, workshop)?.tannage;
}

/** Tannages, by the table’s names, whose leather is full of oil when it is bought. (Common practice, no source.) */
const OILY: readonly string[] = ['oil', 'brain'];
/** Out of these, water takes the tannage: wet, they go hard. (From memory.) */
const SPOILT_BY_WATER: readonly string[] = ['alum'];
/** Coloured through at the tannery as a rule; dye put on later stays at the surface. (Common practice, no source.) */
const DYED_THROUGH: readonly string[] = ['chrome', 'combination'];

export function isFullOfOil(leather: Pick<OrderLeather, 'tannage'>, workshop: Workshop): boolean {
  return isOneOf(OILY, leather, workshop);
}

export function isSpoiltByWater(leather: Pick<OrderLeather, 'tannage'>, workshop: Workshop): boolean {
  return isOneOf(SPOILT_BY_WATER, leather, workshop);
}

export function isDyedThrough(leather: Pick<OrderLeather, 'tannage'>, workshop: Workshop): boolean {
  return isOneOf(DYED_THROUGH, leather, workshop);
}

function isOneOf(
  names: readonly string[],
  leather: Pick<OrderLeather, 'tannage'>,
  workshop: Workshop,
): boolean {
  const tannage = tannageOf(leather, workshop);
  return tannage !== undefined && names.includes(tannage);
}
