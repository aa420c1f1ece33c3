import type { Figure } from '../../model/workshop-rules.js';

/** Figures of hides of chance that a user may know better. */
export const HIDES_FIGURES: readonly Figure[] = [
  {
    name: 'usable share without a grade',
    words: 'How much of a hide is good leather, where nothing is said of its grade',
    value: { min: 85, max: 95 },
    unit: '%',
    source: 'from memory',
  },
];
