import {
  intersectRegions,
  orientRing,
  regionArea,
  regionsArea,
  subtractRegions,
  unionRegions,
} from '@hidebound/geometry';
import type { Point, Region } from '@hidebound/geometry';
import { hideRegion, netRegions, voidRegions } from '../hide/hide-region.js';
import type { QualityOptions } from '../hide/qualities.js';
import { useFromVector } from '../hide/use-from.js';
import { placedRegion } from '../layout/placed-region.js';
import type { Hide } from '../model/hide.js';
import type { AreaBalance, HideYield, Layout, PiecePlacement, YieldReport } from '../model/layout.js';
import type { ResolvedOrder } from '../model/order.js';
import type { LayablePiece } from '../model/piece.js';
import { leftoverOf } from './freeing-cut.js';
import type { Leftover } from './freeing-cut.js';
import { divideWaste } from './waste.js';

/** What a hide's yield is made of, as shapes. */
export interface HideUse {
  readonly hide: Hide;
  readonly region: Region;
  /** Pieces that are or will be used. */
  readonly pieces: readonly Region[];
  /** Everything cut from the hide: also spoiled copies, rough cuts, swatches. */
  readonly taken: readonly Region[];
  readonly leftover: Leftover;
  readonly keepMm: readonly [number, number];
}

export interface YieldInput extends QualityOptions {
  readonly order: ResolvedOrder;
  readonly pieces: readonly LayablePiece[];
  readonly placements: readonly PiecePlacement[];
  readonly roughCuts?: Layout['roughCuts'];
  readonly swatches?: Layout['swatches'];
  /** All hides of the layout, in its order. */
  readonly hides: readonly Hide[];
}

/** What is cut from each hide and what is left of it, in the order of the hides; untouched hides are left out. */
export function hideUses(input: YieldInput): HideUse[] {
  return input.hides.flatMap((hide) => {
    const use = useOfHide(hide, input);
    return use.taken.length === 0 ? [] : [use];
  });
}

/**
 * Yield of every hide that something is cut from, and of all of these together. Each part of the area is computed by
 * its own boolean, on the rings that stand for hide and pieces: pieces + flaws + edge + between + offcut + openings
 * make up the gross area but for rounding of booleans to 1 µm.
 */
export function layoutYield(input: YieldInput): YieldReport {
  const hides = hideUses(input).map((use) => yieldOfHide(use, input));
  return { hides, total: sumOfYields(hides) };
}

/** The areas of one hide. */
export function yieldOfHide(use: HideUse, options: QualityOptions = {}): HideYield {
  const { hide, region, pieces, leftover } = use;
  const outline: Region = { outer: region.outer, openings: [] };
  const net = netRegions(region);
  const flaws = voidRegions(hide, options);
  const usedUp = subtractRegions(net, leftover.kept);
  const laid = unionRegions(pieces);
  const waste = divideWaste({ hide: region, usedUp, pieces: laid, flaws, widthMm: Math.min(...use.keepMm) });
  const openings = region.openings.map((ring): Region => ({
    outer: orientRing(ring, 'outer'),
    openings: [],
  }));
  const areas = {
    grossMm2: regionArea(outline),
    netMm2: regionsArea(net),
    usableMm2: regionsArea(subtractRegions(net, flaws)),
    piecesMm2: regionsArea(intersectRegions(laid, usedUp)),
    openingsMm2: regionsArea(intersectRegions(openings, [outline])),
    flawsMm2: regionsArea(subtractRegions(intersectRegions(flaws, usedUp), laid)),
    edgeMm2: regionsArea(waste.edge),
    betweenMm2: regionsArea(waste.between),
    offcutMm2: regionsArea(leftover.kept),
    usedUpMm2: regionsArea(usedUp),
  };
  const { freeingCut } = leftover;
  return {
    hide: hide.id,
    ...areas,
    ...sharesOf(areas),
    ...(freeingCut === undefined ? {} : { freeingCut }),
  };
}

function useOfHide(hide: Hide, input: YieldInput): HideUse {
  const region = hideRegion(hide);
  const here = input.placements.filter((placement) => placement.hide === hide.id);
  const regionOf = (placement: PiecePlacement): Region => placedRegion(placement, input.pieces).region;
  const pieces = here.filter(({ state }) => state !== 'spoiled').map(regionOf);
  const spoiled = here.filter(({ state }) => state === 'spoiled').map(regionOf);
  const blocks = [...(input.roughCuts ?? []), ...(input.swatches ?? [])]
    .filter((block) => block.hide === hide.id)
    .map(({ outline }): Region => ({ outer: outline, openings: [] }));
  const taken = [...pieces, ...spoiled, ...blocks];
  const useFrom: Point = useFromVector(hide, input.order.useFrom).vector;
  const { keepMm } = input.order;
  return {
    hide,
    region,
    pieces,
    taken,
    keepMm,
    leftover: leftoverOf({ hide: region, taken, useFrom, keepMm }),
  };
}

type Areas = Omit<AreaBalance, 'grossYield' | 'usableYield' | 'usedUpYield'>;

const AREA_KEYS = [
  'grossMm2',
  'netMm2',
  'usableMm2',
  'piecesMm2',
  'openingsMm2',
  'flawsMm2',
  'edgeMm2',
  'betweenMm2',
  'offcutMm2',
  'usedUpMm2',
] as const satisfies readonly (keyof Areas)[];

/** The figures of several hides together; shares are those of the summed areas. */
export function sumOfYields(hides: readonly HideYield[]): AreaBalance {
  const sum = (key: keyof Areas): number => hides.reduce((total, hide) => total + hide[key], 0);
  const areas = Object.fromEntries(AREA_KEYS.map((key) => [key, sum(key)])) as unknown as Areas;
  return { ...areas, ...sharesOf(areas) };
}

function sharesOf(areas: Areas): Pick<AreaBalance, 'grossYield' | 'usableYield' | 'usedUpYield'> {
  const share = (of: number): number => (of > 0 ? areas.piecesMm2 / of : 0);
  return {
    grossYield: share(areas.grossMm2),
    usableYield: share(areas.usableMm2),
    usedUpYield: share(areas.usedUpMm2),
  };
}
