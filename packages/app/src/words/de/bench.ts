import type { Translated } from '../translated.js';
import type { BENCH_EN } from '../en/bench.js';

/** Die Texte dieses Teils, auf Deutsch. */
export const BENCH_DE: Translated<typeof BENCH_EN> = {};
