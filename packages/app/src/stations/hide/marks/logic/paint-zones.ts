import {
  boxesTouch,
  containingRing,
  curveBox,
  curveFromPolyline,
  flattenCurve,
  intersectRegions,
  orientRing,
  regionArea,
  regionBox,
  simpleLine,
  subtractRegions,
  unionRegions,
} from '@hidebound/geometry';
import type { Curve, Point, Region, Ring } from '@hidebound/geometry';
import { bufferedLine } from '@hidebound/leather';
import type { Hide, Zone, ZoneKind } from '@hidebound/leather';

/** Corners of a painted edge lie so near to what the brush drew, mm: far below the width of any brush. */
const SIMPLE_MM = 0.25;
/** What is left of a zone and smaller than this, mm², is a sliver that a hand left over, no zone. */
const LEAST_ZONE_MM2 = 100;

/** What a broad brush went over. */
export function brushed(stroke: readonly Point[], widthMm: number): readonly Region[] {
  return bufferedLine(stroke, widthMm / 2);
}

export function around(outline: Curve): readonly Region[] {
  return unionRegions([{ outer: orientRing(containingRing(outline), 'outer'), openings: [] }]);
}

/**
 * The hide with more of a zone: what was painted joins the zones of this kind that it meets, and leaves those of other
 * kinds, so that a place is of one zone. Painting stops at the hide's edge.
 */
export function withZonePainted(hide: Hide, kind: ZoneKind, painted: readonly Region[]): Hide {
  const paint = onHide(hide, painted);
  if (paint.length === 0) return hide;
  const others = hide.zones.filter((zone) => zone.kind !== kind).flatMap((zone) => lessOf(zone, paint));
  const own = hide.zones.filter((zone) => zone.kind === kind);
  const met = own.filter((zone) => meets(zone, paint));
  const apart = own.filter((zone) => !met.includes(zone));
  const [model] = met;
  const regions = unionRegions([...met.flatMap(regionsOf), ...paint]);
  const zones = [...apart, ...others];
  return { ...hide, zones: named(zones, regions, { id: model?.id ?? kind, kind, ...effectPart(model) }) };
}

/** The hide with less of all zones. */
export function withZonesErased(hide: Hide, erased: readonly Region[]): Hide {
  const zones = hide.zones.flatMap((zone) => lessOf(zone, erased));
  const isSame = zones.length === hide.zones.length && zones.every((zone, i) => zone === hide.zones[i]);
  return isSame ? hide : { ...hide, zones: withOwnNames(zones) };
}

function effectPart(zone: Zone | undefined): Pick<Zone, 'effect'> {
  return zone?.effect === undefined ? {} : { effect: zone.effect };
}

function regionsOf({ outline }: Zone): readonly Region[] {
  return unionRegions([{ outer: flattenCurve(outline).slice(0, -1), openings: [] }]);
}

function onHide({ outline }: Hide, regions: readonly Region[]): readonly Region[] {
  return intersectRegions(regions, [{ outer: flattenCurve(outline).slice(0, -1), openings: [] }]);
}

/** Most zones lie far from what is painted, which their boxes tell at once. */
function meets(zone: Zone, regions: readonly Region[]): boolean {
  const box = curveBox(zone.outline);
  const near = regions.filter((region) => boxesTouch(box, regionBox(region)));
  return near.length > 0 && intersectRegions(regionsOf(zone), near).length > 0;
}

/** A zone that nothing is taken from stays as it was drawn. */
function lessOf(zone: Zone, taken: readonly Region[]): readonly Zone[] {
  return meets(zone, taken) ? named([], subtractRegions(regionsOf(zone), taken), zone) : [zone];
}

/** Each region as a zone like the model; zones hold no openings, so a region with one is parted through it. */
function named(
  zones: readonly Zone[],
  regions: readonly Region[],
  model: Omit<Zone, 'outline'>,
): readonly Zone[] {
  const made = regions
    .flatMap(withoutOpenings)
    .filter((region) => regionArea(region) >= LEAST_ZONE_MM2)
    .map(({ outer }): Zone => ({ ...model, outline: curveFromPolyline(fewer(outer), true) }));
  return withOwnNames([...zones, ...made]);
}

/** Names stay where they can; where two are the same, the later gets the next free number. */
function withOwnNames(zones: readonly Zone[]): readonly Zone[] {
  const used = new Set<string>();
  return zones.map((zone) => {
    let id = zone.id;
    for (let number = 2; used.has(id); number++) id = `${zone.kind}-${number}`;
    used.add(id);
    return id === zone.id ? zone : { ...zone, id };
  });
}

function fewer(ring: Ring): Ring {
  const simple = simpleLine([...ring, ring[0]!], SIMPLE_MM).slice(0, -1);
  return simple.length < 3 ? ring : simple;
}

/** Parts of a region that together are all of it and have no openings: cut straight through the middle of each. */
function withoutOpenings(region: Region): readonly Region[] {
  const [opening] = region.openings;
  if (opening === undefined) return [region];
  const { minX, maxX } = regionBox({ outer: orientRing(opening, 'outer'), openings: [] });
  const box = regionBox(region);
  const middle = (minX + maxX) / 2;
  const half = (from: number, to: number): Region => ({
    outer: [
      { x: from, y: box.minY - 1 },
      { x: to, y: box.minY - 1 },
      { x: to, y: box.maxY + 1 },
      { x: from, y: box.maxY + 1 },
    ],
    openings: [],
  });
  return [half(box.minX - 1, middle), half(middle, box.maxX + 1)]
    .flatMap((side) => intersectRegions([region], [side]))
    .flatMap(withoutOpenings);
}
