import {
  findSelfContacts,
  intersectRegions,
  largestRectangle,
  minimumWidthBox,
  offsetRegions,
  outlineDistance,
  regionArea,
  regionsArea,
  ringDistance,
  subtractRegions,
  unionRegions,
} from '@hidebound/geometry';
import type { Region } from '@hidebound/geometry';
import { hideRegion, netRegions } from '../hide/hide-region.js';
import { placedRegion } from '../layout/placed-region.js';
import { startedRoughCuts } from '../layout/seats.js';
import type { Hide } from '../model/hide.js';
import type { Layout } from '../model/layout.js';
import { partOfHide } from '../offcuts/offcuts-of.js';

/** A hide as it is now, with some of its pieces cut. Areas in mm². */
export interface RestOfHide {
  readonly hide: string;
  /** What is left, the largest part first: parts that are worth keeping, or that pieces are still to be cut from. */
  readonly parts: readonly Hide[];
  /** Within the outline, and that less the openings. */
  readonly grossMm2: number;
  readonly netMm2: number;
  /** Good pieces, and spoiled ones, as they were cut. */
  readonly cutMm2: number;
  readonly spoiledMm2: number;
  /** The parts together. */
  readonly restMm2: number;
  /** Too small to keep, or taken away by the cuts: net less cut, spoiled and rest. */
  readonly lostMm2: number;
}

/**
 * A neck of leather narrower than twice this parts by itself; without it, outlines would touch themselves. The finest
 * that gives clean outlines is taken.
 */
const NECK_MM = [0.05, 0.2, 0.5] as const;

/**
 * What is left of a hide: its leather less what was cut from it, good or spoiled, and less what the cuts take away. A
 * rough cut of which a piece is cut lies on the table as a part of its own. Parts keep the hide's frame, flaws, zones,
 * backbone and strokes; their ids are the hide's with "-rest", "-rest-2" ….
 */
export function restOfHide(layout: Layout, hide: Hide): RestOfHide {
  const region = hideRegion(hide);
  const net = netRegions(region);
  const here = layout.placements.filter((placement) => placement.hide === hide.id);
  const regionsOf = (state: string): Region[] =>
    here
      .filter((placement) => placement.state === state)
      .map((placement) => placedRegion(placement, layout.pieces).region);
  const cut = regionsOf('cut');
  const spoiled = regionsOf('spoiled');
  const parts = partsOf(layout, hide, net, [...cut, ...spoiled]);
  const planned = regionsOf('planned');
  const kept = parts
    .filter((part) => isKept(part, planned, layout.order.keepMm))
    .sort((a, b) => regionArea(b) - regionArea(a));
  const areas = {
    netMm2: regionsArea(net),
    cutMm2: regionsArea(intersectRegions(unionRegions(cut), net)),
    spoiledMm2: regionsArea(intersectRegions(unionRegions(spoiled), net)),
    restMm2: regionsArea(kept),
  };
  return {
    hide: hide.id,
    parts: kept.map((part, i) =>
      partOfHide(hide, region, part, `${hide.id}-rest${i === 0 ? '' : `-${i + 1}`}`),
    ),
    grossMm2: regionArea({ outer: region.outer, openings: [] }),
    ...areas,
    lostMm2: areas.netMm2 - areas.cutMm2 - areas.spoiledMm2 - areas.restMm2,
  };
}

function partsOf(layout: Layout, hide: Hide, net: readonly Region[], gone: readonly Region[]): Region[] {
  if (gone.length === 0) return [...net];
  const started = startedRoughCuts(layout);
  const blocks = layout.roughCuts
    .filter(({ id, hide: on }) => on === hide.id && started.has(id))
    .map(({ outline }): Region => ({ outer: outline, openings: [] }));
  const { kerfMm } = layout.order.cutting;
  const taken = kerfMm > 0 ? offsetRegions(gone, kerfMm, { join: 'round' }) : gone;
  const parts = [
    ...subtractRegions(net, [...taken, ...blocks]),
    ...blocks.flatMap((block) => subtractRegions(intersectRegions([block], net), taken)),
  ];
  return parts.flatMap(withoutNecks);
}

/** The part without necks so narrow that outlines touch; grown back it stays within itself. */
function withoutNecks(part: Region): Region[] {
  let parts: Region[] = [];
  for (const neck of NECK_MM) {
    parts = offsetRegions(offsetRegions([part], -neck, { join: 'mitre' }), neck, { join: 'mitre' });
    if (parts.every(isClean)) return parts;
  }
  return parts.filter(isClean);
}

/** Outline and openings run once around and keep apart, as hide files must have it. */
function isClean({ outer, openings }: Region): boolean {
  return (
    [outer, ...openings].every((ring) => findSelfContacts(ring).length === 0) &&
    openings.every((ring) => outlineDistance(ring, outer) > 0) &&
    openings.every((ring, i) => openings.slice(i + 1).every((other) => ringDistance(ring, other) > 0))
  );
}

function isKept(part: Region, planned: readonly Region[], keepMm: readonly [number, number]): boolean {
  if (intersectRegions([part], planned).length > 0) return true;
  const [short, long] = [Math.min(...keepMm), Math.max(...keepMm)];
  const { width, length, angleDeg } = minimumWidthBox(part.outer);
  if (Math.min(width, length) < short || Math.max(width, length) < long) return false;
  return [0, angleDeg].some((turn) => {
    const box = largestRectangle(part, { angleDeg: turn });
    if (box === undefined) return false;
    return Math.min(box.alongMm, box.acrossMm) >= short && Math.max(box.alongMm, box.acrossMm) >= long;
  });
}
