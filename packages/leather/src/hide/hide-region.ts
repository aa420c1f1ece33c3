import {
  containedRegion,
  intersectRegions,
  regionArea,
  regionsArea,
  subtractRegions,
} from '@hidebound/geometry';
import type { Region } from '@hidebound/geometry';
import type { Hide } from '../model/hide.js';
import { hideQualities, isUnsureEdge } from './qualities.js';
import type { QualityOptions } from './qualities.js';

/**
 * The leather of a hide: lies within the true outline, within 0.05 mm of it, and its openings contain the true
 * openings. Follows from the hide's curves alone.
 */
export function hideRegion(hide: Pick<Hide, 'outline' | 'openings'>): Region {
  return containedRegion(hide.outline, hide.openings);
}

/** Areas of a hide in mm², of the region that lies within its curves (below the true ones by at most 0.05 mm all round). */
export interface HideAreas {
  /** Within the outline. */
  readonly grossMm2: number;
  /** Gross less the openings. */
  readonly netMm2: number;
  /** Net less what is never to be used. Unsure edges count as usable here: they are a distance, not a flaw. */
  readonly usableMm2: number;
}

/** Gross, net and usable area. */
export function hideAreas(hide: Hide, options: QualityOptions = {}): HideAreas {
  const region = hideRegion(hide);
  const net = netRegions(region);
  return {
    grossMm2: regionArea({ outer: region.outer, openings: [] }),
    netMm2: regionsArea(net),
    usableMm2: regionsArea(subtractRegions(net, voidRegions(hide, options))),
  };
}

/** The region with its openings cut out, so that openings that overlap or reach over the outline count once. */
export function netRegions(region: Region): Region[] {
  const openings = region.openings.map((ring): Region => ({ outer: ring, openings: [] }));
  return subtractRegions([{ outer: region.outer, openings: [] }], openings);
}

/** What is never to be used because of flaws and zones; unsure edges are not among them. Clipped to the outline. */
export function voidRegions(hide: Hide, options: QualityOptions = {}): Region[] {
  const outline: Region = { outer: hideRegion(hide).outer, openings: [] };
  const areas = hideQualities(hide, options)
    .filter((quality) => quality.isVoid && !isUnsureEdge(quality))
    .flatMap((quality) => quality.areas);
  return intersectRegions(areas, [outline]);
}
