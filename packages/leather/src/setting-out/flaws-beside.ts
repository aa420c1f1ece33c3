import {
  boxesTouch,
  growBox,
  polylineNearest,
  regionBox,
  regionDistance,
  distanceBetween,
} from '@hidebound/geometry';
import type { Point, Region, Ring } from '@hidebound/geometry';
import { flawRegions } from '../hide/flaw-region.js';
import type { Flaw, Hide } from '../model/hide.js';
import { unitBetween } from './frame.js';
import type { FlawBeside } from './model.js';

/** Flaws farther off than this say nothing about where a piece lies. */
const BESIDE_MM = 40;
/** More than so many to a piece would be a list of its own. */
const MOST = 3;

export interface KnownFlaw {
  readonly flaw: Flaw;
  readonly regions: readonly Region[];
}

/** The flaws of a hide with their shapes. */
export function knownFlaws(hide: Pick<Hide, 'flaws'>): KnownFlaw[] {
  return hide.flaws.map((flaw) => ({ flaw, regions: flawRegions(flaw.shape) }));
}

/** The flaws that a piece lies beside or over, the nearest first. */
export function flawsBeside(piece: Region, flaws: readonly KnownFlaw[]): FlawBeside[] {
  const near = growBox(regionBox(piece), BESIDE_MM);
  return flaws
    .flatMap(({ flaw, regions }) => {
      const found = regions
        .filter((region) => boxesTouch(regionBox(region), near))
        .map((region) => ({ region, distance: regionDistance(piece, region) }))
        .sort((a, b) => a.distance - b.distance)[0];
      return found === undefined || found.distance > BESIDE_MM ? [] : [asBeside(flaw, piece, found)];
    })
    .sort((a, b) => a.distanceMm - b.distanceMm)
    .slice(0, MOST);
}

function asBeside(
  { id, kind, side }: Flaw,
  piece: Region,
  { region, distance }: { readonly region: Region; readonly distance: number },
): FlawBeside {
  const towards = distance === 0 ? undefined : wayBetween(piece.outer, region.outer);
  return {
    id,
    ...(kind === undefined ? {} : { kind }),
    side,
    distanceMm: Math.round(distance),
    ...(towards === undefined ? {} : { towards }),
  };
}

/** Unit vector of the shortest way from one outline to another. */
function wayBetween(from: Ring, to: Ring): Point | undefined {
  let best: readonly [Point, Point] | undefined;
  const offer = (p: Point, q: Point): void => {
    if (best === undefined || distanceBetween(p, q) < distanceBetween(...best)) best = [p, q];
  };
  for (const p of from) offer(p, polylineNearest([...to, to[0]!], p).point);
  for (const q of to) offer(polylineNearest([...from, from[0]!], q).point, q);
  return best === undefined || distanceBetween(...best) === 0 ? undefined : unitBetween(...best);
}
