import {
  directionAt,
  largestRectangle,
  regionBox,
  regionCentroid,
  regionArea,
  regionsArea,
  rotationDeg,
  simplifyShrinking,
  subtractRegions,
  transformRegion,
} from '@hidebound/geometry';
import type { InnerRectangle, Region } from '@hidebound/geometry';
import { definedOnly } from '../files/defined-only.js';
import { directionField } from '../hide/fields.js';
import { hideRegion, netRegions, voidRegions } from '../hide/hide-region.js';
import type { QualityOptions } from '../hide/qualities.js';
import type { Hide } from '../model/hide.js';
import { longestStrip } from './longest-strip.js';
import type { InnerStrip } from './longest-strip.js';

/** What a hide or offcut measures, mm and mm². All inner figures are clear of openings and of what is never to be used. */
export interface StockSizes {
  /** Net area less what is never to be used. */
  readonly usableMm2: number;
  /** Direction in which it stretches least at its middle, degrees clockwise; absent: not known. */
  readonly directionDeg?: number;
  /** Its extent along that direction and across it; along x and y where it is not known. */
  readonly alongMm: number;
  readonly acrossMm: number;
  /** Sides along and across the direction; absent where it is not known, or where nothing fits. */
  readonly rectangleAlong?: InnerRectangle;
  /** Turned any way. */
  readonly rectangle?: InnerRectangle;
  readonly stripAlong?: InnerStrip;
  readonly strip?: InnerStrip;
}

/** Sizes of a hide; strips are as wide as asked. */
export function stockSizes(
  hide: Hide,
  options: QualityOptions & { readonly stripWidthMm: number },
): StockSizes {
  const parts = usableParts(hide, options);
  const plain = parts.map(plainer);
  const region = hideRegion(hide);
  const directionDeg = localDirectionDeg(hide, region);
  const box = regionBox(transformRegion(rotationDeg(-(directionDeg ?? 0)), region));
  const { stripWidthMm } = options;
  const along =
    directionDeg === undefined
      ? {}
      : definedOnly({
          rectangleAlong: largest(plain, areaOf, (part) =>
            largestRectangle(part, { angleDeg: directionDeg }),
          ),
          stripAlong: largest(plain, lengthOf, (part) =>
            longestStrip(part, stripWidthMm, { angleDeg: directionDeg }),
          ),
        });
  return {
    usableMm2: regionsArea(parts),
    ...(directionDeg === undefined ? {} : { directionDeg }),
    alongMm: box.maxX - box.minX,
    acrossMm: box.maxY - box.minY,
    ...along,
    ...definedOnly({
      rectangle: largest(plain, areaOf, largestRectangleAnyWay),
      strip: largest(plain, lengthOf, (part) => longestStrip(part, stripWidthMm)),
    }),
  };
}

/** True if a rectangle of these sides fits into the usable leather, turned any way. */
export function holdsAnyWay(parts: readonly Region[], sidesMm: readonly [number, number]): boolean {
  const [width, length] = [...sidesMm].sort((a, b) => a - b) as [number, number];
  return parts.some((part) => longestStrip(part, width, { atLeastMm: length }) !== undefined);
}

/** The leather of a hide that may be used at all, in parts. */
export function usableParts(hide: Hide, options: QualityOptions = {}): Region[] {
  return subtractRegions(netRegions(hideRegion(hide)), voidRegions(hide, options));
}

/** Inner figures of ragged outlines are at most this far too small on each side: a knife is led no better. */
const PLAINER_BY_MM = 0.5;
const FEW_CORNERS = 48;

/** The same leather within an outline of fewer corners. */
function plainer(part: Region): Region {
  if (part.outer.length <= FEW_CORNERS) return part;
  return { outer: simplifyShrinking(part.outer, PLAINER_BY_MM), openings: part.openings };
}

/** Ways that are tried at first, this far apart: a rectangle is the same after a quarter turn. */
const COARSE_DEG = 5;
const FINEST_DEG = 0.25;
const CLOSE_LOOKS = 2;

/** The largest rectangle of any way that `largestRectangle` finds every 5 degrees and, about the best two, every 0.3. */
export function largestRectangleAnyWay(region: Region): InnerRectangle | undefined {
  const found: InnerRectangle[] = [];
  const look = (angleDeg: number): InnerRectangle | undefined => largestRectangle(region, { angleDeg });
  for (let angleDeg = 0; angleDeg < 90; angleDeg += COARSE_DEG) {
    const rectangle = look(angleDeg);
    if (rectangle !== undefined) found.push(rectangle);
  }
  found.sort((a, b) => areaOf(b) - areaOf(a));
  let best = found[0];
  for (const start of found.slice(0, CLOSE_LOOKS)) {
    let close = start;
    for (let step = COARSE_DEG / 2; step >= FINEST_DEG; step /= 2) {
      for (const angle of [close.angleDeg - step, close.angleDeg + step]) {
        const turned = look(angle);
        if (turned !== undefined && areaOf(turned) > areaOf(close)) close = turned;
      }
    }
    if (areaOf(close) > areaOf(best!)) best = close;
  }
  return best;
}

function lengthOf({ lengthMm }: InnerStrip): number {
  return lengthMm;
}

function areaOf({ alongMm, acrossMm }: InnerRectangle): number {
  return alongMm * acrossMm;
}

/** The best of what is found in each part; parts smaller than the best so far are not looked at. */
function largest<Found>(
  parts: readonly Region[],
  sizeOf: (found: Found) => number,
  find: (part: Region) => Found | undefined,
): Found | undefined {
  let best: Found | undefined;
  for (const part of [...parts].sort((a, b) => regionArea(b) - regionArea(a))) {
    const found = find(part);
    if (found !== undefined && (best === undefined || sizeOf(found) > sizeOf(best))) best = found;
  }
  return best;
}

function localDirectionDeg(hide: Hide, region: Region): number | undefined {
  const field = directionField(hide);
  if (field === undefined) return undefined;
  const direction = directionAt(field, regionCentroid(region));
  return direction === 'unknown' ? undefined : direction.angleDeg;
}
