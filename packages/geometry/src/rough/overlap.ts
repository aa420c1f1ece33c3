import { scaling, transformRegion } from '../shape/affine.js';
import { intersectRegions, offsetRegions, subtractRegions } from '../shape/clipper.js';
import { boxesTouch, ringBox } from '../shape/ring.js';
import type { Region, Ring } from '../types/shape.js';
import { MAGNIFIED, OVERLAP_HALF_WIDTH_MM } from './constants.js';

/** The ring as a region without openings. */
export function filled(outer: Ring): Region {
  return { outer, openings: [] };
}

/** True if two regions overlap by more than rounding. */
export function overlaps(one: Region, other: Region): boolean {
  if (!boxesTouch(ringBox(one.outer), ringBox(other.outer))) return false;
  return isMoreThanRounding(intersectRegions([magnified(one)], [magnified(other)]));
}

/** True if a part of the ring's area lies outside of the other one, by more than rounding. */
export function leaves(ring: Ring, outer: Ring): boolean {
  return isMoreThanRounding(subtractRegions([magnified(filled(ring))], [magnified(filled(outer))]));
}

const MAGNIFY = scaling(MAGNIFIED);

function magnified(region: Region): Region {
  return transformRegion(MAGNIFY, region);
}

/** Of magnified regions. */
function isMoreThanRounding(regions: readonly Region[]): boolean {
  const shrink = -OVERLAP_HALF_WIDTH_MM * MAGNIFIED;
  return regions.length > 0 && offsetRegions(regions, shrink, { join: 'mitre' }).length > 0;
}
