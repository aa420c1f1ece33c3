import type { EdgePlace } from './edge-place.js';
import { CORE_SHARE, CORNER_BLUR_MM } from './limits.js';
import type { PlacedRun } from './part-runs.js';

/** The places that tell of a run: those near its ends are rounded by blur, but of a short run the middle counts. */
export function corePlaces(places: readonly EdgePlace[], { from, to }: PlacedRun): EdgePlace[] {
  let total = 0;
  for (let i = from; i < to; i++) total += places[i]!.weightMm;
  const left = Math.min(CORNER_BLUR_MM, (total * (1 - CORE_SHARE)) / 2);
  const core: EdgePlace[] = [];
  let along = 0;
  for (let i = from; i < to; i++) {
    along += places[i]!.weightMm;
    if (along > left && along <= total - left + 1e-9) core.push(places[i]!);
  }
  return core.length >= 3 ? core : places.slice(from, to);
}

/** Root mean square of how far places lie off, mm. */
export function rootMeanSquare(offs: readonly { readonly off: number; readonly weightMm: number }[]): number {
  let sum = 0;
  let weight = 0;
  for (const { off, weightMm } of offs) {
    sum += weightMm * off * off;
    weight += weightMm;
  }
  return weight === 0 ? 0 : Math.sqrt(sum / weight);
}
