import { pointInRegion, regionBox, regionsArea, thicknessAt } from '@hidebound/geometry';
import type { Box, Point, Region } from '@hidebound/geometry';
import { thicknessField } from '../hide/fields.js';
import { hideRegion, netRegions } from '../hide/hide-region.js';
import { hideQualities, zoneOfCut } from '../hide/qualities.js';
import type { Hide } from '../model/hide.js';
import type { EffectDefaults } from '../parts/effects.js';

/** A place of a hide that is not void. */
export interface HidePlace {
  /** Zones over it; absent: nobody drew zones, so that any counts. */
  readonly zones?: readonly string[];
  readonly isWeak: boolean;
  /** Thinnest and thickest that it may be, mm; absent: not known. */
  readonly thickness?: readonly [number, number];
}

export interface HidePlaces {
  readonly places: readonly HidePlace[];
  /** Area that each of them stands for. */
  readonly cellMm2: number;
  /** Thickness was measured at places, not only stated for the whole hide. */
  readonly isMeasured: boolean;
}

/** Enough that a share of them is right to a per cent or two. */
const PLACES_WANTED = 1500;
const COARSEST_MM = 50;

/** A grid of places over the usable leather, with what is known of each; thickness as layouts are proven with. */
export function hidePlaces(hide: Hide, workshop?: EffectDefaults): HidePlaces {
  const region = hideRegion(hide);
  const net = netRegions(region);
  const stepMm = Math.min(COARSEST_MM, Math.sqrt(regionsArea(net) / PLACES_WANTED));
  const qualities = hideQualities(hide, { workshop }).flatMap((quality) =>
    quality.areas.map((area) => ({ quality, area, box: regionBox(area) })),
  );
  const anyZone = hide.zones.length === 0 && zoneOfCut(hide) === undefined;
  const field = thicknessField(hide);
  const places = gridIn(net, stepMm).flatMap((at): HidePlace[] => {
    const over = qualities.filter(({ area, box }) => isWithin(at, area, box)).map(({ quality }) => quality);
    if (over.some(({ isVoid }) => isVoid)) return [];
    return [
      {
        ...(anyZone ? {} : { zones: over.flatMap(({ zone }) => (zone === undefined ? [] : [zone])) }),
        isWeak: over.some(({ weak }) => weak),
        ...(field === undefined ? {} : { thickness: thicknessAt(field, at) }),
      },
    ];
  });
  return { places, cellMm2: stepMm * stepMm, isMeasured: hide.leather.readings.length > 0 };
}

function gridIn(regions: readonly Region[], stepMm: number): Point[] {
  return regions.flatMap((region) => {
    const { minX, minY, maxX, maxY } = regionBox(region);
    const points: Point[] = [];
    for (let y = minY + stepMm / 2; y < maxY; y += stepMm) {
      for (let x = minX + stepMm / 2; x < maxX; x += stepMm) {
        if (pointInRegion({ x, y }, region) === 'inside') points.push({ x, y });
      }
    }
    return points;
  });
}

function isWithin(at: Point, area: Region, box: Box): boolean {
  const { minX, minY, maxX, maxY } = box;
  if (at.x < minX || at.x > maxX || at.y < minY || at.y > maxY) return false;
  return pointInRegion(at, area) !== 'outside';
}
