import { goodsRowOf } from '../goods/find-goods.js';
import type { OrderLeather, Preparation, ResolvedOrder } from '../model/order.js';
import type { Workshop } from '../model/workshop.js';
import { conditioningOf, dyeBaseOf, finishKindOf } from './kinds.js';
import type { StepKind, WorkStep } from './order-of-work.js';

/** What can hurt someone, or the leather, in a preparation. Each has its caution in words. */
export const HAZARDS = [
  'flammable',
  'vapour',
  'skin',
  'oily rags',
  'warm water',
  'drying',
  'blades',
  'dust',
  'steel in leather',
] as const;
export type Hazard = (typeof HAZARDS)[number];

export interface HazardInput {
  readonly preparation: Preparation;
  readonly leather: OrderLeather;
  readonly steps: readonly WorkStep[];
  readonly order: ResolvedOrder;
  readonly workshop: Workshop;
}

const WET_STEPS: readonly StepKind[] = ['wipe', 'case', 'work'];

/** The hazards of a preparation, in the order of the table. A product of unknown kind counts as the worst. */
export function hazardsOf({ preparation, leather, steps, order, workshop }: HazardInput): Hazard[] {
  const { dye, finish, resist, condition } = preparation;
  const base = dyeBaseOf(preparation);
  const hasStep = (kinds: readonly StepKind[]): boolean => steps.some(({ kind }) => kinds.includes(kind));
  const isDyed = dye !== undefined && hasStep(['dye']);
  const finishKind = finishKindOf(finish);
  const hasSolvent =
    (isDyed && base !== 'water' && base !== 'pigment') ||
    resist !== undefined ||
    (finish !== undefined && (finishKind === undefined || finishKind === 'wax or resin finish'));
  const isFed = conditioningOf(preparation) === 'fed' && condition !== undefined;
  const hasOil =
    isFed || finishKind === 'oil' || finishKind === 'wax or resin finish' || (isDyed && base !== 'water');
  const isWet = hasStep(WET_STEPS) || base === 'water';
  const found: Readonly<Record<Hazard, boolean>> = {
    flammable: hasSolvent,
    vapour: hasSolvent || isDyed || finish !== undefined,
    skin: isDyed || finish !== undefined || isFed || resist !== undefined,
    'oily rags': hasOil,
    'warm water': isWet,
    drying: isWet || isDyed || finish !== undefined || isFed,
    blades: true,
    dust: true,
    'steel in leather': order.articles.some(
      ({ goods, wants, pieces }) =>
        pieces.some((piece) => piece.leather === leather.name) &&
        (wants?.needs ?? goodsRowOf(goods, workshop)?.needs ?? []).includes('lying against steel'),
    ),
  };
  return HAZARDS.filter((hazard) => found[hazard]);
}
