import {
  containingRing,
  curveFromPolyline,
  intersectRegions,
  orientRing,
  pointInRegion,
  regionArea,
  roundPoint,
} from '@hidebound/geometry';
import type { Curve, Polyline, Region, Ring } from '@hidebound/geometry';
import { bufferedLine, flawRegions } from '../hide/flaw-region.js';
import type { Flaw, Hide, HidePrice } from '../model/hide.js';
import type { HideUse } from '../yield/layout-yield.js';

/**
 * What is left of a hide and worth keeping, as hides of their own: the largest first, ids with a letter after the
 * parent's (`side-7a`). They stay in the parent's frame, so that flaws, strokes and readings keep their numbers, and
 * keep its backbone and strokes whole, which tell the direction from outside the offcut too. Flaws, candidates and zones that
 * touch it are kept whole, others dropped; readings are kept where they lie on it. A price per hide becomes the
 * offcut's share of it by area; a price per area stays.
 */
export function offcutsOf(use: HideUse): Hide[] {
  const parts = [...use.leftover.kept].sort((a, b) => regionArea(b) - regionArea(a));
  return parts.map((part, i) => offcutHide(use, part, i));
}

function offcutHide({ hide, region }: HideUse, part: Region, index: number): Hide {
  return partOfHide(hide, region, part, `${hide.id}${letters(index)}`);
}

/**
 * A part of a hide as a hide of its own with the given id, in its parent's frame; what it keeps of its parent is told at
 * `offcutsOf`. `parentRegion` is the leather of the parent, for a price per hide.
 */
export function partOfHide(hide: Hide, parentRegion: Region, part: Region, id: string): Hide {
  const outline = curveOf(part.outer);
  const touches = (areas: readonly Region[]): boolean => intersectRegions(areas, [part]).length > 0;
  const keptFlaw = (flaw: Flaw): boolean => touches(flawRegions(flaw.shape));
  const area = regionArea(part);
  const price = offcutPrice(hide, area / regionArea(parentRegion));
  const { leather } = hide;
  return {
    id,
    parent: hide.id,
    cut: 'offcut',
    outline,
    openings: part.openings.map(curveOf),
    ...(hide.backbone === undefined ? {} : { backbone: hide.backbone }),
    tightness: hide.tightness,
    zones: hide.zones.filter((zone) => touches([{ outer: containingRing(zone.outline), openings: [] }])),
    flaws: hide.flaws.filter(keptFlaw),
    candidates: hide.candidates.filter(keptFlaw),
    unsureEdges: hide.unsureEdges.filter(({ line, offByMm }) => touches(bufferedLine(line, offByMm))),
    leather: {
      ...leather,
      readings: leather.readings.filter(({ at }) => pointInRegion(at, part) !== 'outside'),
    },
    area: { measuredMm2: Math.round(area) },
    ...(price === undefined ? {} : { price }),
    ...(hide.lot === undefined ? {} : { lot: hide.lot }),
    state: 'on hand',
    ...(hide.photo === undefined ? {} : { photo: hide.photo }),
  };
}

function curveOf(ring: Ring): Curve {
  const corners: Polyline = orientRing(ring, 'outer').map(roundPoint);
  return curveFromPolyline(corners, true);
}

/** a … z, then aa … az, ba …. */
function letters(index: number): string {
  const letter = String.fromCharCode(97 + (index % 26));
  return index < 26 ? letter : letters(Math.floor(index / 26) - 1) + letter;
}

/** Decimals of an offcut's share of a price: a hundredth of the usual smallest coin. */
const PRICE_DECIMALS = 4;

function offcutPrice(hide: Hide, share: number): HidePrice | undefined {
  const { price } = hide;
  if (price === undefined || price.per !== 'hide') return price;
  return { ...price, amount: (Number(price.amount) * share).toFixed(PRICE_DECIMALS) };
}
