import type { Figure } from '../model/workshop-rules.js';

/** Figures of buying that a user may know better. */
export const BUYING_FIGURES: readonly Figure[] = [
  {
    name: 'error of a stated area',
    words: 'How far the area written on a hide may be from the measured one',
    value: { min: 2, max: 3 },
    unit: '%',
    source: 'from memory',
  },
];
