/** How far along the edge a place is compared with the others, mm to either side. */
const ALONG_MM = 8;
/** A place further than this from the middle one of its neighbours is a slip, mm: an edge has no spikes of that kind. */
const SLIP_MM = 1.2;

/** Places that go to and fro across the edge by more than this share of a slip, as where a floor's joints meet it, are doubtful. */
const WOBBLE_FROM = 0.75;
/** How far off such a place can be, for each pixel that they go to and fro beyond that. */
const WOBBLE_SHARE = 1;

/**
 * Takes back places that have slipped to something else, such as a joint of the floor that runs in under the hide: where
 * one lies far from the median of those around it, it is put there and counted as the more doubtful. `away` and `offPx`
 * (changed in place) are in pixels across the edge, points lie `stepPx` apart; NaN stands for no place of its own.
 */
export function steadyPlaces(away: Float32Array, offPx: Float32Array, stepPx: number, pxPerMm: number): void {
  const half = Math.min((away.length - 1) >> 1, Math.max(2, Math.round((ALONG_MM * pxPerMm) / stepPx)));
  const slip = Math.max(1, SLIP_MM * pxPerMm);
  const before = away.slice();
  const around: number[] = [];
  for (let i = 0; i < away.length; i++) {
    if (Number.isNaN(before[i]!)) continue;
    around.length = 0;
    for (let k = -half; k <= half; k++) {
      const place = before[(i + k + away.length) % away.length]!;
      if (!Number.isNaN(place)) around.push(place);
    }
    around.sort((a, b) => a - b);
    const middle = around[around.length >> 1]!;
    const slipped = Math.abs(before[i]! - middle);
    const wobble = around[Math.floor(0.9 * around.length)]! - around[Math.floor(0.1 * around.length)]!;
    offPx[i] = Math.hypot(offPx[i]!, WOBBLE_SHARE * Math.max(0, wobble - WOBBLE_FROM * slip));
    if (slipped <= slip) continue;
    away[i] = middle;
    offPx[i] = Math.hypot(offPx[i]!, slipped);
  }
}
