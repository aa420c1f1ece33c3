import type { PlaceName } from '../app/place.js';
import type { LoadStation } from '../shell/station.js';

/** The places of the job; each is loaded when it is first gone to. */
export const STATIONS: Readonly<Record<PlaceName, LoadStation>> = {
  hide: async () => (await import('./hide/index.js')).HIDE_STATION,
  pieces: async () => (await import('./pieces/index.js')).PIECES_STATION,
  lay: async () => (await import('./lay/index.js')).LAY_STATION,
  make: async () => (await import('./make/index.js')).MAKE_STATION,
  bench: async () => (await import('./bench/index.js')).BENCH_STATION,
};
