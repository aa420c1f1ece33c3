import {
  laneRegion,
  offsetRegions,
  pointInRegion,
  pointToRing,
  regionBox,
  regionInRegion,
  regionsArea,
  ringCentroid,
  roundPoint,
  sinCosDeg,
  subtractRegions,
} from '@hidebound/geometry';
import type { Point, Region, Ring, Sheet } from '@hidebound/geometry';
import { netRegions } from '../hide/hide-region.js';
import { placedRegion } from '../layout/placed-region.js';
import type { Layout, StrapLane, Swatch } from '../model/layout.js';
import type { Workshop } from '../model/workshop.js';
import { sheetsOfOrder } from '../order/sheets.js';
import type { NamedHide } from '../order/sheets.js';
import { hideUses } from '../yield/layout-yield.js';
import { figureOf } from '../workshop/figures.js';

/** Where a test piece is wanted: beside a rough cut, or anywhere on a hide that is prepared whole. */
export interface SwatchWish {
  readonly hide: string;
  /** Of the rough cut; absent for a whole hide. */
  readonly roughCut?: string;
}

export interface FoundSwatches {
  readonly swatches: readonly Swatch[];
  /** Where there was no room in the waste. */
  readonly without: readonly SwatchWish[];
}

/** More than the boolean operations are off by, so that the exact check finds every distance kept. */
const SLACK_MM = 0.05;
/** Places that are tried: so far apart, and no more than so many, the nearest first. */
const PITCH_MM = 4;
const MOST_PLACES = 4000;
const ROUND = { join: 'round' } as const;
const ANGLES_DEG = [0, 90, 15, 105, 30, 120, 45, 135, 60, 150, 75, 165] as const;

/**
 * A test piece for each wish, in what the layout wastes: clear of pieces, rough cuts, lanes, edges, and all that is never
 * to be used, by the order’s distances; never in what is left over to be kept. Of all places found the nearest to its
 * rough cut is taken. A wish that the layout has a swatch for already is left out.
 */
export function findSwatches(
  layout: Layout,
  hides: readonly NamedHide[],
  wishes: readonly SwatchWish[],
  workshop: Workshop,
): FoundSwatches {
  const { min: short, max: long } = figureOf(workshop, 'test piece, sides').value;
  const { marks } = layout;
  const reading = marks === undefined ? {} : { workshop: marks, avoidCandidates: marks.avoidCandidates };
  const { sheets } = sheetsOfOrder(layout.order, hides, reading);
  const swatches: Swatch[] = [];
  const without: SwatchWish[] = [];
  for (const sheet of sheets) {
    const here = wishes.filter((wish) => wish.hide === sheet.id && !hasSwatch(layout, wish));
    if (here.length === 0) continue;
    let free = freeRegions(layout, hides, sheet);
    for (const wish of here) {
      const target = layout.roughCuts.find(({ id }) => id === wish.roughCut)?.outline;
      const outline = [long, short].reduce<Ring | undefined>(
        (found, side) => found ?? nearestRectangle(free, [short, side], target),
        undefined,
      );
      if (outline === undefined) {
        without.push(wish);
        continue;
      }
      swatches.push({ id: freshId(layout, swatches), ...wish, outline });
      const gap = Math.max(layout.order.cutting.gapMm, layout.order.cutting.kerfMm);
      free = subtractRegions(free, grown([{ outer: outline, openings: [] }], gap));
    }
  }
  return { swatches, without };
}

/** The layout with more swatches; nothing else of it changes, as they take nothing that is kept. */
export function withSwatches(layout: Layout, swatches: readonly Swatch[]): Layout {
  return { ...layout, swatches: [...layout.swatches, ...swatches] };
}

function hasSwatch({ swatches }: Layout, { hide, roughCut }: SwatchWish): boolean {
  return swatches.some((swatch) => swatch.hide === hide && swatch.roughCut === roughCut);
}

function freshId(layout: Layout, more: readonly Swatch[]): string {
  const taken = new Set([...layout.swatches, ...more].map(({ id }) => id));
  let number = 1;
  while (taken.has(`T${number}`)) number += 1;
  return `T${number}`;
}

/** What is wasted of a hide, less every distance that a test piece has to keep. */
function freeRegions(layout: Layout, hides: readonly NamedHide[], sheet: Sheet): Region[] {
  const { order, pieces, placements, roughCuts, swatches, lanes } = layout;
  const { gapMm, kerfMm, edgeMm, voidMm } = order.cutting;
  const gap = Math.max(gapMm, kerfMm);
  const hide = hides.find((named) => named.hide.id === sheet.id)!.hide;
  const [use] = hideUses({ order, pieces, placements, roughCuts, swatches, hides: [hide] });
  const outlines = [...roughCuts, ...swatches].filter((block) => block.hide === sheet.id);
  const taken = [
    ...placements
      .filter((placement) => placement.hide === sheet.id)
      .map((placement) => placedRegion(placement, pieces).region),
    ...outlines.map(({ outline }): Region => ({ outer: outline, openings: [] })),
    ...lanes.filter((lane) => lane.hide === sheet.id).map(regionOfLane),
  ];
  const voids = sheet.qualities
    .filter(({ isVoid }) => isVoid)
    .flatMap(({ areas, uncertaintyMm }) => grown(areas, voidMm + uncertaintyMm));
  const within = offsetRegions(netRegions(sheet.region), -edgeMm - SLACK_MM, ROUND);
  // Cut-outs of pieces are left alone: a test piece there would have to be cut out of the piece.
  const whole = taken.map(({ outer }): Region => ({ outer, openings: [] }));
  return subtractRegions(within, [...grown(whole, gap), ...voids, ...(use?.leftover.kept ?? [])]);
}

function grown(regions: readonly Region[], by: number): Region[] {
  return offsetRegions(regions, by + SLACK_MM, ROUND);
}

function regionOfLane({ id, hide, from, to, openAt, kerfMm, rows }: StrapLane): Region {
  const bare = rows.map(({ widthMm }) => ({ widthMm, straps: [] }));
  return laneRegion({ id, sheet: hide, from, to, openAt, kerfMm, rows: bare });
}

/** A rectangle in one of the regions, its middle nearest to the target; without one, nearest to the largest region’s middle. */
function nearestRectangle(
  regions: readonly Region[],
  [width, length]: readonly [number, number],
  target: Ring | undefined,
): Ring | undefined {
  const roomy = regions.filter((region) => regionsArea([region]) >= width * length);
  const goal = target ?? largest(roomy)?.outer;
  if (goal === undefined) return undefined;
  const distance =
    target === undefined ? toPoint(ringCentroid(goal)) : (p: Point): number => pointToRing(p, target);
  const places = roomy
    .flatMap((region) => middles(region, width).map((at) => ({ at, region, far: distance(at) })))
    .sort((a, b) => a.far - b.far)
    .slice(0, MOST_PLACES);
  for (const { at, region } of places) {
    for (const angle of ANGLES_DEG) {
      const outer = rectangleAt(at, width, length, angle);
      if (regionInRegion({ outer, openings: [] }, region)) return outer;
    }
  }
  return undefined;
}

function toPoint(goal: Point): (p: Point) => number {
  return ({ x, y }) => Math.sqrt((x - goal.x) ** 2 + (y - goal.y) ** 2);
}

function largest(regions: readonly Region[]): Region | undefined {
  return [...regions].sort((a, b) => regionsArea([b]) - regionsArea([a]))[0];
}

/** Places of a grid where the middle of a rectangle of that width can lie. */
function middles(region: Region, width: number): Point[] {
  const within = offsetRegions([region], -width / 2, ROUND);
  return within.flatMap((part) => {
    const { minX, minY, maxX, maxY } = regionBox(part);
    const places: Point[] = [];
    for (let x = Math.ceil(minX / PITCH_MM) * PITCH_MM; x <= maxX; x += PITCH_MM) {
      for (let y = Math.ceil(minY / PITCH_MM) * PITCH_MM; y <= maxY; y += PITCH_MM) {
        if (pointInRegion({ x, y }, part) !== 'outside') places.push({ x, y });
      }
    }
    return places;
  });
}

/** Oriented as an outer ring. */
function rectangleAt(at: Point, width: number, length: number, angleDeg: number): Ring {
  const { sin, cos } = sinCosDeg(angleDeg);
  const corner = (u: number, v: number): Point =>
    roundPoint({ x: at.x + u * cos - v * sin, y: at.y + u * sin + v * cos });
  const [u, v] = [length / 2, width / 2];
  return [corner(-u, -v), corner(u, -v), corner(u, v), corner(-u, v)];
}
