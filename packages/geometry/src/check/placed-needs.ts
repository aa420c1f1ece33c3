import type { Need } from '../types/problem.js';
import type { Area } from './area.js';
import { areasOfPart } from './context.js';
import type { Placed } from './context.js';

/** A need, where it lies: the item's own over all of it, a part's over its areas. */
export interface PlacedNeed {
  /** Name of the part; absent: the whole item. */
  readonly part?: string;
  readonly need: Need;
  readonly areas: readonly Area[];
}

/**
 * All needs of a placed item. Each is proven over the whole of its own area, the item's everywhere, so that
 * where areas overlap the strictest need holds.
 */
export function placedNeeds(placed: Placed): readonly PlacedNeed[] {
  return [
    { need: placed.item.need, areas: [placed.area] },
    ...placed.item.parts.map((part) => ({
      part: part.name,
      need: part.need,
      areas: areasOfPart(placed, part),
    })),
  ];
}
