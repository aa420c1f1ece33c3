import { createRandom } from '@hidebound/geometry';
import type { Span } from '../../model/workshop-rules.js';
import { squareFeetToMm2 } from '../../units/area.js';
import { chanceOfEnough } from './need.js';
import type { Need } from './need.js';

/** Handfuls of hides that a chance is reckoned over. */
const HANDFULS = 400;
const SEED = 11;

/**
 * The chance that so many hides are enough, each of an area anywhere within the span. The same hides are thought of for
 * every count, so more hides are never less likely to be enough.
 */
export function chanceOfCount(need: Need, count: number, areaMm2: Span): number {
  let sum = 0;
  const start = createRandom(SEED);
  for (let k = 0; k < HANDFULS; k++) {
    const random = start.fork(k);
    let totalMm2 = 0;
    for (let i = 0; i < count; i++) totalMm2 += random.between(areaMm2.min, areaMm2.max);
    sum += chanceOfEnough(need, totalMm2);
  }
  return sum / HANDFULS;
}

/** No hundred trials can promise more. */
const MOST_IN_HUNDRED = 99;

/** "Enough in 93 of 100": cut, not rounded, and never all of them. */
export function inHundred(chance: number): number {
  return Math.min(MOST_IN_HUNDRED, Math.floor(chance * 100 + 1e-9));
}

/** Beyond that, hides of this kind are too small for the job. */
export const MOST_COUNTED = 400;

/** The least number of hides that is enough in so many of 100; undefined beyond any number that is bought. */
export function countFor(need: Need, wantedInHundred: number, areaMm2: Span): number | undefined {
  const mean = (areaMm2.min + areaMm2.max) / 2;
  const least = Math.min(...need.cases.map((own) => own.middleMm2 - 3 * own.spreadMm2));
  const first = Math.max(1, Math.floor(least / mean));
  for (let count = first; count <= MOST_COUNTED; count++) {
    if (inHundred(chanceOfCount(need, count, areaMm2)) >= wantedInHundred) return count;
  }
  return undefined;
}

const LARGE_HIDE_FT2 = 10;

/** A span of areas in classes as hides are sorted: of 2 ft², or of 1 ft² for hides below 10 ft². */
export function sizeClasses({ min, max }: Span): Span[] {
  const stepFt2 = max > squareFeetToMm2(LARGE_HIDE_FT2) ? 2 : 1;
  const step = squareFeetToMm2(stepFt2);
  const count = Math.max(1, Math.round((max - min) / step));
  return Array.from({ length: count }, (_, i) => ({
    min: min + ((max - min) * i) / count,
    max: min + ((max - min) * (i + 1)) / count,
  }));
}
