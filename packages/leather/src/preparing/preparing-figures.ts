import type { Figure } from '../model/workshop-rules.js';

/** Figures of preparation that a user may know better. */
export const PREPARING_FIGURES: readonly Figure[] = [
  {
    name: 'rest after conditioning',
    words: 'How long leather rests after it was conditioned',
    value: { min: 12, max: 24 },
    unit: 'h',
    source: 'a craft teacher',
  },
];
