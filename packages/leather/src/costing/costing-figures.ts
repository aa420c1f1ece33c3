import type { Figure } from '../model/workshop-rules.js';

/** Figures of costing that a user may know better. */
export const COSTING_FIGURES: readonly Figure[] = [
  {
    name: 'supplies, share of the leather',
    words: 'What glue, edge paint and the like cost, as a share of the leather',
    value: { min: 0, max: 0 },
    unit: '%',
    source: 'own',
  },
];
