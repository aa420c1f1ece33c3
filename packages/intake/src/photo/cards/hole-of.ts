import { distanceBetween } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { ROUND_MM, ROUND_SHARE } from './limits.js';
import type { EdgePlace } from './runs/edge-place.js';
import { fitRound, sumPlaces } from './runs/run-sums.js';

export interface RoundHole {
  readonly centre: Point;
  readonly radius: number;
}

/** The circle that the edge of a hole is, if it is one all round. */
export function roundHole(places: readonly EdgePlace[]): RoundHole | undefined {
  if (places.length < FEWEST) return undefined;
  const fit = fitRound(sumPlaces(places, [0, places.length]), 0, 1);
  if (fit === undefined) return undefined;
  const { centre, radius } = fit.run;
  const slack = Math.max(ROUND_MM, ROUND_SHARE * radius);
  const off = places.filter((p) => Math.abs(distanceBetween(p, centre) - radius) > slack).length;
  return off <= places.length * STRAY_SHARE && goesRound(places, centre) ? { centre, radius } : undefined;
}

const FEWEST = 8;

/** So many places may be dirt. */
const STRAY_SHARE = 0.08;

const SECTORS = 8;

/** Places lie on every side of the middle, or on all but one. */
function goesRound(places: readonly Point[], centre: Point): boolean {
  const seen = new Set(
    places.map(
      (p) => Math.floor(((Math.atan2(p.y - centre.y, p.x - centre.x) / Math.PI + 1) / 2) * SECTORS) % SECTORS,
    ),
  );
  return seen.size >= SECTORS - 1;
}
