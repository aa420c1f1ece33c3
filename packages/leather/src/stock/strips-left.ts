import { subtractRegions } from '@hidebound/geometry';
import type { Region } from '@hidebound/geometry';
import { voidRegions } from '../hide/hide-region.js';
import type { Workshop } from '../model/workshop.js';
import { figureOf } from '../workshop/figures.js';
import { leftoverOf } from '../yield/freeing-cut.js';
import type { HideUse } from '../yield/layout-yield.js';
import { holdsAnyWay } from './stock-sizes.js';

/** Narrower or shorter than this nothing is looked at, mm. */
const LEAST_PART_MM = 1;

/** The sizes of a strip that is worth keeping, mm. */
export function stripWorthKeeping(workshop: Pick<Workshop, 'figures'>): {
  readonly widthMm: number;
  readonly lengthMm: number;
} {
  return {
    widthMm: figureOf(workshop, 'narrowest strip worth keeping').value.min,
    lengthMm: figureOf(workshop, 'shortest strip worth keeping').value.min,
  };
}

/**
 * What lies beyond the freeing cut and does not hold the layout's rectangle, but a strip that is worth keeping. The
 * layout's own yield counts it as waste, so that laying is the same in every workshop.
 */
export function stripsLeftOf({ hide, region, taken, leftover }: HideUse, workshop: Workshop): Region[] {
  const towards = leftover.freeingCut?.towards;
  if (towards === undefined) return [];
  const { widthMm, lengthMm } = stripWorthKeeping(workshop);
  const { kept } = leftoverOf({
    hide: region,
    taken,
    useFrom: towards,
    keepMm: [LEAST_PART_MM, LEAST_PART_MM],
  });
  const never = voidRegions(hide, { workshop });
  const isKept = (part: Region): boolean =>
    leftover.kept.some(({ outer }) => outer[0]?.x === part.outer[0]?.x && outer[0]?.y === part.outer[0]?.y);
  return kept.filter(
    (part) => !isKept(part) && holdsAnyWay(subtractRegions([part], never), [widthMm, lengthMm]),
  );
}
