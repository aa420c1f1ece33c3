import { distanceBetween } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import type { EdgePlace } from './edge-place.js';
import {
  ARC_COST,
  HOPELESS_RUNS,
  LARGEST_RADIUS_MM,
  LEAST_BOW_MM,
  MOST_STRETCHES,
  PLACE_REACH_MM,
  RUN_COST,
  SMALLEST_RADIUS_MM,
  STRETCH_MM,
} from './limits.js';
import type { Run } from './run.js';
import { fitRound, fitStraight, senseOf, sumPlaces } from './run-sums.js';
import type { RunSums } from './run-sums.js';

/** A run of places, from..to (exclusive), with the line or arc that fits them best. */
export interface PlacedRun {
  readonly from: number;
  readonly to: number;
  readonly run: Run;
}

/**
 * Parts a chain of places into lines and arcs so that misfit and number of runs together cost the least: every way of
 * parting is weighed, by dynamic programming over short stretches. `sigmaMm` is how far places lie off by chance.
 */
export function partRuns(places: readonly EdgePlace[], sigmaMm: number): PlacedRun[] {
  const starts = stretchStarts(places);
  const sums = sumPlaces(places, starts);
  const chosen = cheapestParting(places, sums, sigmaMm);
  return chosen.map(({ from, to, run }) => ({ from: starts[from]!, to: starts[to]!, run }));
}

/** Places at which stretches start, about evenly along the chain. */
function stretchStarts(places: readonly EdgePlace[]): number[] {
  const total = places.reduce((sum, { weightMm }) => sum + weightMm, 0);
  const step = Math.max(STRETCH_MM, total / MOST_STRETCHES);
  const starts = [0];
  let length = 0;
  places.forEach(({ weightMm }, i) => {
    length += weightMm;
    if (length < step || i - starts.at(-1)! < 1) return;
    starts.push(i + 1);
    length = 0;
  });
  if (starts.at(-1)! < places.length) {
    if (starts.length > 1 && places.length - starts.at(-1)! < 2) starts.pop();
    starts.push(places.length);
  }
  return starts;
}

interface Choice {
  readonly cost: number;
  readonly from: number;
  readonly run: Run;
}

function cheapestParting(places: readonly EdgePlace[], sums: RunSums, sigmaMm: number) {
  const toCost = 1 / (sigmaMm * sigmaMm * PLACE_REACH_MM);
  const best: (Choice | undefined)[] = [undefined];
  const costTo = (k: number) => (k === 0 ? 0 : best[k]!.cost);
  for (let to = 1; to <= sums.count; to++) {
    let choice: Choice | undefined;
    for (let from = to - 1; from >= 0; from--) {
      const fit = bestFit(places, sums, from, to, toCost);
      const cost = costTo(from) + fit.cost;
      if (choice === undefined || cost < choice.cost) choice = { cost, from, run: fit.run };
      if (fit.cost > HOPELESS_RUNS * RUN_COST) break;
    }
    best[to] = choice;
  }
  const chosen: { from: number; to: number; run: Run }[] = [];
  for (let to = sums.count; to > 0; to = best[to]!.from)
    chosen.push({ from: best[to]!.from, to, run: best[to]!.run });
  return chosen.reverse();
}

function bestFit(
  places: readonly EdgePlace[],
  sums: RunSums,
  from: number,
  to: number,
  toCost: number,
): { readonly cost: number; readonly run: Run } {
  const line = fitStraight(sums, from, to);
  const straight = { cost: line.misfit * toCost + RUN_COST, run: line.run };
  // A line that fits leaves an arc nothing to save.
  if (to - from < 3 || line.misfit * toCost <= ARC_COST) return straight;
  const round = fitRound(sums, from, to);
  if (round === undefined) return straight;
  const { centre, radius } = round.run;
  const cost = round.misfit * toCost + RUN_COST + ARC_COST;
  if (cost >= straight.cost || radius > LARGEST_RADIUS_MM || radius < SMALLEST_RADIUS_MM) return straight;
  const [first, last] = [sums.starts[from]!, sums.starts[to]!];
  if (!isBowed(places[first]!, places[(first + last) >> 1]!, places[last - 1]!)) return straight;
  return { cost, run: { kind: 'arc', centre, radius, sense: senseOf(places, first, last, centre) } };
}

function isBowed(a: Point, middle: Point, b: Point): boolean {
  const chord = distanceBetween(a, b);
  if (chord < distanceBetween(a, middle)) return true;
  const cross = (b.x - a.x) * (middle.y - a.y) - (b.y - a.y) * (middle.x - a.x);
  return Math.abs(cross) > LEAST_BOW_MM * chord;
}
