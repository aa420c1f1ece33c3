import { GRID_MM } from '../tolerance.js';
import type { Box, Region, Ring } from '../types/shape.js';
import { pointInside } from './contain.js';
import { pointInRing } from './point-in-ring.js';
import { ringArea, ringBox } from './ring.js';

interface Outline {
  readonly ring: Ring;
  readonly box: Box;
  /** Always positive. */
  readonly area: number;
}

/**
 * Regions from rings that don't cross: a ring of positive area is an outer one, one of negative area an opening of
 * the smallest outer ring around it. Rings may touch, and rounding may push one a grid step beyond another. Regions
 * keep the order of their outer rings, openings theirs. An opening with nothing around it is dropped.
 */
export function nestRings(rings: readonly Ring[]): Region[] {
  const outers: Outline[] = [];
  const openings: Outline[] = [];
  for (const ring of rings) {
    const area = ringArea(ring);
    (area > 0 ? outers : openings).push({ ring, box: ringBox(ring), area: Math.abs(area) });
  }
  const regions = outers.map(({ ring }) => ({ outer: ring, openings: [] as Ring[] }));
  if (openings.length === 0) return regions;
  const place = new Map(outers.map((outer, i) => [outer, i]));
  const bySize = [...outers].sort((a, b) => a.area - b.area || place.get(a)! - place.get(b)!);
  for (const opening of openings) {
    const outer = smallestAround(opening, bySize);
    if (outer !== undefined) regions[place.get(outer)!]!.openings.push(opening.ring);
  }
  return regions;
}

/**
 * A larger outer ring whose inside holds one inner point of the opening holds all of it, as the two don't cross. An
 * island within the opening may hold that point too, but is smaller.
 */
function smallestAround(opening: Outline, bySize: readonly Outline[]): Outline | undefined {
  const around = bySize.filter(({ box, area }) => area > opening.area && boxHolds(box, opening.box));
  if (around.length < 2) return around[0];
  const inner = pointInside(opening.ring);
  return around.find(({ ring }) => pointInRing(inner, ring) === 'inside');
}

function boxHolds(outer: Box, inner: Box): boolean {
  return (
    inner.minX >= outer.minX - GRID_MM &&
    inner.minY >= outer.minY - GRID_MM &&
    inner.maxX <= outer.maxX + GRID_MM &&
    inner.maxY <= outer.maxY + GRID_MM
  );
}
